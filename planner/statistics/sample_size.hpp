#pragma once

#include "planner/statistics/shares.hpp"

#include <optional>

namespace nightsow::planner {

/// The fewest seeds of which at least `plants` succeed with that chance, each with `share`; empty
/// where more than a million are needed. Requires: 0 <= share <= 1, 0 < chance < 1, plants >= 0.
[[nodiscard]] std::optional<int> seeds_for_plants(double share, int plants, double chance);

inline constexpr int most_seeds_asked = 2000;

/// How many more seeds an arm, as many of each, until the interval of the difference leaves out
/// zero should the shares seen so far stay as they are; 0 where it does so now. Empty where more
/// than most_seeds_asked would be needed or nothing was sown: such a difference is not worth a
/// trial.
[[nodiscard]] std::optional<int> seeds_to_settle(const Count& a,
                                                 const Count& b,
                                                 double confidence = usual_confidence);

/// Seeds an arm with which a comparison of two true shares comes out settled in `power` of cases
/// (two-sided at `confidence`): normal approximation with Fleiss' continuity correction, Fleiss,
/// Levin and Paik (2003), Statistical Methods for Rates and Proportions, equations 4.14 and 4.15
/// (numbers of the equations from memory). Empty where it takes more than most_seeds_asked.
[[nodiscard]] std::optional<int> seeds_an_arm(double share_a,
                                              double share_b,
                                              double power = 0.8,
                                              double confidence = usual_confidence);

} // namespace nightsow::planner
