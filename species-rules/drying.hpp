#pragma once

namespace nightsow::species_rules {

// How fast the top of a pot dries, and what seed does then. Common practice, no source, but for the
// reference evaporation itself, which climate reckons.

/// What covers the top of the pot.
struct PotTop {
  double shade = 0.0; ///< share of the sun kept off, 0..1
  bool grit = false;
  bool closed_bag = false;
};

/// Evaporation from the pot's top against the reference evaporation: open sun 1, half shade 0.5
/// (straight between and beyond), grit 0.4, bag 0.1; they multiply, but not under 0.1.
[[nodiscard]] double evaporation_factor(const PotTop& top);

/// The evaporation since the last water at which a pot is usually watered, mm.
inline constexpr double usual_watering_point_mm = 2.0;

/// Share of pots dry for the seed, 0..1, after the largest evaporation between two waterings, mm:
/// log-normal about 4 mm for seed at the surface, 10 mm for seed 10 mm down, straight between and
/// beyond, with a spread of 0.4. Requires: both not negative.
[[nodiscard]] double dry_share(double largest_evaporation_mm, double seed_depth_mm);

} // namespace nightsow::species_rules
