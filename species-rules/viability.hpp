#pragma once

namespace nightsow::species_rules {

// Ellis & Roberts (1980), Annals of Botany 45:13-30: v = Ki - p / sigma in probits, with the
// universal temperature terms of Dickie et al. (1990): log10 of sigma changes by -0.0329 t -
// 0.000478 t^2. For dry seed only.

/// The universal temperature terms.
inline constexpr double universal_ch = 0.0329;
inline constexpr double universal_cq = 0.000478;

/// Probit of the share that is sound when harvested: 95 %.
inline constexpr double initial_probit = 1.645;
/// Half-lives are told for this temperature, °C.
inline constexpr double room_c = 20.0;

/// How much faster seed ages at a temperature than at 20 °C. -20..90 °C.
[[nodiscard]] double ageing_factor(double store_c);

/// The same at a humidity, against 20 °C in a dry room; humidity 0..1 (seed_moisture.hpp).
[[nodiscard]] double ageing_factor(double store_c, double humidity);

/// Probits lost in so many years at room temperature (or the equivalent). half_life_years > 0.
[[nodiscard]] double probits_lost(double half_life_years, double years_at_room);

/// Share alive after so many years at room temperature (or the equivalent: the sum of
/// years * ageing_factor), given the years in which 95 % sound falls to half. Requires:
/// half_life_years > 0, years >= 0.
[[nodiscard]] double share_alive(double half_life_years, double years_at_room);

} // namespace nightsow::species_rules
