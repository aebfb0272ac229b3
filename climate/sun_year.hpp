#pragma once

#include "climate/base/date.hpp"
#include "climate/hourly.hpp"
#include "climate/sun.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace nightsow::climate {

/// One day of the year at one latitude, by full solar hours 0..23.
struct SunDay {
  static constexpr std::size_t hours = 24;

  SunTimes times;
  double above_mj = 0.0; ///< at the top of the atmosphere, MJ m-2 d-1
  /// The air of each hour, as shares of the extremes of this date and its neighbours.
  std::array<HourShares, hours> air{};
  /// W m-2 for each MJ m-2 of the day's sun: a half-sine from sunrise to sunset; 0 at night.
  std::array<double, hours> sun_w_per_mj{};

  [[nodiscard]] bool is_night(std::size_t hour) const {
    const auto h = static_cast<double>(hour);
    return h < times.rises_h || h > times.sets_h;
  }
};

/// What follows from latitude and day of the year alone, worked out once for as many years of
/// weather as there are. Days beside the turn of the year are those of a year of 365 days.
class SunYear {
public:
  /// Degrees, north positive, -90..90.
  explicit SunYear(double latitude_deg);

  [[nodiscard]] double latitude_deg() const { return latitude_deg_; }

  [[nodiscard]] const SunDay& on(Date date) const;

private:
  double latitude_deg_;
  std::vector<SunDay> days_; ///< from 1 January, 366
};

} // namespace nightsow::climate
