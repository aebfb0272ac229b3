#pragma once

#include "planner/garden/records.hpp"

#include <map>
#include <optional>
#include <vector>

namespace nightsow::planner {

/// Seedlings that had come by the end of a day, dead ones counted.
struct CameBy {
  Date on{};
  int came = 0;
};

/// What is known of one sowing from all that was written down about it.
struct WhatCame {
  const RecordedSowing* sowing = nullptr;
  std::optional<Date> first_water; ///< of the sowing or noted later; empty: still dry
  std::vector<CameBy> looks;       ///< by date, one a day, never falling, at most the seeds sown
  std::map<DeathCause, int> dead;  ///< seedlings, by what they died of; none of naught
  std::optional<int> back;         ///< alive after the first rest, by the last such count
  int firm = 0;                    ///< of the seeds pressed
  int soft = 0;

  [[nodiscard]] int came() const { return looks.empty() ? 0 : looks.back().came; }

  [[nodiscard]] bool counted() const { return !looks.empty(); }

  /// How many had come by the end of a day.
  [[nodiscard]] int came_by(Date day) const;
};

/// One for each sowing, in its order. A look sees the seedlings alive; those that came are these
/// and all that had died before, at the most of any look so far. The records must outlive it.
[[nodiscard]] std::vector<WhatCame> what_came(const Records& records);

} // namespace nightsow::planner
