#include "planner/answers/recent_nights.hpp"

#include "climate/base/celsius.hpp"
#include "planner/answers/figures.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

constexpr int shown_nights = 30;

} // namespace

RecentNights recent_nights(const climate::BenchAir& bench, Date today) {
  RecentNights recent;
  recent.from = today - Days{shown_nights - 1};
  for (const float night_c : bench.air.nights_from(recent.from, shown_nights)) {
    recent.night_c.push_back(std::isnan(night_c)
                                 ? std::nullopt
                                 : std::optional{rounded_tenth(static_cast<double>(night_c))});
  }
  return recent;
}

std::optional<ForecastNights> forecast_nights(const climate::BenchAir& bench,
                                              const climate::NightLimit& limit) {
  const std::optional<Date> last = climate::last_night(bench.air);
  if (bench.forecast.empty() || !last || bench.forecast.last() <= *last) {
    return std::nullopt;
  }
  const Date from = std::max(*last + Days{1}, bench.forecast.first());
  const int days = days_between(from, bench.forecast.last()) + 1;
  ForecastNights told;
  for (const float night_c : bench.forecast.nights_from(from, days)) {
    if (!std::isnan(night_c)) {
      ++told.nights;
      told.cool += at_or_under(static_cast<double>(night_c), limit.at_or_under.degrees()) ? 1 : 0;
    }
  }
  for (const float day_c : bench.forecast.days_from(from, days)) {
    const auto known_c = static_cast<double>(day_c);
    if (!std::isnan(known_c) && (!told.hottest_day_c || known_c > *told.hottest_day_c)) {
      told.hottest_day_c = known_c;
    }
  }
  if (told.hottest_day_c) {
    told.hottest_day_c = rounded_tenth(*told.hottest_day_c);
  }
  return told;
}

std::optional<double> relapse_after(const climate::Outlook& outlook,
                                    const climate::NightLimit& limit,
                                    Date today) {
  const int after = days_between(outlook.first, today);
  if (after < 0 || after >= outlook.days || outlook.members == 0) {
    return std::nullopt;
  }
  int warm = 0;
  for (int member = 0; member < outlook.members; ++member) {
    warm += climate::relapses(outlook.night_of(member), limit, after) ? 1 : 0;
  }
  return rounded_share(static_cast<double>(warm) / outlook.members);
}

} // namespace nightsow::planner
