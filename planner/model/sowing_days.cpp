#include "planner/model/sowing_days.hpp"

#include "planner/garden/weekday.hpp"

#include <algorithm>
#include <string_view>

namespace nightsow::planner {

bool is_away(std::span<const AwayPeriod> away, Date day) {
  return std::any_of(away.begin(), away.end(), [&](const AwayPeriod& period) {
    return period.from <= day && day <= period.to;
  });
}

Date nearest_day_there(std::span<const AwayPeriod> away, Date day, Date earliest) {
  Date before = day;
  while (before >= earliest && is_away(away, before)) {
    before -= Days{1};
  }
  if (before >= earliest) {
    return before;
  }
  while (is_away(away, day)) {
    day += Days{1};
  }
  return day;
}

bool is_sowing_day(const Garden& garden, Date day) {
  const bool away = is_away(garden.away, day);
  if (away || garden.sowing_days.empty()) {
    return !away;
  }
  const std::string_view word = weekday_word(date::weekday{day});
  return std::find(garden.sowing_days.begin(), garden.sowing_days.end(), word) !=
         garden.sowing_days.end();
}

std::optional<Date> sowing_day_for(const Garden& garden, Date today, Date water) {
  for (Date day = water; day >= today; day -= Days{1}) {
    if (is_sowing_day(garden, day)) {
      return day;
    }
  }
  const Date from = std::max(today, water);
  for (Date day = from; day <= from + Days{sowing_days_searched}; day += Days{1}) {
    if (is_sowing_day(garden, day)) {
      return day;
    }
  }
  return std::nullopt;
}

} // namespace nightsow::planner
