#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/spread.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace nightsow::planner {

/// What to do with a packet on the day of the plan.
enum class Verdict {
  water_now, ///< sow and give first water now
  wait,      ///< not yet; `first_water` says what it waits for
  unknown,   ///< the readings do not allow a verdict; the reasons say why
};

[[nodiscard]] std::string_view name_of(Verdict verdict);

/// The condition for first water, in words of nights.
struct WaterWhen {
  int nights = 0;
  int of = 0;
  double at_or_under_c = 0.0;
  std::optional<double> no_day_over_c;
  std::string bench;
};

struct FirstWater {
  std::optional<WaterWhen> when; ///< empty where nights do not decide
  std::optional<Date> not_before;
  Spread expected;
  std::optional<Date> no_later_than;
  std::optional<Date> held{}; ///< the saved plan's day, kept since another gains nothing worth it
};

/// The day that is planned with: today for what is watered now, else the one held, else the middle
/// of those expected.
[[nodiscard]] std::optional<Date> day_of_water(Verdict verdict,
                                               const FirstWater& water,
                                               Date today);

} // namespace nightsow::planner
