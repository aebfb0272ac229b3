#pragma once

#include "species-rules/development.hpp"
#include "species-rules/release.hpp"
#include "species-rules/rule.hpp"
#include "species-rules/viability.hpp"

#include <optional>

namespace nightsow::species_rules {

/// A rule as plain numbers, ready to be reckoned with: what a kind of seed does, supposing that
/// each number were known. Temperatures in °C, shares 0..1.
struct SeedParameters {
  Start start = Start::cool;
  Growth growth = Growth::winter;
  Swing swing = Swing::indifferent;

  std::optional<ReleaseLimit> release; ///< by cool or, of hot starters, by warmth; empty: by water
  int nights = 5;
  int of = 7;
  std::optional<double> day_limit_c;

  double germination_share = 0.0; ///< of sound, ripe seed that is not deferred
  double half_life_years = 0.0;
  double after_ripening_c_d = 0.0; ///< 0: needs none
  double after_ripening_base_c = 0.0;
  double deferral_share = 0.0;         ///< of seed left whole
  double deferral_treated_share = 0.0; ///< treated as the rule tells; where not counted: the same

  CardinalTemperatures cardinal;
  double thermal_time_c_d = 0.0;
  double thermal_time_spread = 0.0;

  double wet_loss_per_day = 0.0;
  double rot_factor = 1.0;
  double dry_loss_share = 0.0;

  double frost_limit_c = 0.0;
  double older_frost_limit_c = 0.0;
  double heat_limit_c = 0.0;
  double growth_needed_days = 0.0;
  double rest_sum = 0.0;
  double wake_above_limit_k = 0.0;
  FirstRestWay first_rest = FirstRestWay::dry;
  bool pot_may_go_dry = true; ///< see below
};

/// The rule's own values. What it leaves open is what is usual; catalogue rules leave nothing open
/// that is used here, but rules made by hand may. The order base < optimum < ceiling is kept by
/// moving the outer ones.
[[nodiscard]] SeedParameters seed_parameters(const Rule& rule);

/// The same seed smoked, leached or scarified as its rule tells.
[[nodiscard]] SeedParameters treated(SeedParameters seed);

/// How seed of this rule takes to drying.
[[nodiscard]] SeedStorage storage_of(const Rule& rule);

/// How it passes its first resting season; where the rule does not say, dry.
[[nodiscard]] FirstRestWay first_rest_of(const Rule& rule);

/// Whether a pot in which nothing came up may be let go dry: not with kinds that are never dried
/// off, nor with seed that dies dry. Seed of annuals may.
[[nodiscard]] bool pot_may_go_dry(const Rule& rule);

/// Whether a pot rests dry: with plants alive in it by their way, else by its seed.
[[nodiscard]] bool pot_rests_dry(const SeedParameters& seed, bool plants_alive);

} // namespace nightsow::species_rules
