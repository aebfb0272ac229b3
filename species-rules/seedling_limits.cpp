#include "species-rules/seedling_limits.hpp"

#include "species-rules/normal.hpp"

namespace nightsow::species_rules {

namespace {

constexpr double frost_spread_k = 1.2;
constexpr double heat_spread_k = 2.5;
constexpr int young_days = 30;
constexpr int half_hardened_days = 90;

} // namespace

double frost_dead_share(double coldest_c, double limit_c) {
  return normal_share((limit_c - coldest_c) / frost_spread_k);
}

double heat_dead_share(double hottest_hours_c, double limit_c) {
  return normal_share((hottest_hours_c - limit_c) / heat_spread_k);
}

double heat_hardening_k(int age_days) {
  if (age_days < young_days) {
    return 0.0;
  }
  return age_days <= half_hardened_days ? 3.0 : 6.0;
}

} // namespace nightsow::species_rules
