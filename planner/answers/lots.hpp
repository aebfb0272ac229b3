#pragma once

#include "planner/answers/plan_answer.hpp"

#include <vector>

namespace nightsow::planner {

/// A tray waits for all of its packets, so their dates must lie within so many days: the best time
/// for first water is flat for five to seven weeks (common practice, no source).
inline constexpr int near_days = 28;

/// Night limits within such a step share a tray, and wait for the lowest of them.
inline constexpr int limit_step_k = 3;

/// The plan's sowings as trays. Every sowing is in one. The order of the sowings changes nothing,
/// and a packet that shares nothing with a tray does not change its id.
[[nodiscard]] std::vector<Lot> lots_of(const std::vector<Sowing>& sowings, Date today);

} // namespace nightsow::planner
