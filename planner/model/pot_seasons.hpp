#pragma once

#include "planner/model/establishment.hpp"

#include <span>
#include <vector>

namespace nightsow::planner {

/// One season of a pot that stays sown. Days are those of its own courses.
struct PotSeason {
  std::vector<const SeedCourse*> courses; ///< equally likely; not empty, all of the same days
  SeasonDays days;
  int water = 0; ///< first water, or, in later seasons, the day it is watered again
  int last = 0;  ///< the seeds are asked for at the end of this day; `water` or later
};

/// Where the seeds of a pot are at the end of the last season's `last`, one case for each draw of
/// the rule, which meets the courses in turn. `shares` are those of the day of first water, one a
/// draw. Days of `up` are counted from the first season's courses on.
///
/// What is firm when a season ends is kept dry and meets the next one: all of it is ripe by then,
/// and seed that was deferred is not deferred once more. What dies in a dry pot is not reckoned.
/// Requires: seasons not empty and in order of time; as many shares as draws.
[[nodiscard]] std::vector<SeedsOnDay> cases_of_pot(
    std::span<const PotSeason> seasons,
    std::span<const species_rules::SeedParameters> draws,
    std::span<const SeedShares> shares,
    const PotCare& care);

/// The day on which the first rest of a season begins, by the middle of its courses and draws.
[[nodiscard]] int rest_of_pot(const PotSeason& season,
                              std::span<const species_rules::SeedParameters> draws);

} // namespace nightsow::planner
