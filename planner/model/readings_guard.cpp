#include "planner/model/readings_guard.hpp"

#include "climate/night_words.hpp"
#include "planner/garden/drawn_station.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace nightsow::planner {

namespace {

constexpr int least_recent_maxima = 4;

// How many of the days that a finding covers lie after the given one and are not known better by
// `other`, which may be null.
int doubtful_days(const climate::Finding& finding, Date after, const climate::DailySeries* other) {
  if (!climate::is_doubtful(finding)) {
    return 0;
  }
  const int days = std::min(finding.days, days_between(after, finding.date));
  int doubtful = 0;
  for (int i = 0; i < days; ++i) {
    const auto at = other != nullptr ? other->index_of(finding.date - Days{i}) : std::nullopt;
    const bool known = at && !std::isnan(other->night_c()[*at]) && !std::isnan(other->day_c()[*at]);
    doubtful += known ? 0 : 1;
  }
  return doubtful;
}

int doubtful_days(const std::vector<climate::Finding>& findings,
                  Date after,
                  const climate::DailySeries* other) {
  int doubtful = 0;
  for (const climate::Finding& finding : findings) {
    doubtful += doubtful_days(finding, after, other);
  }
  return doubtful;
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
  const Date after = *guard.last - Days{suspect_nights};
  if (const auto doubts = garden.logger_doubts.find(name); doubts != garden.logger_doubts.end()) {
    guard.of_logger = doubtful_days(doubts->second.findings, after, nullptr);
  }
  guard.suspect = guard.of_logger + doubtful_days(garden.findings, after, logger);
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

std::optional<double> recent_day_mean_c(const BenchClimate& climate) {
  const climate::DailySeries& air = climate.bench.air;
  if (air.empty()) {
    return std::nullopt;
  }
  const std::vector<float> days =
      air.days_from(air.last() - Days{hot_window_days - 1}, hot_window_days);
  return climate::mean_of_those_there(days, least_recent_maxima);
}

} // namespace nightsow::planner
