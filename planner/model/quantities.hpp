#pragma once

namespace nightsow::planner {

// Volumes, weights and heat as sellers and makers state them, in the units of this house.

/// Litres in a US gallon: 231 cubic inches of 2.54 cm each, by definition.
inline constexpr double litres_in_us_gallon = 3.785411784;

/// Grams in an avoirdupois ounce, by definition.
inline constexpr double grams_in_ounce = 28.349523125;

[[nodiscard]] constexpr double litres_of_us_gallons(double gallons) {
  return gallons * litres_in_us_gallon;
}

[[nodiscard]] constexpr double seeds_per_gram(double seeds_per_ounce) {
  return seeds_per_ounce / grams_in_ounce;
}

/// Volume of a truncated cone in litres: pi h (D² + D d + d²) / 12 (geometry). `base_cm` 0 is a
/// cone, `base_cm` = `top_cm` a cylinder. Requires: none is negative.
[[nodiscard]] constexpr double frustum_litres(double top_cm, double base_cm, double high_cm) {
  constexpr double pi = 3.14159265358979323846;
  constexpr double cm3_in_litre = 1000.0;
  return pi * high_cm * (top_cm * top_cm + top_cm * base_cm + base_cm * base_cm) / 12.0 /
         cm3_in_litre;
}

/// Heat that goes through a wall, in W: U A dT. `u` in W/(m² K).
[[nodiscard]] constexpr double heat_loss_w(double u, double area_m2, double difference_k) {
  return u * area_m2 * difference_k;
}

/// U of two layers one behind the other: 1/U = 1/U1 + 1/U2. Requires: both are positive.
[[nodiscard]] constexpr double u_in_series(double first, double second) {
  return 1.0 / (1.0 / first + 1.0 / second);
}

/// W/m² of a cable or mat. Requires: `area_m2` > 0.
[[nodiscard]] constexpr double watts_per_m2(double watts, double area_m2) {
  return watts / area_m2;
}

} // namespace nightsow::planner
