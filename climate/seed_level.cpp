#include "climate/seed_level.hpp"

#include "climate/hourly.hpp"
#include "climate/sun.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace nightsow::climate {

namespace {

constexpr double pale_k_per_w = 0.014;
constexpr double dark_k_per_w = 0.0185;
constexpr double least_clear = 0.3;
constexpr double cold_house_c = 10.0;
constexpr double cold_house_loss_k = 1.5;
constexpr double seconds_an_hour = 3600.0;
constexpr double joule_per_mj = 1e6;

constexpr std::size_t hours = SeedLevel::hours_a_day;

/// What one date's pot meets beside its air.
struct Sky {
  SunTimes sun;
  double sun_mj = 0.0; ///< on the open ground
  double clear = 1.0;  ///< 0.3..1
};

bool is_night(const SunTimes& sun, double hour) {
  return hour < sun.rises_h || hour > sun.sets_h;
}

// Missing where the station's range is: then the bench's day is taken as half clear.
Sky sky_of(const DailySeries& station, Date date, const SunTimes& sun, const SeedPlace& place) {
  const int day = day_of_year(date);
  Sky sky;
  sky.sun = sun;
  const double above = extraterrestrial_radiation_mj(place.latitude, day);
  const double most = clear_sky_radiation_mj(above, place.elevation_m);
  const std::optional<std::size_t> at = station.index_of(date);
  const double range_k =
      at ? static_cast<double>(station.day_c()[*at]) - static_cast<double>(station.night_c()[*at])
         : static_cast<double>(missing_c);
  sky.sun_mj =
      std::isnan(range_k)
          ? 0.5 * most
          : radiation_from_range_mj(
                range_k, above, most, place.coast ? range_factor_coast : range_factor_inland);
  sky.clear = most > 0.0 ? std::clamp(sky.sun_mj / most, least_clear, 1.0) : 1.0;
  return sky;
}

// A half-sine from sunrise to sunset that sums to the day's radiation, in W m-2.
double sun_w(const Sky& sky, double hour) {
  const double length = sky.sun.sets_h - sky.sun.rises_h;
  if (is_night(sky.sun, hour) || length <= 0.0) {
    return 0.0;
  }
  const double peak =
      sky.sun_mj * joule_per_mj * std::numbers::pi / (2.0 * length * seconds_an_hour);
  return peak * std::sin(std::numbers::pi * (hour - sky.sun.rises_h) / length);
}

// Where the seed would come to, had it time.
double goal_c(double air_c, const Sky& sky, double hour, const SeedPlace& place) {
  const bool night = is_night(sky.sun, hour);
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
  return base + (1.0 - place.shade) * place.sun * k_per_w * sun_w(sky, hour);
}

float beside(std::span<const float> row, std::size_t index, int step) {
  const bool outside = step < 0 ? index == 0 : index + 1 >= row.size();
  const float there = outside ? missing_c : row[step < 0 ? index - 1 : index + 1];
  return std::isnan(there) ? row[index] : there; // as today where the neighbour is not known
}

/// Sunrise and sunset of a day and of its neighbours.
struct Suns {
  SunTimes previous;
  SunTimes today;
  SunTimes next;
};

Suns suns_of(Date date, double latitude) {
  const auto sun = [&](Date day) { return sun_times(latitude, day_of_year(day)); };
  return {sun(date - Days{1}), sun(date), sun(date + Days{1})};
}

Suns a_day_on(const Suns& suns, Date next, double latitude) {
  return {suns.today, suns.next, sun_times(latitude, day_of_year(next + Days{1}))};
}

HourlyDay hourly_day(const DailySeries& air, std::size_t index, const Suns& suns) {
  HourlyDay day;
  day.night_c = static_cast<double>(air.night_c()[index]);
  day.day_c = static_cast<double>(air.day_c()[index]);
  day.next_night_c = static_cast<double>(beside(air.night_c(), index, 1));
  day.previous_night_c = static_cast<double>(beside(air.night_c(), index, -1));
  day.previous_day_c = static_cast<double>(beside(air.day_c(), index, -1));
  day.sun = suns.today;
  day.next_sun = suns.next;
  day.previous_sun = suns.previous;
  return day;
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
void cover_cold_nights(std::vector<float>& hour_c, Date first, double latitude) {
  std::size_t begins = 0;
  SunTimes sun;
  for (std::size_t i = 0; i <= hour_c.size(); ++i) {
    if (i % hours == 0) {
      sun = sun_times(latitude, day_of_year(first + Days{static_cast<int>(i / hours)}));
    }
    const bool covered = i < hour_c.size() && !std::isnan(hour_c[i]) &&
                         is_night(sun, static_cast<double>(i % hours));
    if (!covered) {
      cover(std::span(hour_c).subspan(begins, i - begins));
      begins = i + 1;
    }
  }
}

void keep_from_frost(std::vector<float>& hour_c, Date first, const SeedPlace& place) {
  if (place.frost_care == FrostCare::fleece) {
    cover_cold_nights(hour_c, first, place.latitude);
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

SeedLevel seed_level(const DailySeries& station, const BenchAir& bench, const SeedPlace& place) {
  const DailySeries& air = bench.air;
  SeedLevel level{air.first(), air.size()};
  const double step = 1.0 - std::exp(-1.0 / place.lag_hours);
  double seed_c = 0.0;
  bool goes_on = false; // nothing to lag behind after a missing date
  Suns suns = suns_of(air.first(), place.latitude);
  for (std::size_t i = 0; i < air.size(); ++i) {
    if (i > 0) {
      suns = a_day_on(suns, air.date_of(i), place.latitude);
    }
    if (std::isnan(air.night_c()[i]) || std::isnan(air.day_c()[i])) {
      goes_on = false;
      continue;
    }
    const HourlyDay day = hourly_day(air, i, suns);
    const Sky sky = sky_of(station, air.date_of(i), suns.today, place);
    for (std::size_t hour = 0; hour < hours; ++hour) {
      const auto at = static_cast<double>(hour);
      const double goal = goal_c(hourly_air_c(day, at), sky, at, place);
      seed_c = goes_on ? seed_c + (goal - seed_c) * step : goal;
      goes_on = true;
      level.hour_c_[i * hours + hour] = static_cast<float>(seed_c);
    }
  }
  keep_from_frost(level.hour_c_, level.first_, place);
  return level;
}

} // namespace nightsow::climate
