#include "planner/model/learned_germination.hpp"

#include "planner/model/count_range.hpp"
#include "planner/statistics/grid_posterior.hpp"
#include "planner/statistics/log_weights.hpp"
#include "species-rules/germination_evidence.hpp"
#include "species-rules/normal.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <set>
#include <vector>

namespace nightsow::planner {

namespace {

using species_rules::Estimate;

constexpr int steps = 30; // either way, of a tenth of the rule's deviation
constexpr double step = 0.1;
constexpr double least_deviation = 0.1;
constexpr double least_share = 0.01;   // and as near to 1: log odds have no ends
constexpr double told_something = 0.8; // of the rule's deviation, at most
constexpr double clearly_better = 1.0; // of log likelihood; judgement
constexpr double least_chance = 1e-6;  // of a count: nothing is impossible

double log_odds(double share) {
  const double within = std::clamp(share, least_share, 1.0 - least_share);
  return std::log(within / (1.0 - within));
}

double share_of(double odds) {
  return 1.0 / (1.0 + std::exp(-odds));
}

/// Shares that are tried, the rule's in the middle.
struct Grid {
  double deviation = 1.0; ///< of the rule, in log odds
  std::vector<double> odds;
  std::vector<double> prior; ///< logarithms of what the rule thinks of them
};

Grid grid_of(const Estimate& rule) {
  Grid grid;
  grid.deviation = std::max((log_odds(rule.high) - log_odds(rule.low)) /
                                (2.0 * species_rules::normal_quantile(0.9)),
                            least_deviation);
  for (int i = -steps; i <= steps; ++i) {
    grid.odds.push_back(log_odds(rule.value) + step * i * grid.deviation);
    grid.prior.push_back(-0.5 * (step * i) * (step * i));
  }
  return grid;
}

// Seeds of one pot are alike; pots are not.
double correlation_of(const ReachedSowing& sowing) {
  const double seeds = sowing.count.sown;
  const double a_pot = seeds / std::max(1, sowing.pots);
  return seeds > 1.0 ? pots_differ * std::max(0.0, a_pot - 1.0) / (seeds - 1.0) : 0.0;
}

double log_likelihood(const ReachedSowing& sowing, double share) {
  const Estimate fresh{share, share, share, {}};
  const double of_living = species_rules::germination_of_living(fresh).share;
  const double mean = std::clamp(of_living * sowing.reached, 0.0, 1.0);
  const auto chances = beta_binomial(sowing.count.sown, mean, correlation_of(sowing));
  return std::log(std::max(least_chance, chances[static_cast<std::size_t>(sowing.count.came)]));
}

std::optional<GerminationRefusal> refusal(std::span<const ReachedSowing> sowings) {
  if (sowings.size() < 2) {
    return GerminationRefusal::too_few_sowings;
  }
  double could = 0.0;
  for (const ReachedSowing& sowing : sowings) {
    could += sowing.reached * sowing.count.sown;
  }
  return could < least_seeds_for_a_share ? std::optional{GerminationRefusal::too_few_seeds}
                                         : std::nullopt;
}

} // namespace

LearnedGermination learned_germination(std::span<const ReachedSowing> sowings,
                                       const Estimate& rule_share) {
  LearnedGermination result;
  std::set<int> seasons;
  for (const ReachedSowing& sowing : sowings) {
    seasons.insert(sowing.season);
  }
  result.sowings = static_cast<int>(sowings.size());
  result.seasons = static_cast<int>(seasons.size());
  result.refused = refusal(sowings);
  if (result.refused) {
    return result;
  }
  const Grid grid = grid_of(rule_share);
  std::vector<std::vector<double>> likelihoods;
  for (const ReachedSowing& sowing : sowings) {
    std::vector<double>& row = likelihoods.emplace_back();
    for (const double odds : grid.odds) {
      row.push_back(log_likelihood(sowing, share_of(odds)));
    }
  }
  const std::vector<double> logs = log_posterior(grid.prior, likelihoods);
  const std::size_t best = likeliest(logs);
  if (best == 0 || best + 1 == grid.odds.size()) {
    result.refused = GerminationRefusal::fits_no_share;
    return result;
  }
  const std::vector<double> weights = shares_of_logs(logs);
  double mean = 0.0;
  double square = 0.0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    mean += weights[i] * grid.odds[i];
    square += weights[i] * grid.odds[i] * grid.odds[i];
  }
  const double deviation = std::sqrt(std::max(0.0, square - mean * mean));
  if (deviation > told_something * grid.deviation) {
    result.refused = GerminationRefusal::too_unsure;
    return result;
  }
  const double z =
      species_rules::normal_quantile(0.9) * std::max(deviation, 0.5 * step * grid.deviation);
  result.share = {share_of(mean), {share_of(mean - z), share_of(mean + z)}};
  result.predicts_better = left_out_gain(grid.prior, likelihoods, steps);
  result.offered = result.sowings >= offered_sowings && result.seasons >= offered_seasons &&
                   result.predicts_better > clearly_better;
  return result;
}

} // namespace nightsow::planner
