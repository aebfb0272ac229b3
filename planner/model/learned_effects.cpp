#include "planner/model/learned_effects.hpp"

#include "planner/model/count_range.hpp"
#include "planner/statistics/hazard_regression.hpp"
#include "species-rules/normal.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <set>

namespace nightsow::planner {

namespace {

constexpr double kinds_differ = 1.5; // log odds; judgement
constexpr double effect_doubt = 1.0; // the same
constexpr double level_doubt = 3.0;
constexpr double alike_years = 0.5; // ages nearer than this are alike

double log_odds(double share) {
  return std::log(share / (1.0 - share));
}

double share_at(double odds) {
  return 1.0 / (1.0 + std::exp(-odds));
}

// Seeds are worth what they are worth when they share pots.
double worth(const EffectSowing& sowing) {
  const double a_pot = static_cast<double>(sowing.count.sown) / std::max(1, sowing.pots);
  return 1.0 / (1.0 + std::max(0.0, a_pot - 1.0) * pots_differ);
}

std::string commonest_bench(std::span<const EffectSowing> sowings) {
  std::map<std::string, int> counts;
  for (const EffectSowing& sowing : sowings) {
    ++counts[sowing.bench];
  }
  const auto most =
      std::max_element(counts.begin(), counts.end(), [](const auto& a, const auto& b) {
        return a.second < b.second;
      });
  return most == counts.end() ? std::string{} : most->first;
}

/// Which coefficient belongs to what.
class Layout {
public:
  explicit Layout(std::span<const EffectSowing> sowings) : usual_bench_(commonest_bench(sowings)) {
    std::set<std::string> kinds;
    std::set<std::string> benches;
    for (const EffectSowing& sowing : sowings) {
      kinds.insert(sowing.kind);
      if (sowing.bench != usual_bench_) {
        benches.insert(sowing.bench);
      }
    }
    kinds_.assign(kinds.begin(), kinds.end());
    benches_.assign(benches.begin(), benches.end());
  }

  [[nodiscard]] const std::vector<std::string>& benches() const { return benches_; }

  [[nodiscard]] const std::string& usual_bench() const { return usual_bench_; }

  [[nodiscard]] static std::size_t of_age() { return 1; }

  [[nodiscard]] static std::size_t of_bench(std::size_t index) { return 2 + index; }

  [[nodiscard]] std::vector<double> row(const EffectSowing& sowing, double middle_age) const {
    std::vector<double> values{1.0, sowing.age_years.value_or(middle_age) - middle_age};
    for (const std::string& bench : benches_) {
      values.push_back(sowing.bench == bench ? 1.0 : 0.0);
    }
    for (const std::string& kind : kinds_) {
      values.push_back(sowing.kind == kind ? 1.0 : 0.0);
    }
    return values;
  }

  [[nodiscard]] std::vector<std::optional<CoefficientPrior>> priors() const {
    std::vector<std::optional<CoefficientPrior>> list{CoefficientPrior{0.0, level_doubt},
                                                      CoefficientPrior{0.0, effect_doubt}};
    list.insert(list.end(), benches_.size(), CoefficientPrior{0.0, effect_doubt});
    list.insert(list.end(), kinds_.size(), CoefficientPrior{0.0, kinds_differ});
    return list;
  }

private:
  std::string usual_bench_;
  std::vector<std::string> benches_;
  std::vector<std::string> kinds_;
};

// Sowings of kinds within which ages lie apart.
int differ_in_age(std::span<const EffectSowing> sowings) {
  std::map<std::string, std::vector<double>> ages;
  for (const EffectSowing& sowing : sowings) {
    if (sowing.age_years) {
      ages[sowing.kind].push_back(*sowing.age_years);
    }
  }
  int differing = 0;
  for (const auto& [kind, of_kind] : ages) {
    const auto [least, most] = std::minmax_element(of_kind.begin(), of_kind.end());
    differing += *most - *least >= alike_years ? static_cast<int>(of_kind.size()) : 0;
  }
  return differing;
}

// Sowings of kinds that were sown both on this bench and on the usual one.
int differ_in_bench(std::span<const EffectSowing> sowings,
                    const std::string& bench,
                    const std::string& usual) {
  std::map<std::string, std::pair<int, int>> counts;
  for (const EffectSowing& sowing : sowings) {
    counts[sowing.kind].first += sowing.bench == bench ? 1 : 0;
    counts[sowing.kind].second += sowing.bench == usual ? 1 : 0;
  }
  int differing = 0;
  for (const auto& [kind, count] : counts) {
    differing += count.first > 0 && count.second > 0 ? count.first + count.second : 0;
  }
  return differing;
}

std::optional<EffectRefusal> refusal(int differing, std::size_t sowings) {
  if (static_cast<int>(sowings) < least_sowings_for_an_effect) {
    return EffectRefusal::too_few_sowings;
  }
  if (differing == 0) {
    return EffectRefusal::nothing_differs;
  }
  return differing < least_sowings_for_an_effect ? std::optional{EffectRefusal::too_few_sowings}
                                                 : std::nullopt;
}

double middle_age_of(std::span<const EffectSowing> sowings) {
  double sum = 0.0;
  int known = 0;
  for (const EffectSowing& sowing : sowings) {
    sum += sowing.age_years.value_or(0.0);
    known += sowing.age_years ? 1 : 0;
  }
  return known > 0 ? sum / known : 0.0;
}

void add_figures(const HazardFit& fit, std::size_t index, double usual, LearnedEffect& effect) {
  const double z = species_rules::normal_quantile(0.975);
  const double odds = log_odds(usual);
  const double by = fit.coefficients[index];
  const double error = fit.errors[index];
  effect.usual_share = usual;
  effect.share = share_at(odds + by);
  effect.limits = {share_at(odds + by - z * error), share_at(odds + by + z * error)};
  effect.settled = effect.limits.high < usual || effect.limits.low > usual;
}

} // namespace

std::vector<LearnedEffect> learned_effects(std::span<const EffectSowing> sowings) {
  const Layout layout(sowings);
  const double middle_age = middle_age_of(sowings);
  std::vector<HazardRow> rows;
  double came = 0.0;
  double sown = 0.0;
  for (const EffectSowing& sowing : sowings) {
    const double seeds = worth(sowing) * sowing.count.sown;
    rows.push_back({seeds, worth(sowing) * sowing.count.came, layout.row(sowing, middle_age)});
    came += sowing.count.came;
    sown += sowing.count.sown;
  }
  std::vector<LearnedEffect> effects(1);
  effects.front().sowings = differ_in_age(sowings);
  for (const std::string& bench : layout.benches()) {
    LearnedEffect effect;
    effect.bench = bench;
    effect.against = layout.usual_bench();
    effect.sowings = differ_in_bench(sowings, bench, layout.usual_bench());
    effects.push_back(std::move(effect));
  }
  const std::optional<HazardFit> fit =
      rows.empty() ? std::nullopt : fit_hazard(rows, layout.priors(), HazardLink::logit);
  // Kept off its ends, where odds have no meaning.
  const double usual = (came + 0.5) / (sown + 1.0);
  for (std::size_t i = 0; i < effects.size(); ++i) {
    LearnedEffect& effect = effects[i];
    effect.refused = fit ? refusal(effect.sowings, sowings.size())
                         : std::optional{EffectRefusal::too_few_sowings};
    if (!effect.refused) {
      add_figures(*fit, i == 0 ? Layout::of_age() : Layout::of_bench(i - 1), usual, effect);
    }
  }
  return effects;
}

} // namespace nightsow::planner
