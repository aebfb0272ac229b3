#pragma once

#include "planner/answers/plan_answer.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// A night or a day that pots have to be kept from.
struct WeatherAlarm {
  enum class Kind { frost, heat };

  Kind kind = Kind::frost;
  std::string bench;
  Date on{};
  double air_c = 0.0;    ///< the coldest night or hottest day of those looked at, in bench air
  double limit_c = 0.0;  ///< the alarm begins here
  bool forecast = false; ///< it is to come; else it is one of the last days read
};

/// A sowing of which fewer came than expected.
struct BehindSowing {
  long long sowing = 0; ///< number in the journal
  std::string taxon;    ///< as written
  Reason reason;        ///< behind_expected, with the figures
};

struct TodayAnswer {
  GardenHead garden;
  Date today{};
  std::vector<WeatherAlarm> alarms; ///< frost first, by bench
  std::vector<Reason> warnings;     ///< readings too old or in doubt to say more
  std::vector<BehindSowing> behind;
  std::vector<Lot> lots;
  std::vector<DiaryEntry> now;    ///< with work from today to `to`, that work only; by date
  Date to{};                      ///< included
  std::optional<DiaryEntry> next; ///< the first behind it
};

} // namespace nightsow::planner
