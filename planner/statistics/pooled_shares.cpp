#include "planner/statistics/pooled_shares.hpp"

#include "planner/model/count_range.hpp"

#include <boost/math/special_functions/digamma.hpp>
#include <boost/math/special_functions/trigamma.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace nightsow::planner {

namespace {

using boost::math::digamma;
using boost::math::trigamma;

constexpr int most_steps = 500;

double log_beta(double a, double b) {
  return std::lgamma(a) + std::lgamma(b) - std::lgamma(a + b);
}

double log_choose(int n, int k) {
  return std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0);
}

double log_likelihood(std::span<const Count> sowings, const BetaShares& at) {
  double sum = 0.0;
  for (const Count& one : sowings) {
    sum += log_choose(one.sown, one.came) + log_beta(one.came + at.a, one.sown - one.came + at.b) -
           log_beta(at.a, at.b);
  }
  return sum;
}

// Derivatives of the log likelihood by ln a and ln b.
struct Slopes {
  double by_a = 0.0;
  double by_b = 0.0;
  double by_aa = 0.0;
  double by_bb = 0.0;
  double by_ab = 0.0;
};

Slopes slopes(std::span<const Count> sowings, const BetaShares& at) {
  const double a = at.a;
  const double b = at.b;
  Slopes plain;
  for (const Count& one : sowings) {
    const double k = one.came;
    const double left = one.sown - one.came;
    const double together = digamma(a + b) - digamma(one.sown + a + b);
    const double together_twice = trigamma(a + b) - trigamma(one.sown + a + b);
    plain.by_a += digamma(k + a) - digamma(a) + together;
    plain.by_b += digamma(left + b) - digamma(b) + together;
    plain.by_aa += trigamma(k + a) - trigamma(a) + together_twice;
    plain.by_bb += trigamma(left + b) - trigamma(b) + together_twice;
    plain.by_ab += together_twice;
  }
  return {a * plain.by_a,
          b * plain.by_b,
          a * a * plain.by_aa + a * plain.by_a,
          b * b * plain.by_bb + b * plain.by_b,
          a * b * plain.by_ab};
}

// The way uphill: Newton's where the surface is curved downward, else straight up.
BetaShares uphill(const Slopes& at) {
  const double determinant = at.by_aa * at.by_bb - at.by_ab * at.by_ab;
  if (at.by_aa < 0.0 && determinant > 0.0) {
    return {-(at.by_bb * at.by_a - at.by_ab * at.by_b) / determinant,
            -(at.by_aa * at.by_b - at.by_ab * at.by_a) / determinant};
  }
  const double length = std::hypot(at.by_a, at.by_b);
  return {0.5 * at.by_a / length, 0.5 * at.by_b / length};
}

BetaShares moved(const BetaShares& from, const BetaShares& way, double part) {
  return {from.a * std::exp(std::clamp(part * way.a, -3.0, 3.0)),
          from.b * std::exp(std::clamp(part * way.b, -3.0, 3.0))};
}

BetaShares within_bounds(const BetaShares& shares) {
  const double size = shares.a + shares.b;
  const double factor = std::min(1.0, most_alike / size);
  return {shares.a * factor, shares.b * factor};
}

} // namespace

std::optional<BetaFit> fit_beta_binomial(std::span<const Count> sowings) {
  Count all;
  int with_seeds = 0;
  for (const Count& one : sowings) {
    all.came += one.came;
    all.sown += one.sown;
    with_seeds += one.sown > 0 ? 1 : 0;
  }
  if (with_seeds < 2 || all.came == 0 || all.came == all.sown) {
    return std::nullopt;
  }
  const double share = static_cast<double>(all.came) / all.sown;
  BetaShares at{4.0 * share, 4.0 * (1.0 - share)};
  double height = log_likelihood(sowings, at);
  for (int step = 0; step < most_steps; ++step) {
    const BetaShares way = uphill(slopes(sowings, at));
    double part = 1.0;
    BetaShares next = within_bounds(moved(at, way, part));
    while (part > 1e-12 && log_likelihood(sowings, next) < height) {
      part *= 0.5;
      next = within_bounds(moved(at, way, part));
    }
    const double moved_by = std::abs(std::log(next.a / at.a)) + std::abs(std::log(next.b / at.b));
    const bool higher = part > 1e-12;
    if (higher) {
      at = next;
      height = log_likelihood(sowings, at);
    }
    if (!higher || moved_by < 1e-12) {
      break;
    }
  }
  return BetaFit{at, height};
}

BetaShares given(const BetaShares& before, const Count& count) {
  return {before.a + count.came, before.b + count.sown - count.came};
}

Interval interval_of(const BetaShares& shares, double confidence) {
  const double beyond = 0.5 * (1.0 - confidence);
  return {beta_quantile(shares.a, shares.b, beyond),
          beta_quantile(shares.a, shares.b, 1.0 - beyond)};
}

int count_quantile(const BetaShares& shares, int n, double part) {
  const std::vector<double> chances = beta_binomial(n, shares.mean(), shares.correlation());
  double so_far = 0.0;
  for (std::size_t k = 0; k < chances.size(); ++k) {
    so_far += chances[k];
    if (so_far >= part - 1e-12) {
      return static_cast<int>(k);
    }
  }
  return n;
}

} // namespace nightsow::planner
