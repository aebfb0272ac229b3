#pragma once

#include "species-rules/viability_equation.hpp"

namespace nightsow::species_rules {

// Longevity by the equation of viability_equation.hpp. Of hardly any kind here its constants are
// known; a rule tells the half-life in a dry room instead. It sets sigma there, and any other store
// is reckoned against the room, so that KE cancels.

/// The CW of dry seed whose own is not known: about the middle of published kinds (3.2 to 6.4,
/// Hong, Linington & Ellis 1996).
inline constexpr double usual_cw = 4.8;

/// Probit of the share that is sound when harvested: 95 %.
inline constexpr double initial_probit = 1.645;
/// Half-lives are told for this temperature, °C.
inline constexpr double room_c = 20.0;

/// How seed takes to drying. Orthodox seed lives longer the drier and cooler it lies; recalcitrant
/// seed (fleshy amaryllids, many Cape Oxalis) is shed moist and dies of drying.
enum class SeedStorage { orthodox, recalcitrant };

/// How much faster dry seed ages in a store than in a dry room at 20 °C: the quotient of their
/// sigmas. -20..90 °C; humidity 0..1 (stored_moisture_wet_pct).
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
