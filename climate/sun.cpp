#include "climate/sun.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace nightsow::climate {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double solar_constant_mj_per_min = 0.0820; // per m2; FAO-56, below equation 21
constexpr double minutes_a_day = 24.0 * 60.0;
constexpr double mm_per_mj = 0.408; // FAO-56 equation 20: evaporation that so much energy drives

double radians(double degrees) {
  return degrees * pi / 180.0;
}

// 365 in leap years too, as FAO-56 has it.
double year_angle(int day_of_year) {
  return 2.0 * pi * day_of_year / 365.0;
}

} // namespace

double solar_declination_rad(int day_of_year) {
  return 0.409 * std::sin(year_angle(day_of_year) - 1.39);
}

double inverse_relative_distance(int day_of_year) {
  return 1.0 + 0.033 * std::cos(year_angle(day_of_year));
}

double sunset_hour_angle_rad(double latitude_deg, int day_of_year) {
  // Beyond the polar circles the cosine leaves -1..1: the sun does not set, or does not rise.
  const double cosine =
      -std::tan(radians(latitude_deg)) * std::tan(solar_declination_rad(day_of_year));
  return std::acos(std::clamp(cosine, -1.0, 1.0));
}

double day_length_hours(double latitude_deg, int day_of_year) {
  return 24.0 / pi * sunset_hour_angle_rad(latitude_deg, day_of_year);
}

double day_length_hours(double latitude_deg, Date day) {
  return day_length_hours(latitude_deg, day_of_year(day));
}

SunTimes sun_times(double latitude_deg, int day_of_year) {
  const double half = 0.5 * day_length_hours(latitude_deg, day_of_year);
  return {12.0 - half, 12.0 + half};
}

double extraterrestrial_radiation_mj(double latitude_deg, int day_of_year) {
  const double latitude = radians(latitude_deg);
  const double declination = solar_declination_rad(day_of_year);
  const double sunset = sunset_hour_angle_rad(latitude_deg, day_of_year);
  const double height = sunset * std::sin(latitude) * std::sin(declination) +
                        std::cos(latitude) * std::cos(declination) * std::sin(sunset);
  const double radiation = minutes_a_day / pi * solar_constant_mj_per_min *
                           inverse_relative_distance(day_of_year) * height;
  return std::max(0.0, radiation); // the polar night is 0, not the rounding of it
}

double clear_sky_radiation_mj(double extraterrestrial_mj, double elevation_m) {
  return (0.75 + 2e-5 * elevation_m) * extraterrestrial_mj;
}

double radiation_from_range_mj(double range_k,
                               double extraterrestrial_mj,
                               double clear_sky_mj,
                               double factor) {
  return std::min(factor * std::sqrt(std::max(range_k, 0.0)) * extraterrestrial_mj, clear_sky_mj);
}

double hargreaves_evaporation_mm(double mean_c, double range_k, double extraterrestrial_mj) {
  const double evaporation = 0.0023 * (mean_c + 17.8) * std::sqrt(std::max(range_k, 0.0)) *
                             mm_per_mj * extraterrestrial_mj;
  return std::max(0.0, evaporation);
}

} // namespace nightsow::climate
