#pragma once

#include "climate/base/date.hpp"

namespace nightsow::climate {

// FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes, Smith 1998), equations 20-25, 34, 37,
// 50 and 52. Latitude in degrees, north positive, -90..90. day_of_year 1..366.

/// Solar declination in radians (equation 24).
[[nodiscard]] double solar_declination_rad(int day_of_year);

/// Inverse relative distance between Earth and sun (equation 23).
[[nodiscard]] double inverse_relative_distance(int day_of_year);

/// Sunset hour angle in radians (equation 25): 0 in the polar night, pi in the polar day.
[[nodiscard]] double sunset_hour_angle_rad(double latitude_deg, int day_of_year);

/// Daylight hours, sun's centre on the horizon, no refraction (equation 34). 0..24, ends included.
[[nodiscard]] double day_length_hours(double latitude_deg, int day_of_year);
[[nodiscard]] double day_length_hours(double latitude_deg, Date day);

/// When the sun rises and sets, in solar hours (noon is 12): 12 and 12 in the polar night, 0 and 24
/// in the polar day.
struct SunTimes {
  double rises_h = 6.0;
  double sets_h = 18.0;

  [[nodiscard]] double day_length_h() const { return sets_h - rises_h; }
};

/// Half the day length either side of noon.
[[nodiscard]] SunTimes sun_times(double latitude_deg, int day_of_year);

/// Radiation at the top of the atmosphere in MJ m-2 d-1 (equation 21).
[[nodiscard]] double extraterrestrial_radiation_mj(double latitude_deg, int day_of_year);

/// Shortwave radiation under a clear sky in MJ m-2 d-1 (equation 37).
[[nodiscard]] double clear_sky_radiation_mj(double extraterrestrial_mj, double elevation_m);

/// Shortwave radiation at the ground in MJ m-2 d-1 from the day's range of temperatures, highest
/// minus lowest in K (equation 50, Hargreaves and Samani; `factor` is their k), not above that of a
/// clear sky. A negative range counts as none; a missing one (NaN) stays missing.
[[nodiscard]] double radiation_from_range_mj(double range_k,
                                             double extraterrestrial_mj,
                                             double clear_sky_mj,
                                             double factor);

inline constexpr double range_factor_inland = 0.16; ///< k of equation 50
inline constexpr double range_factor_coast = 0.19;

/// Evaporation of the reference crop in mm d-1 (equation 52, Hargreaves). Means of five days or
/// more are safer than single days. Never negative.
[[nodiscard]] double hargreaves_evaporation_mm(double mean_c,
                                               double range_k,
                                               double extraterrestrial_mj);

} // namespace nightsow::climate
