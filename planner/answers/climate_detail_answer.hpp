#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

// Parts of the answer of `climate`: what the record lacks, and what is usual at the place.

/// Something odd about the whole record.
struct SuspicionLine {
  std::string kind;
  double share = 0.0; ///< of what shows it
  std::string text;   ///< what it means, without a full stop
};

struct HoleLine {
  Date from{};
  Date to{};
  int days = 0;
};

/// Readings missing more on some days than on others.
struct LopsidedLine {
  std::vector<std::string> on; ///< "sat", "sun" or "6", "7", "8" for months
  double share = 0.0;          ///< missing on those
  double usual = 0.0;          ///< missing on the others
};

struct CompletenessLine {
  std::string element; ///< nights, days
  double complete = 0.0;
  int months = 0;
  int months_lost = 0; ///< too much missing for a mean of the month
  std::vector<HoleLine> long_holes;
  std::optional<LopsidedLine> weekdays;
  std::optional<LopsidedLine> months_of_year;
};

struct RecordDetail {
  std::vector<SuspicionLine> suspicions;
  std::vector<CompletenessLine> completeness;
};

struct BandFigures {
  double p10_c = 0.0;
  double p50_c = 0.0;
  double p90_c = 0.0;
};

/// Of the 31 days about the middle of a month, over all years.
struct BandLine {
  int month = 0;
  std::optional<BandFigures> night;
  std::optional<BandFigures> day;
};

/// A change in ten years, with its 95 % limits.
struct DecadeTrend {
  double a_decade = 0.0;
  double low = 0.0;
  double high = 0.0;
  double p_value = 1.0; ///< Mann-Kendall
  int years = 0;
};

/// A quarter of the site's own year.
struct QuarterLine {
  std::string quarter; ///< hottest, cooling, coldest, warming
  double night_sd_c = 0.0;
  double skewness = 0.0;
  std::optional<DecadeTrend> trend; ///< K
};

struct DateRangeLine {
  Date p10{};
  Date p50{};
  Date p90{};
};

/// Dates are those of the season shown.
struct FrostLine {
  int seasons = 0;
  int without = 0;
  double nights_a_season = 0.0;
  std::optional<DateRangeLine> first;
  std::optional<DateRangeLine> last;
};

/// How the day moves on which nights come down to a limit.
struct GateTrendLine {
  double limit_c = 0.0;
  std::optional<double> day_limit_c;
  int nights = 0;
  int of = 0;
  std::string bench;
  std::vector<std::string> genera; ///< in hand that ask for it
  bool binds = false;
  int seasons = 0;
  int never = 0;
  std::optional<DecadeTrend> stirs; ///< days, later above 0
  std::optional<DecadeTrend> holds;
};

struct UsualDetail {
  std::vector<BandLine> bands;
  std::vector<QuarterLine> quarters;
  std::optional<DecadeTrend> year_trend; ///< K, of yearly means of nights
  FrostLine frost;
  std::vector<GateTrendLine> gates;
};

} // namespace nightsow::planner
