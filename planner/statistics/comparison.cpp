#include "planner/statistics/comparison.hpp"

#include "planner/statistics/log_weights.hpp"

#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <limits>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double as_likely = 1.0 + 1e-7; // rounding must not decide what counts as likelier

double log_choose(int n, int k) {
  return std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0);
}

// How many of those that came may be of a, and how likely each is at an odds ratio.
struct Possible {
  int least = 0;
  std::vector<double> log_weights; // at an odds ratio of 1

  [[nodiscard]] std::vector<double> chances(double log_ratio) const {
    std::vector<double> list;
    for (std::size_t i = 0; i < log_weights.size(); ++i) {
      list.push_back(log_weights[i] + static_cast<double>(i) * log_ratio);
    }
    return shares_of_logs(std::move(list));
  }
};

Possible possible(const Count& a, const Count& b) {
  const int came = a.came + b.came;
  Possible result{std::max(0, came - b.sown), {}};
  for (int k = result.least; k <= std::min(came, a.sown); ++k) {
    result.log_weights.push_back(log_choose(a.sown, k) + log_choose(b.sown, came - k));
  }
  return result;
}

double sum_from(const std::vector<double>& chances, std::size_t from) {
  double sum = 0.0;
  for (std::size_t i = from; i < chances.size(); ++i) {
    sum += chances[i];
  }
  return sum;
}

double mean_of(const std::vector<double>& chances) {
  double mean = 0.0;
  for (std::size_t i = 0; i < chances.size(); ++i) {
    mean += static_cast<double>(i) * chances[i];
  }
  return mean;
}

// The logarithm of the odds ratio at which a rising function passes zero.
double root_of(const std::function<double(double)>& rising) {
  constexpr double far = 60.0;
  if (rising(-far) >= 0.0) {
    return -std::numeric_limits<double>::infinity();
  }
  if (rising(far) <= 0.0) {
    return std::numeric_limits<double>::infinity();
  }
  std::uintmax_t steps = 200;
  const auto bracket = boost::math::tools::toms748_solve(
      rising, -far, far, boost::math::tools::eps_tolerance<double>(50), steps);
  return 0.5 * (bracket.first + bracket.second);
}

} // namespace

Interval newcombe_difference(const Count& a, const Count& b, double confidence) {
  if (a.sown == 0 || b.sown == 0) {
    return {-1.0, 1.0};
  }
  const double share_a = static_cast<double>(a.came) / a.sown;
  const double share_b = static_cast<double>(b.came) / b.sown;
  const Interval of_a = wilson(a, confidence);
  const Interval of_b = wilson(b, confidence);
  const double difference = share_a - share_b;
  return {difference - std::hypot(share_a - of_a.low, of_b.high - share_b),
          difference + std::hypot(of_a.high - share_a, share_b - of_b.low)};
}

FisherTest fisher_exact(const Count& a, const Count& b) {
  const Possible tables = possible(a, b);
  const std::vector<double> chances = tables.chances(0.0);
  const auto here = static_cast<std::size_t>(a.came - tables.least);
  FisherTest test{0.0, 0.0, 0.0};
  for (std::size_t i = 0; i < chances.size(); ++i) {
    test.two_sided += chances[i] <= chances[here] * as_likely ? chances[i] : 0.0;
    test.less += i <= here ? chances[i] : 0.0;
    test.greater += i >= here ? chances[i] : 0.0;
  }
  return test;
}

OddsRatio odds_ratio(const Count& a, const Count& b, double confidence) {
  const Possible tables = possible(a, b);
  const auto here = static_cast<std::size_t>(a.came - tables.least);
  const double beyond = 0.5 * (1.0 - confidence);
  const bool fewest = here == 0;
  const bool most = here + 1 == tables.log_weights.size();
  if (fewest && most) {
    return {1.0, {0.0, std::numeric_limits<double>::infinity()}};
  }
  const double log_ratio =
      root_of([&](double at) { return mean_of(tables.chances(at)) - static_cast<double>(here); });
  const double log_low =
      root_of([&](double at) { return sum_from(tables.chances(at), here) - beyond; });
  const double log_high =
      root_of([&](double at) { return beyond - 1.0 + sum_from(tables.chances(at), here + 1); });
  return {fewest ? 0.0 : (most ? std::numeric_limits<double>::infinity() : std::exp(log_ratio)),
          {fewest ? 0.0 : std::exp(log_low),
           most ? std::numeric_limits<double>::infinity() : std::exp(log_high)}};
}

} // namespace nightsow::planner
