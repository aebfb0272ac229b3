#pragma once

#include "species-rules/viability.hpp"

#include <optional>

namespace nightsow::species_rules {

// Ellis & Roberts (1980), Annals of Botany 45: 13-30, in full: v = Ki - p / sigma, in probits, with
// log10 sigma = KE - CW log10 m - CH t - CQ t^2. For dry seed of 5 to 25 % moisture at -20 to
// 90 °C. Moisture is per cent of the fresh weight, days are days, shares 0..1.

/// What a kind of seed is in that equation. Of most kinds only ke and cw are known.
struct ViabilityConstants {
  double ke = 0.0;
  double cw = 0.0;
  double ch = universal_ch;
  double cq = universal_cq;
};

/// How long seed is to keep.
struct KeepingGoal {
  double initial_share = 0.0;
  double final_share = 0.0; ///< < initial_share
  double days = 0.0;        ///< > 0
};

/// The probit of a share without 5 added: normal_quantile. 0 < share < 1.
[[nodiscard]] double probit(double share);

/// The same with 5 added (Bliss), as older tables have it.
[[nodiscard]] double probit_plus_five(double share);

/// The share alive of so many tried; none counts as a quarter of a seed, all as a quarter less, so
/// that a probit is there. Requires: 0 <= alive <= of, of >= 1.
[[nodiscard]] double share_with_probit(int alive, int of);

/// Sigma: days in which seed loses one probit.
[[nodiscard]] double days_per_probit(const ViabilityConstants& constants,
                                     double moisture_wet_pct,
                                     double store_c);

/// 0 < initial_share < 1.
[[nodiscard]] double share_alive_after(double days, double initial_share, double days_per_probit);

/// Days until so few are alive. 0 < both shares < 1.
[[nodiscard]] double days_until_share(double final_share,
                                      double initial_share,
                                      double days_per_probit);

/// P50: days until half is alive.
[[nodiscard]] double half_viability_days(double initial_share, double days_per_probit);

/// The moisture at which the goal is just met at a temperature.
[[nodiscard]] double moisture_for_goal_wet_pct(const ViabilityConstants& constants,
                                               const KeepingGoal& goal,
                                               double store_c);

/// The temperature at which the goal is just met with a moisture; empty where the equation has no
/// such temperature.
[[nodiscard]] std::optional<double> store_for_goal_c(const ViabilityConstants& constants,
                                                     const KeepingGoal& goal,
                                                     double moisture_wet_pct);

/// KE from the constant K of the equation for one temperature, by the universal terms.
[[nodiscard]] double ke_from_one_temperature(double k, double store_c);

} // namespace nightsow::species_rules
