#include "species-rules/drying.hpp"

#include "species-rules/normal.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::species_rules {

namespace {

constexpr double least_factor = 0.1;
constexpr double grit_factor = 0.4;
constexpr double bag_factor = 0.1;
constexpr double surface_limit_mm = 4.0;
constexpr double limit_per_depth = 0.6; // 10 mm at a depth of 10 mm
constexpr double limit_spread = 0.4;

} // namespace

double evaporation_factor(const PotTop& top) {
  const double factor =
      (1.0 - top.shade) * (top.grit ? grit_factor : 1.0) * (top.closed_bag ? bag_factor : 1.0);
  return std::max(least_factor, factor);
}

double dry_share(double largest_evaporation_mm, double seed_depth_mm) {
  if (largest_evaporation_mm <= 0.0) {
    return 0.0;
  }
  const double limit_mm = surface_limit_mm + limit_per_depth * seed_depth_mm;
  return normal_share(std::log(largest_evaporation_mm / limit_mm) / limit_spread);
}

} // namespace nightsow::species_rules
