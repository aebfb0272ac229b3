#include "planner/model/first_rest.hpp"

#include "climate/sun.hpp"
#include "species-rules/growth.hpp"

namespace nightsow::planner {

namespace {

double seven_day_mean_c(const BenchClimate& climate, Date last) {
  double sum = 0.0;
  for (int back = 0; back < 7; ++back) {
    sum += smooth_mean_c(climate, last - Days{back});
  }
  return sum / 7.0;
}

double growth_rate(GrowingSeason grows, double mean_c) {
  return grows == GrowingSeason::winter ? species_rules::winter_growth_rate(mean_c)
                                        : species_rules::summer_growth_rate(mean_c);
}

} // namespace

FirstRest rest_by_heat(const BenchClimate& climate,
                       const climate::Season& season,
                       double rest_sum) {
  double sum = 0.0;
  const Date last = season.next_hottest - Days{1};
  for (Date day = season.coldest; day <= last; day += Days{1}) {
    sum += species_rules::heat_rest_rate(seven_day_mean_c(climate, day),
                                         climate::day_length_hours(climate.latitude, day));
    if (sum >= rest_sum) {
      return {day, true};
    }
  }
  return {last, false};
}

FirstRest rest_by_cool(const BenchClimate& climate, const climate::Season& season) {
  for (Date day = season.hottest; day < season.next_planning_begins; day += Days{1}) {
    if (seven_day_mean_c(climate, day) <= species_rules::cool_rest_c) {
      return {day, true};
    }
  }
  return {season.next_planning_begins, false};
}

FirstRest resting_season(const BenchClimate& climate,
                         const climate::Season& season,
                         GrowingSeason grows,
                         double rest_sum) {
  return grows == GrowingSeason::summer ? rest_by_cool(climate, season)
                                        : rest_by_heat(climate, season, rest_sum);
}

FirstRest growth_ends(const BenchClimate& climate,
                      const climate::Season& season,
                      GrowingSeason grows,
                      double rest_sum,
                      species_rules::FirstRestWay way) {
  return way == species_rules::FirstRestWay::none
             ? FirstRest{season.next_hottest - Days{1}, false}
             : resting_season(climate, season, grows, rest_sum);
}

std::optional<Date> latest_first_water(const BenchClimate& climate,
                                       GrowingSeason grows,
                                       const FirstRest& rest,
                                       double growth_needed_days,
                                       int emergence_days,
                                       Date earliest) {
  double grown = 0.0;
  for (Date up = rest.begins - Days{1}; up >= earliest + Days{emergence_days}; up -= Days{1}) {
    grown += growth_rate(grows, smooth_mean_c(climate, up));
    if (grown >= growth_needed_days) {
      return up - Days{emergence_days};
    }
  }
  return std::nullopt;
}

} // namespace nightsow::planner
