#pragma once

#include "climate/base/date.hpp"
#include "climate/seasons.hpp"
#include "planner/answers/first_water_answer.hpp"
#include "planner/answers/reason.hpp"
#include "planner/model/bench_seasons.hpp"
#include "species-rules/rule.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// When a pot from an earlier season wakes in the season at hand.
struct Wake {
  Verdict verdict = Verdict::wait;
  FirstWater water;
  std::vector<Reason> reasons;
  std::optional<Date> since; ///< it could have been awake from then on
};

/// On a day that is known.
[[nodiscard]] Wake wake_on(Date day, Date today, ReasonCode why);

/// By a kind's nights, somewhat above its own limit (wake_above_limit_k), or with the season.
[[nodiscard]] Wake wake_of(const species_rules::Rule& rule,
                           const std::string& bench,
                           Date today,
                           BenchSeasons& seasons,
                           const climate::Season& season);

} // namespace nightsow::planner
