#include "climate/base/quantile.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace nightsow {

namespace {

// Q(p) = (1 - g) x(j) + g x(j+1), j = floor(n p + m), g = n p + m - j, j kept within 1..n.
double quantile(std::vector<double> values, double p, double m) {
  if (values.empty()) {
    return std::numeric_limits<double>::quiet_NaN();
  }
  std::sort(values.begin(), values.end());
  const auto n = static_cast<double>(values.size());
  const double place = n * p + m;
  // p and m are not exact in binary: without the small addition 0.2 * 5 may fall short of 1.
  const double below = std::floor(place + 1e-12);
  const double share = std::max(0.0, place - below);
  const auto at = [&](double j) {
    return values[static_cast<std::size_t>(std::clamp(j, 1.0, n)) - 1];
  };
  return (1.0 - share) * at(below) + share * at(below + 1.0);
}

} // namespace

double quantile_type7(std::vector<double> values, double p) {
  return quantile(std::move(values), p, 1.0 - p);
}

double quantile_type8(std::vector<double> values, double p) {
  return quantile(std::move(values), p, (p + 1.0) / 3.0);
}

} // namespace nightsow
