#include "climate/hourly.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace nightsow::climate {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double hours_a_day = 24.0;
constexpr double least_hours = 2.0;
constexpr double lag_hours = 4.0; // Linvill: the sine's half-wave is the day length plus four

double by_day_c(double night_c, double day_c, const SunTimes& sun, double hour) {
  const double half_wave = sun.sets_h - sun.rises_h + lag_hours;
  return night_c + (day_c - night_c) * std::sin(pi * (hour - sun.rises_h) / half_wave);
}

double by_night_c(double at_sunset_c,
                  double next_night_c,
                  double night_hours,
                  double since_sunset) {
  return at_sunset_c - (at_sunset_c - next_night_c) / std::log(night_hours + 1.0) *
                           std::log(std::max(0.0, since_sunset) + 1.0);
}

double by_cosine_c(const HourlyDay& day, double hour) {
  constexpr double coldest_h = 3.0;
  const double middle = 0.5 * (day.night_c + day.day_c);
  const double half_swing = 0.5 * (day.day_c - day.night_c);
  return middle - half_swing * std::cos(2.0 * pi * (hour - coldest_h) / hours_a_day);
}

} // namespace

bool rises_and_sets(const SunTimes& sun) {
  const double length = sun.sets_h - sun.rises_h;
  return length >= least_hours && length <= hours_a_day - least_hours;
}

double hourly_air_c(const HourlyDay& day, double hour) {
  if (!rises_and_sets(day.sun) || !rises_and_sets(day.next_sun) ||
      !rises_and_sets(day.previous_sun)) {
    return by_cosine_c(day, hour);
  }
  if (hour < day.sun.rises_h) {
    const SunTimes& before = day.previous_sun;
    const double at_sunset =
        by_day_c(day.previous_night_c, day.previous_day_c, before, before.sets_h);
    const double night = hours_a_day - before.sets_h + day.sun.rises_h;
    return by_night_c(at_sunset, day.night_c, night, hours_a_day - before.sets_h + hour);
  }
  if (hour <= day.sun.sets_h) {
    return by_day_c(day.night_c, day.day_c, day.sun, hour);
  }
  const double at_sunset = by_day_c(day.night_c, day.day_c, day.sun, day.sun.sets_h);
  const double night = hours_a_day - day.sun.sets_h + day.next_sun.rises_h;
  return by_night_c(at_sunset, day.next_night_c, night, hour - day.sun.sets_h);
}

} // namespace nightsow::climate
