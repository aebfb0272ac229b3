#include "climate/seed_level.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace nightsow::climate {

namespace {

constexpr double pale_k_per_w = 0.014;
constexpr double dark_k_per_w = 0.0185;
constexpr double least_clear = 0.3;
constexpr double cold_house_c = 10.0;
constexpr double cold_house_loss_k = 1.5;

constexpr std::size_t hours = SeedLevel::hours_a_day;

/// What one date's pot meets beside its air.
struct Sky {
  const SunDay& sun;
  double sun_mj = 0.0; ///< on the open ground
  double clear = 1.0;  ///< 0.3..1
};

Sky sky_of(const DailySeries& station, Date date, const SunDay& sun, const SeedPlace& place) {
  const double most = clear_sky_radiation_mj(sun.above_mj, place.elevation_m);
  const std::optional<std::size_t> at = station.index_of(date);
  const double range_k =
      at ? static_cast<double>(station.day_c()[*at]) - static_cast<double>(station.night_c()[*at])
         : static_cast<double>(missing_c);
  const double sun_mj = ground_sun_mj(range_k, sun.above_mj, place);
  return {sun, sun_mj, most > 0.0 ? std::clamp(sun_mj / most, least_clear, 1.0) : 1.0};
}

// Where the seed would come to, had it time.
double goal_c(double air_c, const Sky& sky, std::size_t hour, const SeedPlace& place) {
  const bool night = sky.sun.is_night(hour);
  double base = air_c;
  if (place.mat && (place.mat->at_night || !night)) {
    base = on_mat_c(air_c, place.mat->rise, place.mat->thermostat);
  }
  if (night) {
    const bool cold_house = place.glass && air_c < cold_house_c;
    const double loss =
        cold_house ? std::min(place.night_loss_k, cold_house_loss_k) : place.night_loss_k;
    return base - loss * sky.clear;
  }
  const double k_per_w = place.pots == PotColour::dark ? dark_k_per_w : pale_k_per_w;
  return base + (1.0 - place.shade) * place.sun * k_per_w * sky.sun_mj * sky.sun.sun_w_per_mj[hour];
}

float beside(std::span<const float> row, std::size_t index, int step) {
  const bool outside = step < 0 ? index == 0 : index + 1 >= row.size();
  const float there = outside ? missing_c : row[step < 0 ? index - 1 : index + 1];
  return std::isnan(there) ? row[index] : there; // as today where the neighbour is not known
}

ExtremesAround extremes_around(const DailySeries& air, std::size_t index) {
  return {static_cast<double>(beside(air.night_c(), index, -1)),
          static_cast<double>(beside(air.day_c(), index, -1)),
          static_cast<double>(air.night_c()[index]),
          static_cast<double>(air.day_c()[index]),
          static_cast<double>(beside(air.night_c(), index, 1))};
}

void cover(std::span<float> night) {
  const auto coldest = std::min_element(night.begin(), night.end());
  if (coldest != night.end() && static_cast<double>(*coldest) < frost_near_c) {
    for (float& hour : night) {
      hour += static_cast<float>(fleece_k);
    }
  }
}

// Nights run from one date's sunset to the next one's sunrise; a missing hour ends one.
void cover_cold_nights(std::vector<float>& hour_c, Date first, const SunYear& sun) {
  std::size_t begins = 0;
  const SunDay* today = nullptr;
  for (std::size_t i = 0; i <= hour_c.size(); ++i) {
    if (i % hours == 0) {
      today = &sun.on(first + Days{static_cast<int>(i / hours)});
    }
    const bool covered = i < hour_c.size() && !std::isnan(hour_c[i]) && today->is_night(i % hours);
    if (!covered) {
      cover(std::span(hour_c).subspan(begins, i - begins));
      begins = i + 1;
    }
  }
}

void keep_from_frost(std::vector<float>& hour_c,
                     Date first,
                     const SeedPlace& place,
                     const SunYear& sun) {
  if (place.frost_care == FrostCare::fleece) {
    cover_cold_nights(hour_c, first, sun);
  } else if (place.frost_care == FrostCare::in) {
    for (float& hour : hour_c) {
      hour = std::isnan(hour) ? hour : std::max(hour, static_cast<float>(frost_near_c));
    }
  }
}

} // namespace

SeedLevel::SeedLevel(Date first, std::size_t days)
    : first_(first), hour_c_(days * hours_a_day, missing_c) {}

std::span<const float> SeedLevel::hours_of(std::size_t index) const {
  assert(index < size());
  return std::span(hour_c_).subspan(index * hours_a_day, hours_a_day);
}

double SeedLevel::swing_k(std::size_t index) const {
  const std::span<const float> day = hours_of(index);
  if (std::any_of(day.begin(), day.end(), [](float hour) { return std::isnan(hour); })) {
    return static_cast<double>(missing_c);
  }
  const auto [coldest, hottest] = std::minmax_element(day.begin(), day.end());
  return static_cast<double>(*hottest) - static_cast<double>(*coldest);
}

double on_mat_c(double air_c, CelsiusDelta rise, const std::optional<Celsius>& thermostat) {
  const double raised = air_c + rise.kelvin();
  return std::max(air_c, thermostat ? std::min(raised, thermostat->degrees()) : raised);
}

double ground_sun_mj(double range_k, double above_mj, const SeedPlace& place) {
  const double clear_mj = clear_sky_radiation_mj(above_mj, place.elevation_m);
  const double factor = place.coast ? range_factor_coast : range_factor_inland;
  return std::isnan(range_k) ? 0.5 * clear_mj
                             : radiation_from_range_mj(range_k, above_mj, clear_mj, factor);
}

SeedLevel seed_level(const DailySeries& station,
                     const BenchAir& bench,
                     const SeedPlace& place,
                     const SunYear& sun) {
  assert(sun.latitude_deg() == place.latitude);
  const DailySeries& air = bench.air;
  SeedLevel level{air.first(), air.size()};
  const double step = 1.0 - std::exp(-1.0 / place.lag_hours);
  double seed_c = 0.0;
  bool goes_on = false; // nothing to lag behind after a missing date
  for (std::size_t i = 0; i < air.size(); ++i) {
    if (std::isnan(air.night_c()[i]) || std::isnan(air.day_c()[i])) {
      goes_on = false;
      continue;
    }
    const ExtremesAround extremes = extremes_around(air, i);
    const Sky sky = sky_of(station, air.date_of(i), sun.on(air.date_of(i)), place);
    for (std::size_t hour = 0; hour < hours; ++hour) {
      const double goal = goal_c(hourly_air_c(extremes, sky.sun.air[hour]), sky, hour, place);
      seed_c = goes_on ? seed_c + (goal - seed_c) * step : goal;
      goes_on = true;
      level.hour_c_[i * hours + hour] = static_cast<float>(seed_c);
    }
  }
  keep_from_frost(level.hour_c_, level.first_, place, sun);
  return level;
}

} // namespace nightsow::climate
