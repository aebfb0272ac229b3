#include "species-rules/germination_evidence.hpp"

#include "species-rules/development.hpp"
#include "species-rules/normal.hpp"
#include "species-rules/release.hpp"
#include "species-rules/viability.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <vector>

namespace nightsow::species_rules {

namespace {

// A range of four in five cases is so many standard deviations wide.
constexpr double range_in_deviations = 2.5631031310892007;
// A beta distribution as sure as this many seeds tried at most, and as unsure as this at least.
constexpr double most_sure = 2000.0;
constexpr double least_sure = 1.0;
constexpr double near_none = 0.002;
// Pairs of shares so unlikely beforehand against the likeliest that no count would tell them.
constexpr double negligible = 1e-15;
constexpr std::size_t alive_steps = 400;
constexpr std::size_t germination_steps = 100;
// Of a single chance, which needs no ranges.
constexpr std::size_t coarse_steps = 20;
constexpr std::size_t riper_steps = 10;

struct Weighted {
  double share = 0.0;
  double weight = 0.0;
};

// A beta distribution with this mean and range, on a fine grid.
std::vector<Weighted> beta_grid(const ShareRange& range, std::size_t steps) {
  if (range.low == range.high) {
    return {{range.share, 1.0}};
  }
  const double mean = std::clamp(range.share, near_none, 1.0 - near_none);
  const double deviation = (range.high - range.low) / range_in_deviations;
  const double sure =
      std::clamp(mean * (1.0 - mean) / (deviation * deviation) - 1.0, least_sure, most_sure);
  std::vector<Weighted> grid(steps);
  for (std::size_t i = 0; i < steps; ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(steps);
    const double log_density =
        (sure * mean - 1.0) * std::log(share) + (sure * (1.0 - mean) - 1.0) * std::log1p(-share);
    grid[i] = {share, log_density};
  }
  const double highest =
      std::max_element(grid.begin(), grid.end(), [](const Weighted& a, const Weighted& b) {
        return a.weight < b.weight;
      })->weight;
  for (Weighted& point : grid) {
    point.weight = std::exp(point.weight - highest);
  }
  return grid;
}

// Log-likelihood of the count when each seed comes up with this chance.
double log_chance(const TestCount& count, double comes_up) {
  constexpr double never_quite = 1e-9;
  const double chance = std::clamp(comes_up, never_quite, 1.0 - never_quite);
  return count.sprouted * std::log(chance) + (count.of - count.sprouted) * std::log1p(-chance);
}

// The share under which so much of the weight lies; within a step straight.
double quantile(const std::vector<Weighted>& grid, double total, double part) {
  const double half_step = 0.5 / static_cast<double>(grid.size());
  double before = 0.0;
  for (const Weighted& point : grid) {
    if (before + point.weight >= part * total) {
      const double within = point.weight > 0.0 ? (part * total - before) / point.weight : 0.5;
      return point.share + (2.0 * within - 1.0) * half_step;
    }
    before += point.weight;
  }
  return 1.0;
}

/// What a grid says: the range, and the variance.
struct Told {
  ShareRange range;
  double variance = 0.0;
};

Told told_by(const std::vector<Weighted>& grid) {
  double total = 0.0;
  double sum = 0.0;
  double squares = 0.0;
  for (const Weighted& point : grid) {
    total += point.weight;
    sum += point.weight * point.share;
    squares += point.weight * point.share * point.share;
  }
  const double mean = sum / total;
  return {{mean, quantile(grid, total, 0.1), quantile(grid, total, 0.9)},
          squares / total - mean * mean};
}

// A beta distribution is not quite the range that it stands for, least of all a skewed one. What it
// misses is carried into the range after the test by what the test left of the first belief, as of
// normal errors the variance after over the variance before: all of it where the test said nothing.
ShareRange range_after(const ShareRange& before,
                       const std::vector<Weighted>& grid_before,
                       const std::vector<Weighted>& grid_after) {
  if (grid_before.size() == 1) {
    return before;
  }
  const Told first = told_by(grid_before);
  const Told then = told_by(grid_after);
  const double left = std::clamp(then.variance / first.variance, 0.0, 1.0);
  const auto with_missed = [left](double after, double stood_for, double beta) {
    return std::clamp(after + left * (stood_for - beta), 0.0, 1.0);
  };
  const double share = with_missed(then.range.share, before.share, first.range.share);
  return {share,
          std::min(share, with_missed(then.range.low, before.low, first.range.low)),
          std::max(share, with_missed(then.range.high, before.high, first.range.high))};
}

// The mean of shares by their chances; 0 where nothing has any.
double told_by_chances(const std::vector<Weighted>& shares) {
  double sum = 0.0;
  double total = 0.0;
  for (const Weighted& one : shares) {
    sum += one.weight * one.share;
    total += one.weight;
  }
  return total > 0.0 ? sum / total : 0.0;
}

// The chance of the count, averaged over how fit the test may have been, against the best that any
// share could have had. `living_up` comes up of living ripe seed.
double weight_of(const TestCount& count,
                 double living_up,
                 std::span<const double> fits,
                 double ripe_share = 1.0) {
  const double came_up = static_cast<double>(count.sprouted) / count.of;
  const double best = log_chance(count, came_up);
  double sum = 0.0;
  for (const double fit : fits) {
    sum += std::exp(log_chance(count, living_up * std::max(fit, came_up) * ripe_share) - best);
  }
  return sum;
}

} // namespace

double test_fit(const SeedParameters& seed, double at_c) {
  double released = 1.0;
  if (seed.release) {
    released = seed.start == Start::hot ? released_by_warmth(at_c, *seed.release)
                                        : released_by_cool(at_c, *seed.release);
  }
  const double passed_c_d = test_days * thermal_rate(at_c, seed.cardinal);
  return released * emerged_share(passed_c_d, seed.thermal_time_c_d, seed.thermal_time_spread);
}

SeedBelief after_test(const SeedBelief& before,
                      const TestCount& count,
                      std::span<const double> fits) {
  const std::vector<Weighted> alive_before = beta_grid(before.alive, alive_steps);
  const std::vector<Weighted> germination_before = beta_grid(before.germination, germination_steps);
  std::vector<Weighted> alive = alive_before;
  std::vector<Weighted> germination = germination_before;
  for (Weighted& point : alive) {
    point.weight = 0.0;
  }
  for (Weighted& point : germination) {
    point.weight = 0.0;
  }
  for (std::size_t a = 0; a < alive.size(); ++a) {
    for (std::size_t g = 0; g < germination.size(); ++g) {
      const double before_test = alive_before[a].weight * germination_before[g].weight;
      if (before_test < negligible) {
        continue;
      }
      const double weight =
          before_test * weight_of(count, alive[a].share * germination[g].share, fits);
      alive[a].weight += weight;
      germination[g].weight += weight;
    }
  }
  return {range_after(before.alive, alive_before, alive),
          range_after(before.germination, germination_before, germination)};
}

double needs_no_ripening(const SeedBelief& before,
                         const TestCount& count,
                         std::span<const double> fits,
                         double ripe_share) {
  const double came_up = static_cast<double>(count.sprouted) / count.of;
  const double suited =
      std::accumulate(fits.begin(), fits.end(), 0.0) / static_cast<double>(fits.size());
  if (std::max(suited, came_up) < suits_enough) {
    return 0.0;
  }
  // Shares of the unripe seed that are ripe after all, and the chance of each.
  std::vector<Weighted> riper{{0.0, 1.0 - riper_beforehand}};
  for (std::size_t step = 1; step <= riper_steps; ++step) {
    riper.push_back({static_cast<double>(step) / riper_steps, riper_beforehand / riper_steps});
  }
  const double expected = told_by_chances(riper);
  const std::vector<Weighted> germination = beta_grid(before.germination, coarse_steps);
  const std::vector<Weighted> living = beta_grid(before.alive, coarse_steps);
  for (Weighted& level : riper) {
    const double ripe = ripe_or_needs_none(ripe_share, level.share);
    double likelihood = 0.0;
    for (const Weighted& alive : living) {
      for (const Weighted& up : germination) {
        likelihood +=
            alive.weight * up.weight * weight_of(count, alive.share * up.share, fits, ripe);
      }
    }
    level.weight *= likelihood;
  }
  return std::max(0.0, (told_by_chances(riper) - expected) / (1.0 - expected));
}

ShareRange germination_of_living(const Estimate& germination_share) {
  const double fresh = normal_share(initial_probit);
  return {std::min(1.0, germination_share.value / fresh),
          std::min(1.0, germination_share.low / fresh),
          std::min(1.0, germination_share.high / fresh)};
}

} // namespace nightsow::species_rules
