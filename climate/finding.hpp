#pragma once

#include "climate/base/date.hpp"

#include <cstddef>
#include <string>

namespace nightsow::climate {

/// What screening can find wrong with a reading.
enum class FindingKind {
  impossible,         ///< colder or hotter than was ever measured on Earth
  night_above_day,    ///< the minimum lies above the maximum of the same date
  repeated_equal,     ///< the same date twice in one file with equal values
  repeated_different, ///< the same date twice in one file with different values
  files_differ,       ///< two files give the same element and date more than 1 K apart
  flagged,            ///< the source's own quality flag says it failed a check
};

/// The verdict: whether the reading is used all the same.
enum class Verdict { used, ignored };

struct Finding {
  FindingKind kind = FindingKind::impossible;
  Verdict verdict = Verdict::ignored;
  Date date{};
  std::string file;
  std::size_t line = 0;
  double value_c = 0.0; ///< the doubtful value; NaN when the file gave none that can be read
  double other_c = 0.0; ///< what it disagrees with; NaN where there is no other value
};

} // namespace nightsow::climate
