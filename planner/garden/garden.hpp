#pragma once

#include "climate/base/celsius.hpp"
#include "climate/base/date.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// One weather file that garden.json names.
struct ReadingsEntry {
  enum class Kind { readings, forecast };

  std::string file;  ///< relative to the garden's folder
  std::string bench; ///< empty: the station; otherwise the logger of that bench
  Kind kind = Kind::readings;
  std::string station; ///< the place meant, where the file holds several
  std::string column;  ///< the channel meant, where a logger has several
};

struct Bench {
  std::string name;
  std::string shelter;
  std::optional<CelsiusDelta> night_offset;
  std::optional<CelsiusDelta> day_offset;
  std::optional<Celsius> floor;
  std::optional<Celsius> vent_above;
  std::optional<Celsius> fixed_night;
  std::optional<Celsius> fixed_day;
  std::optional<double> sun;   ///< 0..1
  std::optional<double> shade; ///< 0..1
  std::optional<bool> rain;
  std::string pot_colour; ///< pale, dark or empty
  std::string frost_care; ///< none, fleece, in or empty
  std::optional<Date> from;
  std::optional<Date> to;
  bool chilled = false;
  std::optional<int> pots;
};

struct HeatMat {
  std::string name;
  std::string bench;
  CelsiusDelta rise;
  std::optional<Celsius> thermostat;
  std::optional<double> watts;
  std::optional<int> pots;
};

/// Both days included.
struct AwayPeriod {
  Date from{};
  Date to{};
};

/// Twelve values each, January first.
struct MonthlyNormals {
  std::vector<double> night_c;
  std::vector<double> day_c;
};

/// What garden.json says. Benches are never empty once read: a garden that names none has one open
/// bench, which is the station's air.
struct Garden {
  std::string name;
  double latitude = 0.0;  ///< degrees, north positive
  double longitude = 0.0; ///< degrees, east positive
  std::optional<double> elevation_m;
  std::string time_zone; ///< IANA name; empty: the machine's
  std::vector<ReadingsEntry> readings;
  std::optional<MonthlyNormals> monthly_normals;
  std::vector<Bench> benches;
  std::vector<HeatMat> mats;
  std::vector<std::string> sowing_days; ///< "sat", "sun" …
  std::optional<int> pots_per_day;
  std::vector<AwayPeriod> away;
  std::optional<double> mix_mineral_share;
};

} // namespace nightsow::planner
