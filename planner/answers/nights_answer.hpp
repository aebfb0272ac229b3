#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/heads.hpp"
#include "planner/answers/reason.hpp"
#include "planner/answers/spread.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

enum class Open { yes, no, unknown };

[[nodiscard]] std::string_view name_of(Open open);

/// Nights on a bench up to today.
struct RecentNights {
  Date from{};
  std::vector<std::optional<double>> night_c; ///< one a date; empty: missing
};

/// What the forecast says at a bench, days after the last reading only.
struct ForecastNights {
  int nights = 0; ///< of which it tells
  int cool = 0;   ///< of them at or under the limit
  std::optional<double> hottest_day_c;
};

/// Are nights cool enough yet for one genus, on one bench.
struct GenusNights {
  std::string genus;
  std::string bench;
  double limit_c = 0.0;
  std::optional<double> day_limit_c;
  int nights = 0;
  int of = 0;
  int counted = 0;       ///< of the last `of` nights, at or under the limit
  int counted_of_14 = 0; ///< the same of the last 14, of which 10 are needed
  bool binds = false;
  Open open = Open::unknown;
  Spread stirs;
  Spread holds; ///< where nights held and have turned warm since: when they will again
  double relapse = 0.0;
  std::vector<Reason> reasons;
  RecentNights recent{};
  std::optional<ForecastNights> forecast{};
  /// Chance of a warm week within four weeks, were the seed watered today; empty: not reckoned.
  std::optional<double> relapse_after_today{};
};

struct NightsAnswer {
  GardenHead garden;
  Date today{};
  int season = 0;
  ReadingsHead readings;
  std::vector<GenusNights> genera;
  std::vector<std::string> without_gate; ///< genera asked for that do not wait for cool nights
  std::vector<Reason> warnings;
};

/// What one past season was like, dates as they were observed.
struct PastSeasonDates {
  int season = 0;
  bool usable = false;
  std::optional<Date> stirs;
  std::optional<Date> holds;
  std::optional<Date> settles;
  std::vector<std::string> unknown; ///< which of the words missing nights leave in doubt
};

struct PastGate {
  std::string genus; ///< empty when a limit was asked for
  double limit_c = 0.0;
  std::optional<double> day_limit_c;
  int nights = 0;
  int of = 0;
  bool binds = false;
  int usable_seasons = 0;
  int never = 0; ///< usable seasons in which it never held
  std::vector<PastSeasonDates> seasons;
};

struct PastNightsAnswer {
  GardenHead garden;
  Date today{};
  std::vector<PastGate> gates;
  std::vector<Reason> warnings;
};

} // namespace nightsow::planner
