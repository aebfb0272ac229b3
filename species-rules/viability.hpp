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

/// How seed takes to drying. Orthodox seed lives longer the drier and cooler it lies; recalcitrant
/// seed (fleshy amaryllids, many Cape Oxalis) is shed moist and dies of drying.
enum class SeedStorage { orthodox, recalcitrant };

/// How much faster seed ages at a temperature than at 20 °C. -20..90 °C.
[[nodiscard]] double ageing_factor(double store_c);

/// The same at a humidity, against 20 °C in a dry room; humidity 0..1 (seed_moisture.hpp).
[[nodiscard]] double ageing_factor(double store_c, double humidity);

/// How much faster recalcitrant seed dies in such a store than in a dry room at 20 °C; humidity
/// 0..1. Half of the loss follows what the air takes from it (its vapour pressure deficit), half
/// its own sprouting, which goes on in the cool at a slower pace; frost kills. The form is the
/// project's own (common practice, no source); that such seed is lost by drying and holds for some
/// weeks to months otherwise: Boophone flava began to die below 120 % of water after 8 weeks in
/// mildly drying air (a Cape university's thesis on it and Amaryllis belladonna).
[[nodiscard]] double recalcitrant_ageing_factor(double store_c, double humidity);

/// Either of the two.
[[nodiscard]] double ageing_factor(SeedStorage storage, double store_c, double humidity);

/// Probits lost in so many years at room temperature (or the equivalent). half_life_years > 0.
[[nodiscard]] double probits_lost(double half_life_years, double years_at_room);

/// Share alive after so many years at room temperature (or the equivalent: the sum of
/// years * ageing_factor), given the years in which 95 % sound falls to half. Requires:
/// half_life_years > 0, years >= 0.
[[nodiscard]] double share_alive(double half_life_years, double years_at_room);

} // namespace nightsow::species_rules
