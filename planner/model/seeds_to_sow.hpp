#pragma once

#include <optional>
#include <span>

namespace nightsow::planner {

/// More seeds than this nobody sows of one packet.
inline constexpr int most_seeds_to_sow = 5000;

/// Chance that at least `wanted` of n seeds become plants, when each of several equally likely
/// shares may be the right one and pots differ by `correlation` (beta-binomial, see count_range).
/// Requires: n >= 0, shares not empty and within 0..1, 0 < correlation < 1.
[[nodiscard]] double chance_of_at_least(int wanted,
                                        int n,
                                        std::span<const double> shares,
                                        double correlation);

/// The smallest number of seeds that gives at least `wanted` plants with that chance; empty where
/// even `most_seeds_to_sow` do not. Requires: as above; wanted >= 0, 0 < chance < 1.
[[nodiscard]] std::optional<int> seeds_to_sow(int wanted,
                                              double chance,
                                              std::span<const double> shares,
                                              double correlation);

} // namespace nightsow::planner
