#pragma once

#include "climate/base/date.hpp"

namespace nightsow::climate {

// FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes, Smith 1998), equations 21-25 and 34.
// Latitude in degrees, north positive, -90..90. day_of_year 1..366.

/// Solar declination in radians (equation 24).
[[nodiscard]] double solar_declination_rad(int day_of_year);

/// Inverse relative distance between Earth and sun (equation 23).
[[nodiscard]] double inverse_relative_distance(int day_of_year);

/// Sunset hour angle in radians (equation 25): 0 in the polar night, pi in the polar day.
[[nodiscard]] double sunset_hour_angle_rad(double latitude_deg, int day_of_year);

/// Daylight hours, sun's centre on the horizon, no refraction (equation 34). 0..24, ends included.
[[nodiscard]] double day_length_hours(double latitude_deg, int day_of_year);
[[nodiscard]] double day_length_hours(double latitude_deg, Date day);

/// Radiation at the top of the atmosphere in MJ m-2 d-1 (equation 21).
[[nodiscard]] double extraterrestrial_radiation_mj(double latitude_deg, int day_of_year);

/// Shortwave radiation under a clear sky in MJ m-2 d-1 (equation 37).
[[nodiscard]] double clear_sky_radiation_mj(double extraterrestrial_mj, double elevation_m);

} // namespace nightsow::climate
