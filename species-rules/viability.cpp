#include "species-rules/viability.hpp"

#include "species-rules/seed_moisture.hpp"

#include <cmath>

namespace nightsow::species_rules {

namespace {

constexpr double by_drying = 0.5;
constexpr double by_sprouting = 1.0 - by_drying;
constexpr double sprouting_per_10_k = 1.5;
// Dead within days, however long it lives otherwise.
constexpr double by_frost = 50.0;

// Tetens' equation as in FAO 56 (Allen et al. 1998), kPa.
double vapour_pressure_deficit(double store_c, double humidity) {
  return 0.6108 * std::exp(17.27 * store_c / (store_c + 237.3)) * (1.0 - humidity);
}

} // namespace

double ageing_factor(double store_c, double humidity) {
  constexpr ViabilityConstants kind{0.0, usual_cw};
  return time_per_probit(kind, stored_moisture_wet_pct(room_humidity), room_c) /
         time_per_probit(kind, stored_moisture_wet_pct(humidity), store_c);
}

double recalcitrant_ageing_factor(double store_c, double humidity) {
  if (store_c < 0.0) {
    return by_frost;
  }
  return by_drying * vapour_pressure_deficit(store_c, humidity) /
             vapour_pressure_deficit(room_c, room_humidity) +
         by_sprouting * std::pow(sprouting_per_10_k, (store_c - room_c) / 10.0);
}

double ageing_factor(SeedStorage storage, double store_c, double humidity) {
  return storage == SeedStorage::recalcitrant ? recalcitrant_ageing_factor(store_c, humidity)
                                              : ageing_factor(store_c, humidity);
}

double probits_lost(double half_life_years, double years_at_room) {
  return years_at_room * initial_probit / half_life_years;
}

double share_alive(double half_life_years, double years_at_room) {
  return share_alive_after(years_at_room, initial_probit, half_life_years / initial_probit);
}

} // namespace nightsow::species_rules
