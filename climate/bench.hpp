#pragma once

#include "climate/base/celsius.hpp"
#include "climate/daily_series.hpp"
#include "climate/shelter.hpp"
#include "climate/transfer.hpp"

#include <optional>
#include <string>

namespace nightsow::climate {

/// How the bench was reached from the station, best first.
enum class BenchSource {
  fixed_temperature, ///< the grower wrote what the place is kept at
  written_offset,    ///< the grower wrote offsets in garden.json
  fitted_transfer,   ///< from a logger's paired nights
  shelter_default,   ///< from the kind of shelter
  station_as_is,     ///< nothing is known about the bench
};

/// What to add to the station's air to get the air at the bench: the mean, where it is not the same
/// every day.
struct BenchOffset {
  CelsiusDelta night;
  CelsiusDelta day;
  BenchSource source = BenchSource::station_as_is; ///< of the nights, which decide
};

/// Air at the bench, the only air in which nights are counted. Not the temperature of pots or seed,
/// which is another type, and never made from this one without a model of the pot.
struct BenchAir {
  std::string bench;
  BenchOffset offset;
  DailySeries air;
  /// How far all the nights reckoned (not those read on the bench) may lie too high or too low.
  CelsiusDelta night_doubt{};
  std::optional<BenchOffset> next{}; ///< what the next rank would have given
  Transfer transfer{};               ///< nothing in it without a logger
  int logger_nights = 0;             ///< nights that stand as the logger read them
  bool plain = true;                 ///< the station plus the offset, the same on all days
  /// The days that a forecast tells of, at this bench; days that `air` holds are of no account.
  DailySeries forecast{};
};

/// The station's air raised by the same offset on all days.
[[nodiscard]] BenchAir to_bench(const DailySeries& station, std::string bench, BenchOffset offset);

/// Where a chilled place is kept when nobody wrote at what (common practice, no source).
inline constexpr Celsius chilled_place{5.0};

/// All that is known of a bench.
struct BenchFacts {
  std::string name;
  std::optional<CelsiusDelta> night_offset;
  std::optional<CelsiusDelta> day_offset;
  std::string shelter; ///< as written; empty: nothing is known
  std::optional<Celsius> floor;
  std::optional<Celsius> vent_above;
  std::optional<Celsius> fixed_night;
  std::optional<Celsius> fixed_day;
  bool chilled =
      false; ///< a cold room or cabinet: at `chilled_place` where no fixed temperature is written
  double latitude = 0.0;
  double elevation_m = 0.0; ///< for a clear sky's sun only
  /// From the station's height to the garden's, see height_offset. Left aside where an offset is
  /// written or a logger has stood: both are against the station as it is.
  CelsiusDelta height{};
};

/// The best rank there is, night and day each: fixed, written, fitted on `least_pairs` paired
/// nights or more, the shelter's default, the station as it is. A heater's floor holds night and
/// day; a vent caps days, but not under the air outside; the shelter's own floor and vent go with
/// its default only. On days with a sound reading of the logger that reading is the bench; a
/// maximum in the sun is none, nor one without the station's beside it unless the paired days find
/// the logger in the shade (`Transfer::day`). The series spans the station's days and the logger's.
/// A forecast is raised as the station is. `logger` and `forecast` may be null.
[[nodiscard]] BenchAir to_bench(const DailySeries& station,
                                const BenchFacts& facts,
                                const DailySeries* logger,
                                const DailySeries* forecast = nullptr);

/// How much colder a metre of height makes the air, to 11 km of the standard atmosphere (ICAO 1993,
/// Doc 7488): 6.5 K a kilometre.
inline constexpr double lapse_k_per_m = 0.0065;

/// By the standard atmosphere: positive where the garden lies below the station. Nothing under 50 m
/// of difference, which other unlikenesses outdo.
[[nodiscard]] CelsiusDelta height_offset(double station_m, double garden_m);

} // namespace nightsow::climate
