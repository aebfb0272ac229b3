#include "climate/sun_year.hpp"

#include <cmath>
#include <numbers>

namespace nightsow::climate {

namespace {

constexpr int days_a_leap_year = 366;
constexpr double seconds_an_hour = 3600.0;
constexpr double joule_per_mj = 1e6;

double sun_w_per_mj(const SunDay& day, std::size_t hour) {
  const double length = day.times.day_length_h();
  if (length <= 0.0 || day.is_night(hour)) {
    return 0.0;
  }
  const double peak = joule_per_mj * std::numbers::pi / (2.0 * length * seconds_an_hour);
  const double since_sunrise = static_cast<double>(hour) - day.times.rises_h;
  return peak * std::sin(std::numbers::pi * since_sunrise / length);
}

SunDay sun_day(double latitude_deg, int day_of_year) {
  SunDay day;
  day.times = sun_times(latitude_deg, day_of_year);
  day.above_mj = extraterrestrial_radiation_mj(latitude_deg, day_of_year);
  const SunsAround around{sun_times(latitude_deg, day_of_year - 1),
                          day.times,
                          sun_times(latitude_deg, day_of_year + 1)};
  for (std::size_t hour = 0; hour < SunDay::hours; ++hour) {
    day.air[hour] = hour_shares(around, static_cast<double>(hour));
    day.sun_w_per_mj[hour] = sun_w_per_mj(day, hour);
  }
  return day;
}

} // namespace

SunYear::SunYear(double latitude_deg) : latitude_deg_(latitude_deg) {
  days_.reserve(days_a_leap_year);
  for (int day = 1; day <= days_a_leap_year; ++day) {
    days_.push_back(sun_day(latitude_deg, day));
  }
}

const SunDay& SunYear::on(Date date) const {
  return days_[static_cast<std::size_t>(day_of_year(date) - 1)];
}

} // namespace nightsow::climate
