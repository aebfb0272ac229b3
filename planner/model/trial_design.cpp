#include "planner/model/trial_design.hpp"

#include "planner/model/count_range.hpp"
#include "planner/statistics/comparison.hpp"
#include "planner/statistics/sample_size.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <random>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr int most_summed = 500;

// 0 to below - 1, each as likely; a plain remainder would favour small numbers.
std::uint32_t drawn_below(std::uint32_t below, std::mt19937& random) {
  const std::uint32_t usable = UINT32_MAX - UINT32_MAX % below;
  std::uint32_t drawn = 0;
  do {
    drawn = static_cast<std::uint32_t>(random());
  } while (drawn >= usable);
  return drawn % below;
}

} // namespace

double chance_to_settle(double share_a, double share_b, int seeds_an_arm) {
  const std::vector<double> of_a = beta_binomial(seeds_an_arm, share_a, 0.0);
  const std::vector<double> of_b = beta_binomial(seeds_an_arm, share_b, 0.0);
  double chance = 0.0;
  for (int a = 0; a <= seeds_an_arm; ++a) {
    for (int b = 0; b <= seeds_an_arm; ++b) {
      const double here = of_a[static_cast<std::size_t>(a)] * of_b[static_cast<std::size_t>(b)];
      if (here < 1e-9) {
        continue;
      }
      const Interval limits = newcombe_difference({a, seeds_an_arm}, {b, seeds_an_arm});
      chance += limits.low > 0.0 || limits.high < 0.0 ? here : 0.0;
    }
  }
  return chance;
}

std::vector<PlannedTrial> planned_trials(std::span<const TrialIdea> ideas, int most) {
  std::vector<std::pair<double, PlannedTrial>> worth;
  for (const TrialIdea& idea : ideas) {
    const int an_arm = idea.seeds / 2;
    if (an_arm < 1 || std::abs(idea.share_a - idea.share_b) < 1e-9) {
      continue;
    }
    PlannedTrial trial{idea.name, an_arm, seeds_an_arm(idea.share_a, idea.share_b), 0.0};
    trial.power = chance_to_settle(idea.share_a, idea.share_b, std::min(an_arm, most_summed));
    worth.emplace_back(trial.power * idea.matters, trial);
  }
  std::stable_sort(
      worth.begin(), worth.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<PlannedTrial> list;
  for (const auto& [points, trial] : worth) {
    if (static_cast<int>(list.size()) < most) {
      list.push_back(trial);
    }
  }
  return list;
}

std::vector<int> drawn_arms(int pots, int arms, std::uint32_t seed_number) {
  std::vector<int> list;
  list.reserve(static_cast<std::size_t>(pots));
  for (int pot = 0; pot < pots; ++pot) {
    list.push_back(pot % arms);
  }
  std::mt19937 random(seed_number);
  for (std::size_t left = list.size(); left > 1; --left) {
    std::swap(list[left - 1], list[drawn_below(static_cast<std::uint32_t>(left), random)]);
  }
  return list;
}

} // namespace nightsow::planner
