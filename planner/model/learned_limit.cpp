#include "planner/model/learned_limit.hpp"

#include "planner/model/count_range.hpp"
#include "planner/statistics/grid_posterior.hpp"
#include "planner/statistics/log_weights.hpp"
#include "species-rules/development.hpp"
#include "species-rules/normal.hpp"
#include "species-rules/release.hpp"
#include "species-rules/seed_parameters.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <limits>
#include <set>

namespace nightsow::planner {

namespace {

using species_rules::Estimate;
using species_rules::ReleaseLimit;

constexpr int limit_steps = 12; // either way, of a quarter of the rule's deviation
constexpr double limit_step = 0.25;
constexpr int time_steps = 8; // the same
constexpr double time_step = 0.25;
constexpr double least_deviation_k = 0.1;
constexpr double least_log_deviation = 0.05;
constexpr double told_something = 0.8; // of the rule's deviation, at most
constexpr double clearly_better = 1.0; // of log likelihood; judgement
constexpr double least_share = 1e-6;   // of what comes between two looks: nothing is impossible

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// One pair of a limit and a time that is tried.
struct Cell {
  double limit_off = 0.0; ///< in the rule's deviations
  double time_off = 0.0;
  double limit_c = 0.0;
  double time_c_d = 0.0;
};

struct Grid {
  double limit_deviation_k = 1.0;
  double log_time_deviation = 0.1;
  std::vector<Cell> cells;
};

double deviation_of(double low, double high) {
  return (high - low) / (2.0 * species_rules::normal_quantile(0.9));
}

Grid grid_of(const species_rules::Rule& rule, double time_c_d) {
  const Estimate& limit = *rule.gate.night_limit_c;
  const std::optional<Estimate>& time = rule.development.thermal_time_c_d;
  Grid grid;
  grid.limit_deviation_k = std::max(deviation_of(limit.low, limit.high), least_deviation_k);
  grid.log_time_deviation =
      time && time->low > 0.0
          ? std::max(deviation_of(std::log(time->low), std::log(time->high)), least_log_deviation)
          : least_log_deviation;
  for (int i = -limit_steps; i <= limit_steps; ++i) {
    for (int j = -time_steps; j <= time_steps; ++j) {
      const double limit_off = limit_step * i;
      const double time_off = time_step * j;
      grid.cells.push_back({limit_off,
                            time_off,
                            limit.value + limit_off * grid.limit_deviation_k,
                            time_c_d * std::exp(time_off * grid.log_time_deviation)});
    }
  }
  return grid;
}

/// Seed released on one day, share of the seed that comes at all.
struct Release {
  int day = 0;
  double share = 0.0;
};

std::vector<Release> releases(const WatchedSowing& sowing, const ReleaseLimit& limit) {
  std::vector<Release> list{{0, limit.indifferent_share}};
  double so_far = limit.indifferent_share;
  for (int day = 0; day < static_cast<int>(sowing.coolest_c.size()); ++day) {
    const std::optional<double>& coolest_c = sowing.coolest_c[at(day)];
    const double share = coolest_c ? species_rules::released_by_cool(*coolest_c, limit) : so_far;
    if (share > so_far) {
      list.push_back({day, share - so_far});
      so_far = share;
    }
  }
  return list;
}

/// Log likelihood of the looks of one sowing, each seed as much as it is worth in its pot.
class Likelihood {
public:
  explicit Likelihood(const species_rules::SeedParameters& seed) : seed_(seed) {}

  [[nodiscard]] double of(const WatchedSowing& sowing, const Cell& cell) const {
    ReleaseLimit limit = *seed_.release;
    limit.limit_c = cell.limit_c;
    const std::vector<Release> released = releases(sowing, limit);
    double result = 0.0;
    double up_before = 0.0;
    int came_before = 0;
    for (const LimitLook& look : sowing.looks) {
      const double up = up_by(sowing, released, look.day, cell.time_c_d);
      result += (look.came - came_before) * std::log(std::max(up - up_before, least_share));
      up_before = up;
      came_before = look.came;
    }
    const double up_in_the_end = std::max(up_before, least_share);
    if (sowing.firm_share) {
      result += *sowing.firm_share * std::max(0, sowing.seeds - came_before) *
                std::log(std::max(1.0 - up_in_the_end, least_share));
    } else {
      result -= came_before * std::log(up_in_the_end);
    }
    const double a_pot = static_cast<double>(sowing.seeds) / std::max(1, sowing.pots);
    return result / (1.0 + std::max(0.0, a_pot - 1.0) * pots_differ);
  }

private:
  [[nodiscard]] double up_by(const WatchedSowing& sowing,
                             const std::vector<Release>& released,
                             int day,
                             double time_c_d) const {
    double up = 0.0;
    for (const Release& release : released) {
      if (release.day < day) {
        up += release.share * species_rules::emerged_share(sowing.progress_c_d[at(day)] -
                                                               sowing.progress_c_d[at(release.day)],
                                                           time_c_d,
                                                           seed_.thermal_time_spread);
      }
    }
    return up;
  }

  species_rules::SeedParameters seed_;
};

int came_of(const WatchedSowing& sowing) {
  return sowing.looks.empty() ? 0 : sowing.looks.back().came;
}

std::optional<LimitRefusal> refusal(const std::vector<const WatchedSowing*>& sowings) {
  if (sowings.size() < 2) {
    return LimitRefusal::too_few_sowings;
  }
  int came = 0;
  double coolest = std::numeric_limits<double>::infinity();
  double warmest = -coolest;
  for (const WatchedSowing* sowing : sowings) {
    came += came_of(*sowing);
    for (const LimitLook& look : sowing->looks) {
      if (const std::optional<double>& window_c = sowing->coolest_c[at(look.day)]) {
        coolest = std::min(coolest, *window_c);
        warmest = std::max(warmest, *window_c);
      }
    }
  }
  if (came < least_seedlings_for_a_limit) {
    return LimitRefusal::too_few_seedlings;
  }
  return warmest - coolest < least_range_for_a_limit_k
             ? std::optional{LimitRefusal::nights_too_alike}
             : std::nullopt;
}

/// Logarithms of what the rule thinks of the cells.
std::vector<double> prior_of(const Grid& grid) {
  std::vector<double> logs;
  logs.reserve(grid.cells.size());
  for (const Cell& cell : grid.cells) {
    logs.push_back(-0.5 * (cell.limit_off * cell.limit_off + cell.time_off * cell.time_off));
  }
  return logs;
}

struct Middle {
  double mean = 0.0;
  double deviation = 0.0;
};

Middle middle_of(const Grid& grid,
                 const std::vector<double>& shares,
                 const std::function<double(const Cell&)>& figure) {
  double mean = 0.0;
  double square = 0.0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    const double value = figure(grid.cells[i]);
    mean += shares[i] * value;
    square += shares[i] * value * value;
  }
  return {mean, std::sqrt(std::max(0.0, square - mean * mean))};
}

std::optional<LearnedValue> time_of(const Grid& grid, const std::vector<double>& shares) {
  const Middle log =
      middle_of(grid, shares, [](const Cell& cell) { return std::log(cell.time_c_d); });
  if (log.deviation > told_something * grid.log_time_deviation) {
    return std::nullopt;
  }
  // Never surer than the steps that were tried.
  const double step = time_step * grid.log_time_deviation;
  const double z = species_rules::normal_quantile(0.9) * std::max(log.deviation, 0.5 * step);
  return LearnedValue{std::exp(log.mean), {std::exp(log.mean - z), std::exp(log.mean + z)}};
}

} // namespace

LearnedLimit learned_limit(std::span<const WatchedSowing> sowings,
                           const species_rules::Rule& rule) {
  std::vector<const WatchedSowing*> watched;
  std::set<int> seasons;
  for (const WatchedSowing& sowing : sowings) {
    if (!sowing.looks.empty()) {
      watched.push_back(&sowing);
      seasons.insert(sowing.season);
    }
  }
  LearnedLimit result;
  result.sowings = static_cast<int>(watched.size());
  result.seasons = static_cast<int>(seasons.size());
  result.refused = refusal(watched);
  if (result.refused) {
    return result;
  }
  const species_rules::SeedParameters seed = species_rules::seed_parameters(rule);
  const Grid grid = grid_of(rule, seed.thermal_time_c_d);
  const Likelihood likelihood(seed);
  std::vector<std::vector<double>> likelihoods;
  for (const WatchedSowing* sowing : watched) {
    std::vector<double>& row = likelihoods.emplace_back();
    for (const Cell& cell : grid.cells) {
      row.push_back(likelihood.of(*sowing, cell));
    }
  }
  const std::vector<double> prior = prior_of(grid);
  const std::vector<double> logs = log_posterior(prior, likelihoods);
  if (std::abs(grid.cells[likeliest(logs)].limit_off) >= limit_step * limit_steps) {
    result.refused = LimitRefusal::fits_no_limit;
    return result;
  }
  const std::vector<double> shares = shares_of_logs(logs);
  const Middle limit = middle_of(grid, shares, [](const Cell& cell) { return cell.limit_c; });
  if (limit.deviation > told_something * grid.limit_deviation_k) {
    result.refused = LimitRefusal::too_unsure;
    return result;
  }
  const double step = limit_step * grid.limit_deviation_k;
  const double z = species_rules::normal_quantile(0.9) * std::max(limit.deviation, 0.5 * step);
  result.limit_c = {limit.mean, {limit.mean - z, limit.mean + z}};
  result.thermal_time_c_d = time_of(grid, shares);
  result.predicts_better = left_out_gain(prior, likelihoods, grid.cells.size() / 2);
  result.offered = result.sowings >= offered_sowings && result.seasons >= offered_seasons &&
                   result.predicts_better > clearly_better;
  return result;
}

} // namespace nightsow::planner
