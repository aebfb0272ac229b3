#pragma once

#include <string>

namespace nightsow::climate {

/// What a file itself may leave open, answered by the person who brings it. Empty: not answered;
/// then a reader that needs it refuses the file with the question.
struct ReadingChoices {
  std::string station;   ///< id or name of the one meant, where a file holds several places
  std::string column;    ///< name of the channel meant, where a logger has several
  std::string time_zone; ///< IANA name of the zone of the garden, for clocks without an offset
};

} // namespace nightsow::climate
