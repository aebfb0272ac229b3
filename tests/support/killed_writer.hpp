#pragma once

#include <filesystem>

namespace nightsow::support {

struct KillReport {
  int rounds = 0;        ///< that went well
  int acknowledged = 0;  ///< entries whose call came back before a kill
  int kept = 0;          ///< counts in the journal behind the last round
  bool lost = false;     ///< an acknowledged entry was not there: the round behind `rounds`
  bool invented = false; ///< more was there than that, and the one under way: likewise
};

/// So many times: a program of its own adds counts to sowing 1, acknowledges each through a pipe
/// once its call came back, and is killed (SIGKILL) at another moment each time, told by the round;
/// then the journal is read. Ends at the first round that lost or invented an entry.
/// Requires: the journal holds sowing 1 and no counts.
[[nodiscard]] KillReport kill_while_writing(const std::filesystem::path& journal, int rounds);

} // namespace nightsow::support
