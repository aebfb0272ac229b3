#pragma once

#include "planner/answers/heads.hpp"
#include "planner/answers/plan_answer.hpp"
#include "planner/answers/reason.hpp"
#include "planner/answers/spread.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// One change asked for: "mirror", or "warmer" with kelvin.
struct ChangeAnswer {
  std::string change;
  std::optional<double> kelvin;
};

/// Where a packet stands in one of the two plans.
struct WhatIfSide {
  std::string list; ///< sowings, not_now
  std::string verdict;
  std::optional<bool> binds;
  std::optional<Date> not_before;
  Spread expected;
  std::optional<Date> no_later_than;
  std::optional<double> plants{}; ///< alive after the first rest, mean; empty: not reckoned
};

struct WhatIfLine {
  std::string packet;
  std::string taxon;
  WhatIfSide before;
  WhatIfSide after;
  /// By how many days the expected first water moves, as a distance from each plan's today;
  /// positive is later. Empty when one side has no date.
  std::optional<int> moved_days;
  /// Something a grower would act on: another list or verdict, nights that come to decide or no
  /// longer do, a date that moves (under a mirror by more than a day, which the orbit makes), or a
  /// plant more or less, if that is more than one in twenty.
  bool differs = false;
  std::optional<double> plants_change{}; ///< after less before; empty: not reckoned in both
};

struct WhatIfAnswer {
  GardenHead garden;
  Date today_before{};
  Date today_after{};
  int season_before = 0;
  int season_after = 0;
  std::vector<ChangeAnswer> changes;
  std::vector<WhatIfLine> lines; ///< what moves most first
  std::vector<Reason> warnings;  ///< of the plan after the change
};

} // namespace nightsow::planner
