#include "planner/answers/wake.hpp"

#include "planner/answers/figures.hpp"
#include "planner/answers/gate_reasons.hpp"
#include "planner/answers/line_timing.hpp"
#include "planner/answers/resting_work.hpp"
#include "planner/model/nights_for_rule.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

Wake wake_by_nights(const species_rules::Rule& rule,
                    const std::string& bench,
                    Date today,
                    BenchSeasons& seasons,
                    const climate::Season& season,
                    climate::NightLimit limit) {
  limit.at_or_under =
      limit.at_or_under + CelsiusDelta{value_or(rule.gate.wake_above_limit_k, usual_wake_above_k)};
  const GateOutlook& gate = seasons.gate(bench, season, limit);
  GateVerdict verdict = gate_verdict(
      seasons.climate(bench), seasons.season(bench, season), gate, seasons.guard(bench), today);
  Wake wake;
  wake.verdict = verdict_of(verdict.open);
  const double limit_c = rounded_tenth(limit.at_or_under.degrees());
  wake.water.when =
      WaterWhen{climate::holds_nights, climate::holds_of, limit_c, std::nullopt, bench};
  wake.water.expected = to_spread(gate.again.value_or(gate.words.holds));
  if (gate.words.holds.p50 && *gate.words.holds.p50 <= today) {
    wake.since = *gate.words.holds.p50;
  }
  keep_from(std::max(today, climate::first_allowed_date(season)), wake.water.expected);
  wake.reasons.push_back(
      {ReasonCode::wakes_when_cool, {{"limit_c", Celsius{limit_c}}, {"bench", bench}}});
  if (!wake.water.expected.p50 || wake.verdict == Verdict::unknown) {
    wake.reasons.insert(wake.reasons.end(), verdict.reasons.begin(), verdict.reasons.end());
  }
  return wake;
}

} // namespace

Wake wake_on(Date day, Date today, ReasonCode why) {
  Wake wake;
  wake.verdict = day <= today ? Verdict::water_now : Verdict::wait;
  wake.water.expected = {day, day, day, 0.0};
  wake.reasons.push_back({why, {{"when", day}}});
  if (day <= today) {
    wake.since = day;
  }
  return wake;
}

Wake wake_of(const species_rules::Rule& rule,
             const std::string& bench,
             Date today,
             BenchSeasons& seasons,
             const climate::Season& season) {
  if (grows_in_summer(rule)) {
    return wake_on(season.planning_begins, today, ReasonCode::wakes_in_warmth);
  }
  if (const auto limit = night_limit(rule)) {
    return wake_by_nights(rule, bench, today, seasons, season, *limit);
  }
  return wake_on(season.limb_begins, today, ReasonCode::next_window);
}

} // namespace nightsow::planner
