#pragma once

namespace nightsow::species_rules {

// Growth before the first rest, and what begins that rest. The constants were set to fit practice
// (common practice, no source) and are checked at real stations in the tests.

/// How good a day is for a winter-growing seedling, 0..1, at a mean temperature in °C: nothing at 3
/// and under, full at 10 to 17, nothing at 27 and over, straight between.
[[nodiscard]] double winter_growth_rate(double mean_c);

/// The same for summer growers: nothing at 12, full at 20 to 30, nothing at 42.
[[nodiscard]] double summer_growth_rate(double mean_c);

/// What light makes of a good day: radiation at the bench, MJ m-2 d-1, over 5, within 0.2..1.
[[nodiscard]] double light_for_growth(double radiation_mj);

/// Share of seedlings alive after the first rest, 0..1, that grew so many good days before it:
/// log-normal about `growth_needed_days` with a spread of 0.4, times what the rest itself leaves.
/// Requires: growth_needed_days > 0; without growth none is left.
[[nodiscard]] double alive_after_rest(double good_days,
                                      double growth_needed_days,
                                      double kept_through_rest);

/// What a first rest leaves of seedlings that are large enough: kept in shade and given sips, or
/// baked dry.
inline constexpr double kept_in_shaded_rest = 0.85;
inline constexpr double kept_in_baked_rest = 0.6;

/// What a day adds to the sum that sends a winter grower to rest, 0..1: warmth (mean of seven days,
/// °C) and long days (hours of light) together.
[[nodiscard]] double heat_rest_rate(double seven_day_mean_c, double day_length_hours);

/// The sum at which rest begins where a rule gives none.
inline constexpr double default_rest_sum = 20.0;

/// A summer grower rests when the seven-day mean falls to this, °C (common practice, no source).
inline constexpr double cool_rest_c = 13.0;

} // namespace nightsow::species_rules
