#pragma once

#include "planner/model/establishment.hpp"

namespace nightsow::planner {

/// The same question as SeedSeason::watered_on, answered the slow way: seed by seed, night by
/// night, hour by hour, each seed with limits and luck of its own. With the days of plain_course
/// nothing of the answer comes from the product.
[[nodiscard]] Establishment simulated(const SeedCourse& course,
                                      const species_rules::SeedParameters& seed,
                                      const PotCare& care,
                                      const SeasonDays& season,
                                      int water,
                                      const SeedShares& shares,
                                      int seeds);

} // namespace nightsow::planner
