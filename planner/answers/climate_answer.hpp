#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/climate_detail_answer.hpp"
#include "planner/answers/heads.hpp"
#include "planner/answers/reason.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

struct ClimateFile {
  std::string file;
  std::string format;
  std::string unit;
  std::string bench; ///< empty: station
  std::vector<std::string> because;
  bool forecast = false; ///< of coming days, at station level
};

/// How many readings screening found at fault, by kind.
struct FindingCount {
  std::string kind;
  int used = 0;
  int ignored = 0;
};

struct FindingLine {
  std::string kind;
  std::string verdict; ///< used, ignored
  Date date{};
  std::string file;
  std::size_t line = 0;
  std::optional<double> value_c;
  std::optional<double> other_c;
  int days = 1; ///< that it covers; `date` is the last of them
};

/// What the logger of one bench recorded, and what is in doubt about it.
struct LoggerRecord {
  std::string bench;
  std::optional<Date> from;
  std::optional<Date> to;
  int nights = 0; ///< that are there and used
  std::vector<FindingCount> counts;
  std::vector<FindingLine> findings; ///< the ten worst, or all
  std::vector<SuspicionLine> suspicions;
};

/// Plain means of what was read, and the fitted year beside them.
struct MonthLine {
  int month = 0; ///< 1 = January
  std::optional<double> night_c;
  std::optional<double> day_c;
  std::optional<double> smooth_night_c; ///< the fitted year, trend carried to today
  std::optional<double> smooth_day_c;
  double day_length_hours = 0.0; ///< on its 15th day
  int nights = 0;                ///< readings behind night_c
};

struct PhasesLine {
  Date planning_begins{};
  Date hot_season_begins{};
  Date hottest_night{};
  Date hot_season_ends{};
  Date cooling_limb_begins{};
  Date coldest_night{};
  double hottest_c = 0.0;
  double coldest_c = 0.0;
};

struct TrendLine {
  double night_k_per_decade = 0.0;
  double standard_error = 0.0;
  double used_k_per_decade = 0.0; ///< shrunk by its own uncertainty
};

struct Extremes {
  double highest_c = 0.0;
  double lowest_c = 0.0;
};

/// Air at a bench beside the station's. Rises are means over all days.
struct BenchLine {
  std::string bench;    ///< empty: the station itself
  std::string source;   ///< how it was reached; of nights and days the nights count
  double night_k = 0.0; ///< above the station
  double day_k = 0.0;
  std::string next_source; ///< what would count otherwise; empty: nothing else
  std::optional<double> next_night_k;
  std::optional<double> next_day_k;
  Extremes nights;              ///< of the smooth year
  std::optional<Extremes> days; ///< the same
  double night_doubt_k = 0.0;   ///< nights may lie so much higher or lower; dates are wider for it
  int paired_nights = 0;        ///< read by the bench's logger and by the station
  int logger_nights = 0;        ///< that stand as the logger read them
  int days_in_sun = 0;          ///< on which the logger stood in the sun
  std::optional<Extremes> seed; ///< hours where the seed lies, in the last year of readings
};

/// What a kelvin more or less on a bench does to the day on which nights hold (the middle of what
/// is expected).
struct KelvinLine {
  std::string bench;
  double limit_c = 0.0;
  std::optional<double> day_limit_c;
  std::vector<std::string> kinds; ///< in hand, that wait for it
  std::optional<Date> cooler;     ///< the bench 1 K cooler; empty: never, by the middle
  std::optional<Date> as_reckoned;
  std::optional<Date> warmer;
  std::optional<int> days_earlier; ///< by the cooler bench
  std::optional<int> days_later;   ///< by the warmer one
};

struct ClimateAnswer {
  GardenHead garden;
  Date today{};
  int season = 0;
  ReadingsHead readings;
  int days_without_night = 0;
  int longest_hole_days = 0;
  std::optional<PhasesLine> phases;
  std::vector<Reason> no_phases; ///< why there are none
  double swing_k = 0.0;
  std::optional<TrendLine> trend;
  double night_sd_c = 0.0; ///< of single nights about the smooth year
  std::vector<ClimateFile> files;
  std::vector<MonthLine> months;
  std::vector<BenchLine> benches; ///< the station first
  std::vector<KelvinLine> kelvin; ///< empty without phases, or where no kind waits for nights
  std::vector<FindingCount> counts;
  std::vector<FindingLine> findings; ///< the ten worst, or all
  std::vector<LoggerRecord> loggers; ///< by the bench's name
  RecordDetail record;
  UsualDetail usual;
  std::vector<Reason> warnings;
};

} // namespace nightsow::planner
