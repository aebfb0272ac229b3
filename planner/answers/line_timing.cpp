#include "planner/answers/line_timing.hpp"

#include "planner/answers/gate_reasons.hpp"
#include "planner/model/nights_for_rule.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

LineTiming at_once_timing(const LineInput& input, BenchSeasons& seasons) {
  const Date today = input.garden.today;
  LineTiming timing;
  timing.verdict = Verdict::water_now;
  timing.water.not_before = today;
  timing.water.expected = {today, today, today, 0.0};
  timing.reasons.push_back({ReasonCode::fleshy_at_once, {}});
  const std::optional<Reason> freezing = freezing_reason(seasons.climate(input.bench));
  if (freezing && !input.guard.stale) {
    timing.reasons.insert(timing.reasons.begin(), *freezing);
  }
  return timing;
}

} // namespace

Reason window_passed(Date no_later_than) {
  return {ReasonCode::window_passed, {{"no_later_than", no_later_than}}};
}

NamedValue growth_end_value(species_rules::FirstRestWay way, Date ends) {
  using species_rules::FirstRestWay;
  return {way == FirstRestWay::none ? "hot" : way == FirstRestWay::dies ? "ends" : "rest", ends};
}

void keep_from(Date first, Spread& expected) {
  for (std::optional<Date>* date : {&expected.p10, &expected.p50, &expected.p90}) {
    if (*date) {
      *date = std::max(**date, first);
    }
  }
}

LineTiming line_timing(const LineInput& input,
                       BenchSeasons& seasons,
                       const std::optional<climate::Season>& season) {
  switch (start_of(input.rule.rule)) {
  case species_rules::Start::cool:
    return cool_timing(input, seasons, season);
  case species_rules::Start::any:
    return mild_timing(input, seasons, season);
  case species_rules::Start::hot:
    return hot_timing(input, seasons, season);
  case species_rules::Start::at_once:
    break;
  }
  return at_once_timing(input, seasons);
}

} // namespace nightsow::planner
