#pragma once

namespace nightsow::species_rules {

// Frost and heat on seedlings. Each seedling has its own limit; a running extreme decides, never a
// product of nightly hazards. The spreads are common practice, no source.

/// Share dead, 0..1, of seedlings that met this coldest hour at the seed's level, °C: their own
/// limits lie normally about `limit_c` with a standard deviation of 1.2 K.
[[nodiscard]] double frost_dead_share(double coldest_c, double limit_c);

/// Share dead, 0..1, of seedlings whose six hottest of 48 hours had this mean at the most, °C;
/// limits with a standard deviation of 2.5 K.
[[nodiscard]] double heat_dead_share(double hottest_hours_c, double limit_c);

/// The hours that count in heat_dead_share: the six hottest of the last 48.
inline constexpr int hottest_hours = 6;
inline constexpr int hottest_of_hours = 48;

/// From this age on the rule's limit for older seedlings holds.
inline constexpr int older_for_frost_days = 60;

/// How much more heat a seedling of this age stands than one under thirty days: 3 K up to ninety
/// days, then 6 K.
[[nodiscard]] double heat_hardening_k(int age_days);

} // namespace nightsow::species_rules
