#pragma once

#include "climate/bench.hpp"
#include "climate/daily_series.hpp"
#include "climate/sun_year.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::climate {

enum class PotColour { pale, dark };

enum class FrostCare {
  none,
  fleece, ///< `fleece_k` on nights on which the seed would fall under `frost_near_c`
  in,     ///< carried in: never under `frost_near_c`
};

// Both common practice, no source.
inline constexpr double frost_near_c = 2.0; ///< something is done about frost under it
inline constexpr double fleece_k = 4.0;

/// A heat mat under the pots, on by day, and by night where `at_night`.
struct SeedMat {
  CelsiusDelta rise;
  std::optional<Celsius> thermostat;
  bool at_night = true;
};

/// What makes the seed warmer or colder than the air at the bench. Shares are 0..1.
struct SeedPlace {
  double latitude = 0.0;
  double elevation_m = 0.0;
  bool coast = false; ///< the factor of the sun's radiation from the range of temperatures
  bool glass = false; ///< glass or plastic overhead: less loss while the house is cold
  double sun = 1.0;   ///< share of the open sky's sun that reaches the place
  double shade = 0.5; ///< share of that which shading keeps off
  PotColour pots = PotColour::pale;
  double night_loss_k = 2.0; ///< under the air on a clear night: 3 under glass on moist mix, 2
                             ///< open, 1 under trees or shade cloth
  double lag_hours = surface_lag_hours;
  FrostCare frost_care = FrostCare::fleece;
  std::optional<SeedMat> mat{};

  static constexpr double surface_lag_hours = 0.7;
  static constexpr double covered_lag_hours = 2.5; ///< 20-40 mm down
  static constexpr double litre_lag_hours = 4.0;   ///< in the middle of a litre pot
};

/// Temperatures where the seed lies, hour by hour: for germination, heat kill, frost and drying.
/// Never for counting nights: no BenchAir can be made from it, and it from none without a place.
class SeedLevel {
public:
  static constexpr std::size_t hours_a_day = SunDay::hours;

  [[nodiscard]] Date first() const { return first_; }

  /// Days.
  [[nodiscard]] std::size_t size() const { return hour_c_.size() / hours_a_day; }

  /// The 24 hours of a date, solar time, °C; all missing where a night or day of it is.
  /// Requires: index < size().
  [[nodiscard]] std::span<const float> hours_of(std::size_t index) const;

  /// Highest minus lowest hour of the date; NaN where missing.
  [[nodiscard]] double swing_k(std::size_t index) const;

private:
  SeedLevel(Date first, std::size_t days);
  friend SeedLevel seed_level(const DailySeries& station,
                              const BenchAir& bench,
                              const SeedPlace& place,
                              const SunYear& sun);

  Date first_{};
  std::vector<float> hour_c_;
};

/// The sun of a day on the open ground, MJ m-2, from the day's range of temperatures in the open,
/// highest minus lowest in K; half of a clear day's where that is missing (NaN).
[[nodiscard]] double ground_sun_mj(double range_k, double above_mj, const SeedPlace& place);

/// For every date of the bench's air. Air by hourly_air_c; to it the sun, 0.014 K for each W m-2 on
/// pale pots, 0.0185 on dark ones, a half-sine with the sum that the station's range gives; at
/// night the loss, less under clouds (sun by clear sun, within 0.3..1); then a first-order lag in
/// hourly steps of 1 - exp(-1 / lag). The form and these constants are the project's own model, set
/// so that they looked right to a grower; the lag of litre pots is common practice, no source.
/// Requires: `sun` of the place's latitude.
[[nodiscard]] SeedLevel seed_level(const DailySeries& station,
                                   const BenchAir& bench,
                                   const SeedPlace& place,
                                   const SunYear& sun);

/// Air or seed over a mat: raised, but not past the thermostat; never cooled.
[[nodiscard]] double on_mat_c(double air_c,
                              CelsiusDelta rise,
                              const std::optional<Celsius>& thermostat);

} // namespace nightsow::climate
