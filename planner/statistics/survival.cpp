#include "planner/statistics/survival.hpp"

#include "species-rules/normal.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>

namespace nightsow::planner {

namespace {

// Adds up the product and Greenwood's sum.
class Product {
public:
  SurvivalStep step(double days, int at_risk, int came) {
    share_ *= 1.0 - static_cast<double>(came) / at_risk;
    if (came < at_risk) {
      sum_ += static_cast<double>(came) / (static_cast<double>(at_risk) * (at_risk - came));
    }
    return {days, at_risk, came, share_, share_ * std::sqrt(sum_)};
  }

private:
  double share_ = 1.0;
  double sum_ = 0.0;
};

int still_at_risk(std::span<const Waited> seeds, double days) {
  return static_cast<int>(std::count_if(
      seeds.begin(), seeds.end(), [&](const Waited& seed) { return seed.days >= days; }));
}

std::map<double, int> came_by_day(std::span<const Waited> seeds) {
  std::map<double, int> days;
  for (const Waited& seed : seeds) {
    if (seed.came) {
      ++days[seed.days];
    }
  }
  return days;
}

} // namespace

std::vector<SurvivalStep> kaplan_meier(std::span<const Waited> seeds) {
  std::vector<SurvivalStep> steps;
  Product product;
  for (const auto& [days, came] : came_by_day(seeds)) {
    steps.push_back(product.step(days, still_at_risk(seeds, days), came));
  }
  return steps;
}

std::vector<SurvivalStep> life_table(std::span<const int> at_risk, std::span<const int> came) {
  std::vector<SurvivalStep> steps;
  Product product;
  for (std::size_t i = 0; i < at_risk.size(); ++i) {
    if (at_risk[i] > 0) {
      steps.push_back(product.step(static_cast<double>(i) + 1.0, at_risk[i], came[i]));
    }
  }
  return steps;
}

Interval log_log_limits(const SurvivalStep& step, double confidence) {
  const double share = step.waiting_share;
  if (share <= 0.0 || share >= 1.0) {
    return {share, share};
  }
  const double z = species_rules::normal_quantile(0.5 + 0.5 * confidence);
  const double half = z * step.error / (share * std::abs(std::log(share)));
  return {std::pow(share, std::exp(half)), std::pow(share, std::exp(-half))};
}

std::optional<double> days_until_waiting(std::span<const SurvivalStep> steps, double share) {
  const auto found = std::find_if(steps.begin(), steps.end(), [&](const SurvivalStep& step) {
    return step.waiting_share <= share + 1e-12;
  });
  return found == steps.end() ? std::nullopt : std::optional{found->days};
}

LogRank log_rank(std::span<const Waited> a, std::span<const Waited> b) {
  std::map<double, int> came = came_by_day(a);
  LogRank result;
  for (const auto& [days, of_a] : came) {
    result.observed_a += of_a;
  }
  for (const auto& [days, of_b] : came_by_day(b)) {
    came[days] += of_b;
  }
  for (const auto& [days, events] : came) {
    const double of_a = still_at_risk(a, days);
    const double all = of_a + still_at_risk(b, days);
    result.expected_a += events * of_a / all;
    if (all > 1.0) {
      result.variance += events * (of_a / all) * (1.0 - of_a / all) * (all - events) / (all - 1.0);
    }
  }
  if (result.variance > 0.0) {
    result.chi_square = std::pow(result.observed_a - result.expected_a, 2.0) / result.variance;
    result.chance = std::erfc(std::sqrt(0.5 * result.chi_square));
  }
  return result;
}

} // namespace nightsow::planner
