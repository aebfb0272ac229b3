#include "planner/answers/water_window.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

constexpr double little_share = 0.05;
constexpr double little_plants = 0.5;
constexpr double never_more_share = 0.2;
// Shares and plants under these are nobody's plan.
constexpr double least_share = 1e-3;
constexpr double least_plants = 0.05;

} // namespace

std::optional<WaterWindow> water_window(Date first,
                                        const std::vector<double>& shares,
                                        std::optional<double> seeds) {
  const auto best = std::max_element(shares.begin(), shares.end());
  if (best == shares.end() || *best < least_share || (seeds && *best * *seeds < least_plants)) {
    return std::nullopt;
  }
  double loss = little_share * *best;
  if (seeds && *seeds > 0.0) {
    loss = std::max(loss, std::min(little_plants / *seeds, never_more_share * *best));
  }
  const auto good = [least = *best - loss](double share) { return share >= least; };
  const auto after = std::find_if_not(best, shares.end(), good);
  const auto before = std::find_if_not(std::make_reverse_iterator(best), shares.rend(), good);
  const auto date_of = [&](auto entry) {
    return first + Days{static_cast<int>(entry - shares.begin())};
  };
  return WaterWindow{date_of(before.base()), date_of(best), date_of(after - 1), *best};
}

} // namespace nightsow::planner
