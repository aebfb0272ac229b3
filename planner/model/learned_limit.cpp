#include "planner/model/learned_limit.hpp"

#include "planner/statistics/hazard_regression.hpp"
#include "species-rules/normal.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <numbers>
#include <set>

namespace nightsow::planner {

namespace {

constexpr double usual_look_days = 14.0;
constexpr double least_seedlings = 20.0;
constexpr double least_range_k = 3.0;
constexpr double told_something = 0.8; // of the rule's deviation, at most
constexpr int offered_sowings = 3;
constexpr int offered_seasons = 2;
constexpr double clearly_better = 1.0; // of log likelihood; judgement
constexpr double slope_doubt = 0.5;    // of the rule's slope

const double half_comes = std::log(std::numbers::ln2); // the link at a share of one half

using Priors = std::vector<std::optional<CoefficientPrior>>;

// Share that comes rises by 0.4 / spread a kelvin at the middle of a normal spread, and by
// ln(2) / 2 a unit of the link.
double slope_of(const LimitBefore& rule) {
  return -std::sqrt(0.5 / std::numbers::pi) / rule.spread_k / (0.5 * std::numbers::ln2);
}

// Coefficients: the link at the rule's limit, its slope, and the days of a look, which count as
// they are.
Priors priors_of(const LimitBefore& rule) {
  const double slope = slope_of(rule);
  return {CoefficientPrior{half_comes, std::abs(slope) * rule.limit_deviation_k},
          CoefficientPrior{slope, slope_doubt * std::abs(slope)},
          CoefficientPrior{1.0, 1e-4}};
}

std::vector<HazardRow> rows_of(std::span<const WindowLook> looks,
                               const LimitBefore& rule,
                               std::optional<int> without) {
  std::vector<HazardRow> rows;
  for (const WindowLook& look : looks) {
    if (look.waiting > 0.0 && look.sowing != without) {
      rows.push_back(
          {look.waiting,
           std::min(look.came, look.waiting),
           {1.0, look.coolest_window_c - rule.limit_c, std::log(look.days / usual_look_days)}});
    }
  }
  return rows;
}

double log_likelihood(const std::vector<HazardRow>& rows, const std::vector<double>& coefficients) {
  double result = 0.0;
  for (const HazardRow& row : rows) {
    double sum = 0.0;
    for (std::size_t i = 0; i < coefficients.size(); ++i) {
      sum += coefficients[i] * row.explains[i];
    }
    const double share = std::clamp(hazard_share(sum), 1e-12, 1.0 - 1e-12);
    result += row.came * std::log(share) + (row.waiting - row.came) * std::log1p(-share);
  }
  return result;
}

double predicts_better(std::span<const WindowLook> looks,
                       const LimitBefore& rule,
                       const std::set<int>& sowings) {
  const std::vector<double> by_rule{half_comes, slope_of(rule), 1.0};
  double better = 0.0;
  for (const int left_out : sowings) {
    std::vector<WindowLook> alone;
    std::copy_if(looks.begin(),
                 looks.end(),
                 std::back_inserter(alone),
                 [&](const WindowLook& look) { return look.sowing == left_out; });
    const std::vector<HazardRow> rows = rows_of(alone, rule, std::nullopt);
    const std::optional<HazardFit> fit =
        fit_hazard(rows_of(looks, rule, left_out), priors_of(rule));
    better +=
        log_likelihood(rows, fit ? fit->coefficients : by_rule) - log_likelihood(rows, by_rule);
  }
  return better;
}

std::optional<LimitRefusal> refusal(std::span<const WindowLook> looks,
                                    const std::set<int>& sowings) {
  if (sowings.size() < 2) {
    return LimitRefusal::too_few_sowings;
  }
  double came = 0.0;
  double coolest = looks.front().coolest_window_c;
  double warmest = coolest;
  for (const WindowLook& look : looks) {
    came += look.came;
    coolest = std::min(coolest, look.coolest_window_c);
    warmest = std::max(warmest, look.coolest_window_c);
  }
  if (came < least_seedlings) {
    return LimitRefusal::too_few_seedlings;
  }
  return warmest - coolest < least_range_k ? std::optional{LimitRefusal::nights_too_alike}
                                           : std::nullopt;
}

} // namespace

LearnedLimit learned_limit(std::span<const WindowLook> looks, const LimitBefore& rule) {
  std::set<int> sowings;
  std::set<int> seasons;
  for (const WindowLook& look : looks) {
    sowings.insert(look.sowing);
    seasons.insert(look.season);
  }
  LearnedLimit result;
  result.sowings = static_cast<int>(sowings.size());
  result.seasons = static_cast<int>(seasons.size());
  result.refused = refusal(looks, sowings);
  if (result.refused) {
    return result;
  }
  const std::vector<HazardRow> rows = rows_of(looks, rule, std::nullopt);
  // Without the rule's slope: does the record itself say that cooler nights bring more?
  const std::optional<HazardFit> alone =
      fit_hazard(rows, {std::nullopt, CoefficientPrior{0.0, 10.0}, CoefficientPrior{1.0, 1e-4}});
  const double z = species_rules::normal_quantile(0.9);
  if (!alone || alone->coefficients[1] + z * alone->errors[1] >= 0.0) {
    result.refused = LimitRefusal::not_told_by_nights;
    return result;
  }
  const std::optional<HazardFit> fit = fit_hazard(rows, priors_of(rule));
  if (!fit || fit->coefficients[1] >= 0.0) {
    result.refused = LimitRefusal::not_told_by_nights;
    return result;
  }
  const double slope = fit->coefficients[1];
  const double above_k = (half_comes - fit->coefficients[0]) / slope;
  // The delta method: by the constant -1 / slope, by the slope -above / slope.
  const double variance = (fit->covariance[0][0] + 2.0 * above_k * fit->covariance[0][1] +
                           above_k * above_k * fit->covariance[1][1]) /
                          (slope * slope);
  const double deviation_k = std::sqrt(std::max(0.0, variance));
  if (deviation_k > told_something * rule.limit_deviation_k) {
    result.refused = LimitRefusal::too_unsure;
    return result;
  }
  result.limit_c = rule.limit_c + above_k;
  result.limits_c = {result.limit_c - z * deviation_k, result.limit_c + z * deviation_k};
  result.predicts_better = predicts_better(looks, rule, sowings);
  result.offered = result.sowings >= offered_sowings && result.seasons >= offered_seasons &&
                   result.predicts_better > clearly_better;
  return result;
}

} // namespace nightsow::planner
