#pragma once

#include "planner/model/seed_course.hpp"

#include <span>
#include <vector>

namespace nightsow::planner {

/// Where a pot stood from a day of the courses on.
struct StoodFrom {
  int day = 0;
  const SeedCourse* course = nullptr;
};

/// The course of a pot that was moved: of each place the days that it stood there. The heat of the
/// last 48 hours is that of the new place from the day of the move on. Requires: places not empty,
/// in order of days; courses of the same days.
[[nodiscard]] SeedCourse course_of_moved(std::span<const StoodFrom> places);

/// The same course with no water given from `from` to `to`, both included. Each of these days has
/// all that evaporated since `from`: a pot that is taken as watered in between, as soon as its
/// watering point is passed, is then as dry on the next day as if it had not been. Before that
/// point it is a little too dry. Requires: days of the course, `from` <= `to`.
[[nodiscard]] SeedCourse left_dry(SeedCourse course, int from, int to);

} // namespace nightsow::planner
