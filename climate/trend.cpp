#include "climate/trend.hpp"

#include "climate/base/quantile.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace nightsow::climate {

namespace {

double sign(double value) {
  return static_cast<double>(value > 0.0) - static_cast<double>(value < 0.0);
}

// n (n - 1) (2 n + 5) of all values, less the same of each group of ties.
double tied_pairs(std::span<const double> values) {
  const auto pairs = [](double n) { return n * (n - 1.0) * (2.0 * n + 5.0); };
  std::vector<double> sorted(values.begin(), values.end());
  std::sort(sorted.begin(), sorted.end());
  double sum = pairs(static_cast<double>(sorted.size()));
  for (auto group = sorted.begin(); group != sorted.end();) {
    const auto end = std::upper_bound(group, sorted.end(), *group);
    sum -= pairs(static_cast<double>(end - group));
    group = end;
  }
  return sum;
}

// The value at a rank that need not be whole, ranks from 1; ends stand for what lies beyond.
double at_rank(const std::vector<double>& sorted, double rank) {
  const double last = static_cast<double>(sorted.size()) - 1.0;
  const double position = std::clamp(rank - 1.0, 0.0, last);
  const double below = std::floor(position);
  const auto low = static_cast<std::size_t>(below);
  const std::size_t high = std::min(low + 1, sorted.size() - 1);
  return sorted[low] + (position - below) * (sorted[high] - sorted[low]);
}

double median(std::span<const double> values) {
  return quantile_type7({values.begin(), values.end()}, 0.5);
}

} // namespace

MannKendall mann_kendall(std::span<const double> values) {
  MannKendall test;
  if (values.size() < 2) {
    return test;
  }
  for (std::size_t i = 0; i < values.size(); ++i) {
    for (std::size_t j = i + 1; j < values.size(); ++j) {
      test.s += sign(values[j] - values[i]);
    }
  }
  test.variance = tied_pairs(values) / 18.0;
  if (test.variance > 0.0) {
    test.z = (test.s - sign(test.s)) / std::sqrt(test.variance);
    test.p_value = std::erfc(std::abs(test.z) / std::numbers::sqrt2);
  }
  return test;
}

std::optional<TheilSen> theil_sen(std::span<const double> times, std::span<const double> values) {
  constexpr double normal_quantile_975 = 1.959963984540054;
  std::vector<double> slopes;
  slopes.reserve(values.size() * (values.size() + 1) / 2);
  for (std::size_t i = 0; i < values.size(); ++i) {
    for (std::size_t j = i + 1; j < values.size(); ++j) {
      if (times[j] != times[i]) {
        slopes.push_back((values[j] - values[i]) / (times[j] - times[i]));
      }
    }
  }
  if (slopes.empty()) {
    return std::nullopt;
  }
  std::sort(slopes.begin(), slopes.end());
  const double width = normal_quantile_975 * std::sqrt(mann_kendall(values).variance);
  const auto count = static_cast<double>(slopes.size());
  TheilSen trend;
  trend.slope = median(slopes);
  trend.low = at_rank(slopes, (count - width) / 2.0);
  trend.high = at_rank(slopes, (count + width) / 2.0 + 1.0);
  return trend;
}

} // namespace nightsow::climate
