#pragma once

#include "planner/answers/pot_weather.hpp"
#include "planner/model/account.hpp"
#include "planner/model/account_advice.hpp"
#include "species-rules/catalogue.hpp"

#include <vector>

namespace nightsow::planner {

/// What an account of one sowing is made from.
struct AccountBasis {
  const RecordedSowing& sowing;
  const SowingFacts& facts;
  Packet packet; ///< as it was sown
  const PotWeather& weather;
  SowingRecord record; ///< looks by days of the pot
  int looked = 0;      ///< day of the pot
};

/// A rule, drawn so many times within its ranges.
struct DrawnRule {
  const species_rules::RuleFor& rule;
  int draws = 0;
};

/// Where the seeds were on the day of the last look, one case a draw.
[[nodiscard]] std::vector<SeedsOnDay> cases_of(const AccountBasis& basis, const DrawnRule& drawn);

/// Where the pot stands in its seasons today.
[[nodiscard]] SowingSituation situation_of(const AccountBasis& basis,
                                           const species_rules::RuleFor& rule,
                                           Date today);

} // namespace nightsow::planner
