#pragma once

#include "climate/seasons.hpp"
#include "planner/model/seed_course.hpp"
#include "species-rules/seed_parameters.hpp"

#include <vector>

namespace nightsow::planner {

/// Where a season's turning points lie in a course, in days from its first. They may lie outside.
struct SeasonDays {
  int hottest = 0;
  int limb_begins = 0;
  int coldest = 0;
  int ends = 0; ///< the day after the last
};

[[nodiscard]] SeasonDays season_days(const climate::Season& season, Date first);

/// The day of a course on which seedlings go to their first rest.
struct RestDay {
  int day = 0;
  bool reached = false; ///< false: the climate brings none, and `day` is the season's end
};

/// Winter growers: what warmth and long days add from the coldest night on reaches the rule's sum.
/// Summer growers: the mean of seven days falls to cool_rest_c after the hottest night.
[[nodiscard]] RestDay rest_day(const SeedCourse& course,
                               const species_rules::SeedParameters& seed,
                               const SeasonDays& season);

/// The chances of a seedling from its emergence on; they sum to 1, but for one that is up on the
/// day of the rest or later, which has none.
struct Fate {
  double lost_wet = 0.0;
  double heat = 0.0;
  double frost = 0.0;
  double too_small = 0.0; ///< for the rest
  double rest = 0.0;
  double plants = 0.0;
};

/// What a seedling meets beside its course: damping off as a hazard of each day for one that is
/// just up, and the share of large enough ones that live through the rest.
struct Nursing {
  const std::vector<double>& damping_off;
  double kept_through_rest = 0.85;
};

/// By day of emergence, one for each day of the course. A cool starter that is up before the
/// cooling limb meets the end of the hot season first, and rests then with the growth it has,
/// should that be warm and long enough. The course's rows cover the season.
[[nodiscard]] std::vector<Fate> seedling_fates(const SeedCourse& course,
                                               const species_rules::SeedParameters& seed,
                                               const SeasonDays& season,
                                               const RestDay& rest,
                                               const Nursing& nursing);

} // namespace nightsow::planner
