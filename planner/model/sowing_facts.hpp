#pragma once

#include "planner/garden/records.hpp"
#include "planner/model/account.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// One look at a sowing, counts of one day taken together.
struct CountedLook {
  Date on{};
  int seen = 0;      ///< alive on that day
  int up_in_all = 0; ///< have come up by then, those that died since, too
};

/// Where a pot stood from a day on.
struct PotPlace {
  Date from{};
  std::string bench; ///< as written; may be empty
  std::string mat;   ///< empty: none
};

/// A time without water: the day it was left dry, and the last before it was wet again.
struct DrySpell {
  Date from{};
  std::optional<Date> to; ///< empty: still dry
};

/// What the record tells of one sowing, put in order.
struct SowingFacts {
  std::optional<Date> first_water; ///< empty: it lies dry, as far as is written
  bool water_taken = false;        ///< seedlings were counted, so the day of sowing stands in
  std::vector<CountedLook> looks;
  int died = 0; ///< of those up, told or not
  int fell = 0; ///< of them, gone from a count without a word
  Pressed pressed;
  std::vector<Date> waterings; ///< all days of water, first water included
  std::vector<DrySpell> dry;
  std::vector<PotPlace> places; ///< the first from the day of sowing on
  bool shade_or_bag_changed = false;

  [[nodiscard]] int up_in_all() const { return looks.empty() ? 0 : looks.back().up_in_all; }
};

/// Of several counts on one day the last one stands; deaths add up. Seedlings that fall out of a
/// count are gone, whether told or not; they came up all the same. A count that rises again up to
/// an earlier one is taken for the same seedlings: leaves die back in the first rest. A dry rest is
/// a spell without water once it was wet. What was pressed is at most what is not up.
[[nodiscard]] SowingFacts sowing_facts(const RecordedSowing& sowing, const Records& records);

} // namespace nightsow::planner
