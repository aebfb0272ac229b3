#include "species-rules/growth.hpp"

#include "species-rules/normal.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::species_rules {

namespace {

// 0 up to `zero_below`, 1 from `full_from` to `full_to`, 0 from `zero_above` on.
double trapezium(double x, double zero_below, double full_from, double full_to, double zero_above) {
  const double rising = (x - zero_below) / (full_from - zero_below);
  const double falling = (zero_above - x) / (zero_above - full_to);
  return std::clamp(std::min(rising, falling), 0.0, 1.0);
}

} // namespace

double winter_growth_rate(double mean_c) {
  return trapezium(mean_c, 3.0, 10.0, 17.0, 27.0);
}

double summer_growth_rate(double mean_c) {
  return trapezium(mean_c, 12.0, 20.0, 30.0, 42.0);
}

double light_for_growth(double radiation_mj) {
  return std::clamp(radiation_mj / 5.0, 0.2, 1.0);
}

double alive_after_rest(double good_days, double growth_needed_days, double kept_through_rest) {
  if (good_days <= 0.0) {
    return 0.0;
  }
  return kept_through_rest * normal_share(std::log(good_days / growth_needed_days) / 0.4);
}

double heat_rest_rate(double seven_day_mean_c, double day_length_hours) {
  const double warmth = std::clamp((seven_day_mean_c - 10.0) / 12.0, 0.0, 1.0);
  const double light = std::clamp((day_length_hours - 11.0) / 3.0, 0.0, 1.0);
  return warmth * (0.2 + 0.8 * light);
}

} // namespace nightsow::species_rules
