#include "planner/model/readings_guard.hpp"

#include "climate/night_words.hpp"

#include <algorithm>
#include <vector>

namespace nightsow::planner {

namespace {

constexpr int least_recent_maxima = 4;

} // namespace

ReadingsGuard readings_guard(const LoadedGarden& garden) {
  ReadingsGuard guard;
  guard.last = climate::last_night(garden.station);
  if (!guard.last) {
    guard.stale = true;
    return guard;
  }
  guard.days_old = days_between(*guard.last, garden.today);
  guard.stale = guard.days_old > stale_days;
  guard.suspect = static_cast<int>(std::count_if(
      garden.findings.begin(), garden.findings.end(), [&](const climate::Finding& finding) {
        // Where two files differ the first one's value stands, and is sound.
        return finding.verdict == climate::Verdict::ignored &&
               finding.kind != climate::FindingKind::files_differ &&
               finding.date > *guard.last - Days{suspect_nights};
      }));
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
