#include "species-rules/ripeness.hpp"

#include "species-rules/normal.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::species_rules {

namespace {

constexpr double very_dry = 0.15;
constexpr double very_dry_weight = 0.2;
constexpr double best_from = 0.3;
constexpr double best_to = 0.6;
constexpr double too_damp = 0.8;

} // namespace

Estimate usual_ripening_base_c() {
  return {5.0, 2.0, 8.0, {}};
}

double ripening_weight(double humidity) {
  const double as_damp_rises =
      very_dry_weight + (1.0 - very_dry_weight) * (humidity - very_dry) / (best_from - very_dry);
  const double as_damp_hinders = (too_damp - humidity) / (too_damp - best_to);
  return std::max(0.0, std::min(std::clamp(as_damp_rises, very_dry_weight, 1.0), as_damp_hinders));
}

double ripening_c_d_a_day(double store_c, double humidity, double base_c) {
  return std::max(0.0, store_c - base_c) * ripening_weight(humidity);
}

double ripe_share(double ripened_c_d, double needed_c_d) {
  if (needed_c_d <= 0.0) {
    return 1.0;
  }
  if (ripened_c_d <= 0.0) {
    return 0.0;
  }
  return normal_share(std::log(ripened_c_d / needed_c_d) / ripening_spread);
}

ShareRange ripe_range(double ripened_c_d, const Estimate& needed_c_d) {
  return {ripe_share(ripened_c_d, needed_c_d.value),
          ripe_share(ripened_c_d, needed_c_d.high),
          ripe_share(ripened_c_d, needed_c_d.low)};
}

double ripe_or_needs_none(double ripe_share, double needs_none) {
  return needs_none + (1.0 - needs_none) * ripe_share;
}

double share_for_this_season(double alive, double ripe, double deferral_share) {
  return alive * ripe * (1.0 - deferral_share);
}

} // namespace nightsow::species_rules
