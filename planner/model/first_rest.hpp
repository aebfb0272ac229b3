#pragma once

#include "climate/base/date.hpp"
#include "climate/seasons.hpp"
#include "planner/model/bench_climate.hpp"
#include "species-rules/rule.hpp"

#include <optional>

namespace nightsow::planner {

/// When seedlings sown in a season go to their first rest, on the smooth year of the bench.
struct FirstRest {
  Date begins{};
  bool reached = true; ///< false: the climate does not bring it; `begins` then ends the season
};

/// Winter growers: warmth and long days, summed from the coldest night on, reach the sum. Not
/// reached by the day before the next hottest night: that day.
[[nodiscard]] FirstRest rest_by_heat(const BenchClimate& climate,
                                     const climate::Season& season,
                                     double rest_sum);

/// Summer growers: the mean of seven days after the hottest night falls to cool_rest_c. Not reached
/// by the next middle of the warming limb: that day.
[[nodiscard]] FirstRest rest_by_cool(const BenchClimate& climate, const climate::Season& season);

enum class GrowingSeason { winter, summer };

/// The rest as the climate brings it, whatever the kind makes of it: for work that comes with it.
[[nodiscard]] FirstRest resting_season(const BenchClimate& climate,
                                       const climate::Season& season,
                                       GrowingSeason grows,
                                       double rest_sum);

/// What ends the time to grow: that rest, in which annuals die; of evergreens the day before the
/// next hottest night, by which they are judged (never `reached`).
[[nodiscard]] FirstRest growth_ends(const BenchClimate& climate,
                                    const climate::Season& season,
                                    GrowingSeason grows,
                                    double rest_sum,
                                    species_rules::FirstRestWay way);

/// The latest day of first water that still leaves the good growing days before the rest, when most
/// seedlings come `emergence_days` later. Empty when not even `earliest` does.
[[nodiscard]] std::optional<Date> latest_first_water(const BenchClimate& climate,
                                                     GrowingSeason grows,
                                                     const FirstRest& rest,
                                                     double growth_needed_days,
                                                     int emergence_days,
                                                     Date earliest);

} // namespace nightsow::planner
