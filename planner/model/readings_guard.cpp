#include "planner/model/readings_guard.hpp"

#include "climate/night_words.hpp"
#include "planner/garden/drawn_station.hpp"

#include <algorithm>
#include <vector>

namespace nightsow::planner {

namespace {

constexpr int least_recent_maxima = 4;

// How many of the days that a finding covers lie after the given one.
int doubtful_days(const climate::Finding& finding, Date after) {
  const int days = std::min(finding.days, days_between(after, finding.date));
  return climate::is_doubtful(finding) ? std::max(0, days) : 0;
}

} // namespace

ReadingsGuard readings_guard(const LoadedGarden& garden) {
  ReadingsGuard guard;
  if (knows_normals_only(garden.garden)) {
    guard.stale = true;
    return guard;
  }
  guard.last = climate::last_night(garden.station);
  if (!guard.last) {
    guard.stale = true;
    return guard;
  }
  guard.days_old = days_between(*guard.last, garden.today);
  guard.stale = guard.days_old > stale_days;
  for (const climate::Finding& finding : garden.findings) {
    guard.suspect += doubtful_days(finding, *guard.last - Days{suspect_nights});
  }
  return guard;
}

std::optional<double> recent_day_mean_c(const BenchClimate& climate) {
  const climate::DailySeries& air = climate.bench.air;
  if (air.empty()) {
    return std::nullopt;
  }
  const std::vector<float> days =
      air.days_from(air.last() - Days{hot_window_days - 1}, hot_window_days);
  return climate::mean_of_maxima(days, least_recent_maxima);
}

} // namespace nightsow::planner
