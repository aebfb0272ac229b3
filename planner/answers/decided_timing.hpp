#pragma once

#include "planner/answers/line_timing.hpp"
#include "planner/answers/sown_answer.hpp"

#include <optional>

namespace nightsow::planner {

// The last touches to a packet's timing, once its day of first water and its route are decided.

/// A risk where the nights it still awaits may come only after its last good day.
void tell_late_nights(LineTiming& timing);

/// The first reason where some come up, and in nine of ten cases none of them lives: what takes
/// most of them.
void tell_hardly_any(const std::optional<Expected>& expected, LineTiming& timing);

/// What is sown all the same after its last day has none: its risks say that it is late.
void drop_passed_limit(Date today, LineTiming& timing);

} // namespace nightsow::planner
