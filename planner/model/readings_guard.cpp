#include "planner/model/readings_guard.hpp"

#include "climate/night_words.hpp"
#include "planner/garden/drawn_station.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>
#include <string>
#include <vector>

namespace nightsow::planner {

namespace {

using Dates = std::set<Date>;

// The days that doubtful findings cover and that are not known better by `other`, which may be
// null.
Dates doubtful_dates(const std::vector<climate::Finding>& findings,
                     const climate::DailySeries* other) {
  Dates dates;
  for (const climate::Finding& finding : findings) {
    for (int i = 0; climate::is_doubtful(finding) && i < finding.days; ++i) {
      const Date date = finding.date - Days{i};
      const auto at = other != nullptr ? other->index_of(date) : std::nullopt;
      if (!at || std::isnan(other->night_c()[*at]) || std::isnan(other->day_c()[*at])) {
        dates.insert(date);
      }
    }
  }
  return dates;
}

int count_after(const Dates& dates, Date after) {
  return static_cast<int>(std::distance(dates.upper_bound(after), dates.end()));
}

} // namespace

ReadingsGuard readings_guard(const LoadedGarden& garden, std::string_view bench) {
  ReadingsGuard guard;
  if (knows_normals_only(garden.garden)) {
    guard.stale = true;
    return guard;
  }
  const std::string& name = bench_named(garden.garden, bench).name;
  const climate::DailySeries* logger = logger_on(garden, name);
  guard.last = climate::last_night(garden.station);
  if (logger != nullptr) {
    // An empty one is before any date.
    guard.last = std::max(guard.last, climate::last_night(*logger));
  }
  if (!guard.last) {
    guard.stale = true;
    return guard;
  }
  guard.days_old = days_between(*guard.last, garden.today);
  guard.stale = guard.days_old > stale_days;
  Dates doubtful = doubtful_dates(garden.findings, logger);
  Dates of_logger;
  if (const auto doubts = garden.logger_doubts.find(name); doubts != garden.logger_doubts.end()) {
    of_logger = doubtful_dates(doubts->second.findings, nullptr);
    doubtful.insert(of_logger.begin(), of_logger.end());
  }
  // The last nights end with the last reading, sound or not.
  const Date end = doubtful.empty() ? *guard.last : std::max(*guard.last, *doubtful.rbegin());
  guard.of_logger = count_after(of_logger, end - Days{suspect_nights});
  guard.suspect = count_after(doubtful, end - Days{suspect_nights});
  return guard;
}

std::optional<double> recent_night_mean_c(const BenchClimate& climate) {
  constexpr int week = 7;
  const std::optional<Date> last = climate::last_night(climate.bench.air);
  if (!last) {
    return std::nullopt;
  }
  const std::vector<float> nights = climate.bench.air.nights_from(*last - Days{week - 1}, week);
  return climate::mean_of_those_there(nights, least_recent_nights);
}

bool too_hot(std::optional<double> mean_c, Celsius day_limit) {
  return mean_c && *mean_c > day_limit.degrees() + hot_margin_k;
}

std::optional<double> recent_day_mean_c(const BenchClimate& climate) {
  const climate::DailySeries& air = climate.bench.air;
  if (air.empty()) {
    return std::nullopt;
  }
  const std::vector<float> days =
      air.days_from(air.last() - Days{hot_window_days - 1}, hot_window_days);
  return climate::mean_of_those_there(days, least_recent_highs);
}

} // namespace nightsow::planner
