#include "species-rules/seed_parameters.hpp"

#include "species-rules/growth.hpp"
#include "species-rules/ripeness.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::species_rules {

namespace {

constexpr double least_gap_k = 0.5;

double value_or(const std::optional<Estimate>& estimate, double otherwise) {
  return estimate ? estimate->value : otherwise;
}

template <class E> E word_or(const std::optional<Choice<E>>& choice, E otherwise) {
  return choice ? choice->value : otherwise;
}

std::optional<double> value_of(const std::optional<Estimate>& estimate) {
  return estimate ? std::optional{estimate->value} : std::nullopt;
}

// Fleshy seed and kinds that come up at any time wait for no night.
std::optional<ReleaseLimit> release_of(const GateRule& gate, Start start) {
  const auto limit = start == Start::cool  ? value_of(gate.night_limit_c)
                     : start == Start::hot ? value_of(gate.warm_night_c)
                                           : std::nullopt;
  if (!limit) {
    return std::nullopt;
  }
  return ReleaseLimit{
      *limit, value_or(gate.night_limit_spread_k, 2.5), value_or(gate.indifferent_share, 0.15)};
}

CardinalTemperatures cardinal_of(const DevelopmentRule& development) {
  CardinalTemperatures cardinal;
  cardinal.optimum_c = value_or(development.optimum_c, cardinal.optimum_c);
  cardinal.base_c =
      std::min(value_or(development.base_c, cardinal.base_c), cardinal.optimum_c - least_gap_k);
  cardinal.ceiling_c = std::max(value_or(development.ceiling_c, cardinal.ceiling_c),
                                cardinal.optimum_c + least_gap_k);
  return cardinal;
}

int whole(const std::optional<Estimate>& estimate, int otherwise) {
  return static_cast<int>(std::lround(value_or(estimate, otherwise)));
}

} // namespace

SeedParameters seed_parameters(const Rule& rule) {
  SeedParameters seed;
  seed.start = word_or(rule.gate.start, seed.start);
  seed.growth = word_or(rule.gate.growth, seed.growth);
  seed.swing = word_or(rule.gate.swing, seed.swing);
  seed.release = release_of(rule.gate, seed.start);
  seed.of = std::max(1, whole(rule.gate.of, seed.of));
  seed.nights = std::clamp(whole(rule.gate.nights, seed.nights), 1, seed.of);
  seed.day_limit_c = value_of(rule.gate.day_limit_c);

  seed.germination_share = value_or(rule.seed.germination_share, 0.6);
  seed.half_life_years = value_or(rule.seed.half_life_years, 3.0);
  seed.after_ripening_c_d = value_or(rule.seed.after_ripening_c_d, 0.0);
  seed.after_ripening_base_c =
      value_or(rule.seed.after_ripening_base_c, usual_ripening_base_c().value);
  seed.deferral_share = value_or(rule.seed.deferral_share, 0.1);
  seed.deferral_treated_share = std::min(
      seed.deferral_share, value_or(rule.seed.deferral_treated_share, seed.deferral_share));

  seed.cardinal = cardinal_of(rule.development);
  seed.thermal_time_c_d = value_or(rule.development.thermal_time_c_d, 150.0);
  seed.thermal_time_spread = value_or(rule.development.thermal_time_spread, 0.35);

  seed.wet_loss_per_day = value_or(rule.losses.wet_loss_per_day, 0.0005);
  seed.rot_factor = value_or(rule.losses.rot_factor, 1.0);
  seed.dry_loss_share = value_or(rule.losses.dry_loss_share, 0.7);

  seed.frost_limit_c = value_or(rule.seedling.seedling_frost_c, -1.0);
  // A kind may give its own limit for the young only; its older seedlings stand no less.
  seed.older_frost_limit_c = std::min(
      seed.frost_limit_c, value_or(rule.seedling.older_seedling_frost_c, seed.frost_limit_c));
  seed.heat_limit_c = value_or(rule.seedling.seedling_heat_c, 39.0);
  seed.growth_needed_days = value_or(rule.seedling.growth_needed_days, 70.0);
  seed.rest_sum = value_or(rule.seedling.rest_sum, default_rest_sum);
  seed.wake_above_limit_k = value_or(rule.gate.wake_above_limit_k, 2.0);
  seed.first_rest = first_rest_of(rule);
  seed.pot_may_go_dry = pot_may_go_dry(rule);
  return seed;
}

SeedParameters treated(SeedParameters seed) {
  seed.deferral_share = seed.deferral_treated_share;
  return seed;
}

SeedStorage storage_of(const Rule& rule) {
  const bool dies_dry = (rule.gate.start && rule.gate.start->value == Start::at_once) ||
                        (rule.seed.size && rule.seed.size->value == SeedSize::fleshy);
  return dies_dry ? SeedStorage::recalcitrant : SeedStorage::orthodox;
}

FirstRestWay first_rest_of(const Rule& rule) {
  return word_or(rule.seedling.first_rest, FirstRestWay::dry);
}

bool pot_may_go_dry(const Rule& rule) {
  const FirstRestWay way = first_rest_of(rule);
  return (way == FirstRestWay::dry || way == FirstRestWay::dies) &&
         storage_of(rule) == SeedStorage::orthodox;
}

bool pot_rests_dry(const SeedParameters& seed, bool plants_alive) {
  return plants_alive ? seed.first_rest == FirstRestWay::dry : seed.pot_may_go_dry;
}

} // namespace nightsow::species_rules
