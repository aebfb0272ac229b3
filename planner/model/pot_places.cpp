#include "planner/model/pot_places.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>

namespace nightsow::planner {

namespace {

constexpr std::array daily_rows{&SeedCourse::night_c,
                                &SeedCourse::mean_c,
                                &SeedCourse::swing_k,
                                &SeedCourse::heat_half_lives,
                                &SeedCourse::seedling_mean_c,
                                &SeedCourse::coldest_c,
                                &SeedCourse::hottest_c,
                                &SeedCourse::evaporation_mm,
                                &SeedCourse::winter_growth,
                                &SeedCourse::summer_growth,
                                &SeedCourse::seven_day_mean_c,
                                &SeedCourse::rest_rate};

constexpr std::ptrdiff_t hours_a_day = 24;

} // namespace

SeedCourse course_of_moved(std::span<const StoodFrom> places) {
  SeedCourse course = *places.front().course;
  for (const StoodFrom& place : places.subspan(1)) {
    const std::ptrdiff_t day = std::clamp(place.day, 0, course.days());
    for (const auto row : daily_rows) {
      const std::vector<double>& from = place.course->*row;
      std::copy(from.begin() + day, from.end(), (course.*row).begin() + day);
    }
    std::copy(place.course->hour_c.begin() + day * hours_a_day,
              place.course->hour_c.end(),
              course.hour_c.begin() + day * hours_a_day);
  }
  return course;
}

SeedCourse left_dry(SeedCourse course, int from, int to) {
  const auto first = course.evaporation_mm.begin() + from;
  std::partial_sum(first, course.evaporation_mm.begin() + to + 1, first);
  return course;
}

} // namespace nightsow::planner
