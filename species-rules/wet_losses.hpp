#pragma once

namespace nightsow::species_rules {

// What is lost in wet mix. Constants without another source are common practice, no source, or set
// so that the result looked right to a grower; each kind's own factors come from its rule.

/// Share of waiting, wet, sound seed lost in a day, 0..1: it doubles with each 10 K over 20 °C of
/// the day's mean at the seed. Requires: at_20_c_per_day in 0..1.
[[nodiscard]] double waiting_loss(double mean_c, double at_20_c_per_day);

/// What a day's mean makes of that loss: 1 at 20 °C, doubling with each 10 K.
[[nodiscard]] double wet_ageing(double mean_c);

/// How the mix was made, for damping off.
enum class MixHygiene { clean_mineral, used };

/// Share of released seed that damping off takes in a day at the temperature it likes best (28 °C).
[[nodiscard]] double damping_off_at_best(MixHygiene hygiene);

/// Share of released seed that damping off takes in a day, 0..1: `at_best` times the growth of the
/// fungus at the day's mean, with cardinal temperatures 3, 28 and 38 °C in the model of Rosso,
/// Lobry and Flandrois 1993 (J. Theor. Biol. 162: 447-463).
[[nodiscard]] double damping_off(double mean_c, double at_best);

/// The growth of the fungus, 0..1.
[[nodiscard]] double fungus_growth(double mean_c);

/// What is left of that for a seedling of so many days: exp(-age / 10), not under a tenth.
[[nodiscard]] double damping_off_relief(double age_days);

/// A closed bag doubles damping off once seedlings are up.
inline constexpr double closed_bag_factor = 2.0;

/// The cardinal temperature model with inflection, 0..1 (Rosso and others 1993): 0 at and beyond
/// lowest and highest, 1 at the optimum. Requires: lowest < optimum < highest and
/// optimum > (lowest + highest) / 2.
[[nodiscard]] double cardinal_growth(double c, double lowest_c, double optimum_c, double highest_c);

/// Hours at a temperature that kill half of wet seed: 60 * 10^(-0.18 (c - 45)). Other species than
/// these, and uncertain by a factor of five either way; used from `heat_kill_from_c` on.
[[nodiscard]] double heat_half_life_hours(double seed_c);
inline constexpr double heat_kill_from_c = 40.0;

/// Half lives of heat spent in one hour: 0 under `heat_kill_from_c`. Survival is 0.5 to their sum.
[[nodiscard]] double heat_dose_of_hour(double seed_c);

} // namespace nightsow::species_rules
