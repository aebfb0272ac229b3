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

/// So many parts by volume of one thing: "pumice", 2.
struct MixPart {
  std::string name;
  double parts = 0.0;
};

/// A seed mix. What is left out is as in the garden's own mix, else as usual (model/mix.hpp).
struct MixRecipe {
  std::string name;
  std::vector<std::string> taxa; ///< families, genera or species; the garden's own mix has none
  std::optional<double> mineral_share;
  std::vector<MixPart> mineral;
  std::vector<MixPart> organic;
};

/// A round pot, for one depth class of the rules.
struct PotSize {
  std::string depth; ///< shallow, standard, deep, very_deep
  double top_cm = 0.0;
  double base_cm = 0.0;
  double deep_cm = 0.0;
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
  std::vector<MixPart> mix_mineral;
  std::vector<MixPart> mix_organic;
  std::vector<MixRecipe> mix_recipes;
  std::optional<double> mix_shrink;    ///< share of the parts' volume lost when they are mixed
  std::optional<double> price_per_kwh; ///< in whatever money the grower pays
  std::vector<PotSize> pot_sizes;      ///< where they differ from the usual ones (model/pots.hpp)
};

} // namespace nightsow::planner
