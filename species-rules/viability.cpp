#include "species-rules/viability.hpp"

#include "species-rules/normal.hpp"
#include "species-rules/seed_moisture.hpp"

#include <cmath>

namespace nightsow::species_rules {

double ageing_factor(double store_c) {
  const double exponent =
      universal_ch * (store_c - room_c) + universal_cq * (store_c * store_c - room_c * room_c);
  return std::pow(10.0, exponent);
}

double ageing_factor(double store_c, double humidity) {
  return ageing_factor(store_c) * moisture_ageing_factor(humidity);
}

double probits_lost(double half_life_years, double years_at_room) {
  return years_at_room * initial_probit / half_life_years;
}

double share_alive(double half_life_years, double years_at_room) {
  return normal_share(initial_probit - probits_lost(half_life_years, years_at_room));
}

} // namespace nightsow::species_rules
