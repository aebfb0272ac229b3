#pragma once

#include "planner/answers/account_answer.hpp"
#include "planner/answers/account_basis.hpp"

#include <span>
#include <vector>

namespace nightsow::planner {

/// Seedlings up in all by the end of a day, as the cases have it before anything was counted.
[[nodiscard]] NumberSpread expected_up(std::span<const SeedsOnDay> cases,
                                       const SowingRecord& record,
                                       int day);

/// Expected against counted, a point a week, of more than half a year one every four; from first
/// water to the first point on or after `to`, a day of the pot, or to the end of the courses.
[[nodiscard]] std::vector<CurvePoint> account_curve(const AccountBasis& basis,
                                                    std::span<const SeedsOnDay> cases,
                                                    int water,
                                                    int to);

} // namespace nightsow::planner
