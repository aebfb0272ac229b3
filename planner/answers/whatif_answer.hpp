#pragma once

#include "planner/answers/heads.hpp"
#include "planner/answers/plan_answer.hpp"
#include "planner/answers/reason.hpp"
#include "planner/answers/spread.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// One change asked for: "mirror", "warmer" with kelvin, or "bench", "packets", "rule", "place"
/// with their name, as typed or as the place is called.
struct ChangeAnswer {
  std::string change;
  std::optional<double> kelvin;
  std::string what{};
};

/// Where a packet stands in one of the two plans.
struct WhatIfSide {
  std::string list; ///< sowings, not_now; empty: the packet is not in hand
  std::string verdict;
  std::optional<bool> binds;
  std::optional<Date> not_before;
  Spread expected;
  std::optional<Date> no_later_than;
  std::optional<double> plants{}; ///< alive after the first rest, mean; empty: not reckoned
};

enum class Side { now, later, unknown, not_here, not_in_hand };

/// What the grower does with it: water now, later this season, look at the readings first, nothing.
[[nodiscard]] Side side_of(const WhatIfSide& side);

/// "now", "later", "unknown", "not_here", "not_in_hand".
[[nodiscard]] std::string_view name_of(Side side);

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

/// All differences in one.
struct WhatIfTotals {
  int change_side = 0;           ///< packets in both plans, see Side
  int moved = 0;                 ///< packets whose date differs and stands in both plans
  std::optional<int> moved_days; ///< the middle of those; the earlier of two; empty: none
  double plants_before = 0.0;    ///< sum of what is reckoned
  double plants_after = 0.0;
};

struct WhatIfAnswer {
  GardenHead garden;
  Date today_before{};
  Date today_after{};
  int season_before = 0;
  int season_after = 0;
  std::vector<ChangeAnswer> changes;
  WhatIfTotals totals{};
  std::vector<WhatIfLine> lines; ///< those that change side first, then what moves most
  std::vector<Reason> warnings;  ///< of the plan after the change
};

/// One packet under one value of a sweep.
struct SweepLine {
  std::string packet;
  std::string taxon;
  WhatIfSide side;
};

/// The plan under one value of a sweep.
struct SweepRow {
  double warmer_k = 0.0;
  int now = 0; ///< packets, see Side
  int later = 0;
  int unknown = 0;
  int not_here = 0;
  double plants = 0.0;          ///< sum of what is reckoned
  std::vector<SweepLine> lines; ///< by packet
};

struct SweepAnswer {
  GardenHead garden;
  Date today{};
  int season = 0;
  std::vector<ChangeAnswer> changes; ///< that hold in all rows
  std::vector<SweepRow> rows;        ///< in the order asked for
  std::vector<Reason> warnings;      ///< of the first row's plan
};

} // namespace nightsow::planner
