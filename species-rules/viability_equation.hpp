#pragma once

namespace nightsow::species_rules {

// Ellis & Roberts (1980), Annals of Botany 45: 13-30: v = Ki - p / sigma, in probits, with
// log10 sigma = KE - CW log10 m - CH t - CQ t^2. For dry seed of 5 to 25 % moisture at -20 to
// 90 °C. Moisture is per cent of the fresh weight; sigma is in days where the constants are
// published ones. All ageing of dry seed goes through these functions (viability.hpp).

/// The universal temperature terms of Dickie et al. (1990).
inline constexpr double universal_ch = 0.0329;
inline constexpr double universal_cq = 0.000478;

/// What a kind of seed is in that equation. Of most kinds only ke and cw are known.
struct ViabilityConstants {
  double ke = 0.0;
  double cw = 0.0;
  double ch = universal_ch;
  double cq = universal_cq;
};

/// Sigma: the time in which seed loses one probit. moisture_wet_pct > 0.
[[nodiscard]] double time_per_probit(const ViabilityConstants& constants,
                                     double moisture_wet_pct,
                                     double store_c);

/// The share alive after a time, in the same unit as time_per_probit, of seed that had
/// initial_probit (the normal quantile of its share alive). time_per_probit > 0.
[[nodiscard]] double share_alive_after(double time, double initial_probit, double time_per_probit);

} // namespace nightsow::species_rules
