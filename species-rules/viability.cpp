#include "species-rules/viability.hpp"

#include "species-rules/normal.hpp"

#include <cmath>

namespace nightsow::species_rules {

namespace {

constexpr double universal_ch = 0.0329;
constexpr double universal_cq = 0.000478;

} // namespace

double ageing_factor(double store_c) {
  const double exponent =
      universal_ch * (store_c - room_c) + universal_cq * (store_c * store_c - room_c * room_c);
  return std::pow(10.0, exponent);
}

double share_alive(double half_life_years, double years_at_room) {
  const double sigma_years = half_life_years / initial_probit;
  return normal_share(initial_probit - years_at_room / sigma_years);
}

} // namespace nightsow::species_rules
