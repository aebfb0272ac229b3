#include "planner/model/hazards.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace nightsow::planner {

namespace {

constexpr double most_hazard = 30.0;

} // namespace

double hazard_of(double loss) {
  return loss >= 1.0 ? most_hazard : std::min(most_hazard, -std::log1p(-loss));
}

double part_of(double lost, double hazard, double all_hazards) {
  return all_hazards > 0.0 ? lost * hazard / all_hazards : 0.0;
}

double between(const std::vector<double>& sums, int first, int last) {
  if (last < first) {
    return 0.0;
  }
  const auto at = [&sums](int day) { return sums[static_cast<std::size_t>(day)]; };
  return at(last) - (first > 0 ? at(first - 1) : 0.0);
}

} // namespace nightsow::planner
