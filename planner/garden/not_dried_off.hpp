#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/records.hpp"
#include "species-rules/catalogue.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

/// A sowing whose kind is not dried off, and why: "is evergreen: ...".
struct NotDriedOff {
  EntryId sowing = 0;
  std::string why;
};

/// A first rest is one within so many days of sowing (by judgement, no source).
inline constexpr int first_rest_within_days = 400;

/// The sowings that a dry rest on that day would not be for, by their rules: evergreens at any age,
/// annuals that were alive at the last count,
/// kinds that rest barely moist in their first rest, and pots with nothing seen up whose seed dies
/// dry. Of taxa without a rule nothing is known.
[[nodiscard]] std::vector<NotDriedOff> not_dried_off(const Records& records,
                                                     const species_rules::Catalogue& catalogue,
                                                     Date on);

} // namespace nightsow::planner
