#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/first_water_answer.hpp"
#include "planner/answers/reason.hpp"
#include "planner/answers/spread.hpp"
#include "planner/answers/work_answer.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// What a pot that has been sown does at present.
enum class PotStage {
  dry,     ///< sown, first water not given yet
  growing, ///< watered this season
  resting, ///< from an earlier season, not awake yet: seedlings at rest, seed that has not come
};

[[nodiscard]] std::string_view name_of(PotStage stage);

/// A sowing of the record, beside the packets in hand.
struct CarriedPot {
  long long sowing = 0; ///< number in the journal; 0: of sown.csv
  std::string packet;   ///< may be empty
  std::string taxon;    ///< as written
  std::string accepted; ///< empty: no rule is known
  std::string bench;
  Date sown_on{};
  std::optional<Date> first_water; ///< as written down, or taken: the reasons say which
  int seeds = 0;
  int pots = 1;
  std::optional<int> alive; ///< seedlings at the last count; empty: never counted
  std::optional<Date> counted_on;
  PotStage stage = PotStage::resting;
  Verdict verdict = Verdict::wait;  ///< of its next water
  FirstWater water;                 ///< the next one: first water, or that which wakes it
  std::string first_rest;           ///< as in How; empty: no rule is known
  std::optional<Date> rests;        ///< of what grows: when its resting season usually begins
  int cool_seasons = 0;             ///< past, with water
  int keep_seasons = 0;             ///< before a pot may be emptied
  std::optional<NumberSpread> more; ///< seedlings still to come in the season at hand
  std::vector<Reason> reasons;
  // For its work.
  std::string start{};
  std::vector<PotTask> work{};           ///< but its next water, which `water` tells
  std::optional<Date> water_due_since{}; ///< its next water is overdue
};

} // namespace nightsow::planner
