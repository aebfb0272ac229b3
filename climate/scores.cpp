#include "climate/scores.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

namespace nightsow::climate {

namespace {

// Sum of |a - b| over all unordered pairs: in sorted order the i-th value is added i times and
// taken away once for each value after it.
double sum_of_pair_distances(std::span<const double> values) {
  std::vector<double> sorted(values.begin(), values.end());
  std::sort(sorted.begin(), sorted.end());
  const auto count = static_cast<double>(sorted.size());
  double sum = 0.0;
  double before = 0.0;
  for (const double value : sorted) {
    sum += value * (2.0 * before + 1.0 - count);
    before += 1.0;
  }
  return sum;
}

} // namespace

double fair_crps(std::span<const double> members, double observed) {
  if (members.empty()) {
    return std::numeric_limits<double>::quiet_NaN();
  }
  const auto count = static_cast<double>(members.size());
  double distance = 0.0;
  for (const double member : members) {
    distance += std::abs(member - observed);
  }
  distance /= count;
  if (members.size() == 1) {
    return distance;
  }
  return distance - sum_of_pair_distances(members) / (count * (count - 1.0));
}

double normal_crps(double mean, double deviation, double observed) {
  const double z = (observed - mean) / deviation;
  const double density = std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi);
  const double twice_below_less_one = std::erf(z / std::numbers::sqrt2);
  return deviation * (z * twice_below_less_one + 2.0 * density - std::numbers::inv_sqrtpi);
}

double middle_rank(std::span<const double> members, double observed) {
  if (members.empty()) {
    return std::numeric_limits<double>::quiet_NaN();
  }
  double rank = 0.0;
  for (const double member : members) {
    if (member < observed) {
      rank += 1.0;
    } else if (member == observed) {
      rank += 0.5;
    }
  }
  return rank / static_cast<double>(members.size());
}

double brier_score(double chance, bool happened) {
  const double missed = chance - (happened ? 1.0 : 0.0);
  return missed * missed;
}

} // namespace nightsow::climate
