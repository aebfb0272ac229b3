#pragma once

#include "planner/model/seed_course.hpp"

#include <cstddef>

namespace nightsow::support {

/// A course on which every day is alike: nights at `night_c`, the seed at `seed_c` at all hours,
/// a swing that hinders no seed, light for growth; nothing dries, freezes or burns.
inline planner::SeedCourse even_course(int days, double night_c = 10.0, double seed_c = 15.0) {
  const auto size = static_cast<std::size_t>(days);
  planner::SeedCourse course;
  course.first = Date{date::year{2020} / date::February / 1};
  course.night_c.assign(size, night_c);
  course.hour_c.assign(size * climate::SeedLevel::hours_a_day, static_cast<float>(seed_c));
  course.mean_c.assign(size, seed_c);
  course.seedling_mean_c.assign(size, seed_c);
  course.swing_k.assign(size, 30.0);
  course.coldest_c.assign(size, 10.0);
  course.hottest_c.assign(size, 20.0);
  course.heat_half_lives.assign(size, 0.0);
  course.evaporation_mm.assign(size, 0.0);
  course.winter_growth.assign(size, 1.0);
  course.summer_growth.assign(size, 1.0);
  course.seven_day_mean_c.assign(size, 15.0);
  course.rest_rate.assign(size, 0.25);
  return course;
}

} // namespace nightsow::support
