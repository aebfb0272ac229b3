#include "planner/model/usual_watering.hpp"

#include "climate/sun.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

constexpr int days_looked_at = 28;

// Without maxima, as for the smooth mean of a bench (common practice, no source).
constexpr double usual_range_k = 9.0;

double range_k(const climate::SmoothYear& smooth, Date day) {
  return smooth.day ? std::max(0.0, smooth.day->value_c(day) - smooth.night.value_c(day))
                    : usual_range_k;
}

} // namespace

int usual_watering_days(const StationClimate& station,
                        const BenchClimate& climate,
                        const climate::SeedPlace& place,
                        species_rules::PotTop top,
                        Date from) {
  top.shade = 1.0 - place.sun * (1.0 - place.shade);
  double evaporation_mm = 0.0;
  for (Date day = from; day < from + Days{days_looked_at}; day += Days{1}) {
    const double above_mj =
        climate::extraterrestrial_radiation_mj(place.latitude, day_of_year(day));
    evaporation_mm += climate::hargreaves_evaporation_mm(
        smooth_mean_c(climate, day), range_k(station.smooth, day), above_mj);
  }
  const double a_day_mm = species_rules::evaporation_factor(top) * evaporation_mm / days_looked_at;
  const double days = species_rules::usual_watering_point_mm / std::max(a_day_mm, 1e-3);
  return std::clamp(static_cast<int>(std::lround(days)), 1, days_looked_at);
}

} // namespace nightsow::planner
