#include "planner/answers/expectation.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/gate_reasons.hpp"
#include "planner/answers/line_timing.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/model/hot_season.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/usual_looks.hpp"
#include "species-rules/growth.hpp"
#include "species-rules/seed_parameters.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

using species_rules::Growth;

// For a rule made by hand without these (common practice, no source).
constexpr double usual_warm_night_c = 18.0;
constexpr double usual_growth_days = 90.0;

HotNeeds needs_of(const species_rules::Rule& rule) {
  HotNeeds needs;
  needs.warm_night_c = value_or(rule.gate.warm_night_c, usual_warm_night_c);
  needs.growth_needed_days = value_or(rule.seedling.growth_needed_days, usual_growth_days);
  needs.emergence_days =
      static_cast<int>(std::lround(value_or(rule.seedling.main_look_days, usual_main_look_days)));
  needs.rest_sum = value_or(rule.seedling.rest_sum, species_rules::default_rest_sum);
  const bool winter = rule.gate.growth && rule.gate.growth->value == Growth::winter;
  needs.grows = winter ? GrowingSeason::winter : GrowingSeason::summer;
  needs.uses_mat = uses_mat(rule);
  needs.first_rest = species_rules::first_rest_of(rule);
  return needs;
}

std::optional<HeatMat> mat_under(const LineInput& input) {
  return input.off_mat ? std::nullopt : mat_for(input.garden.garden, input.bench);
}

Reason warmth_reason(const HotWindow& window, const HotNeeds& needs) {
  const NamedValue night{"night_c", Celsius{rounded_tenth(window.night_c)}};
  const NamedValue limit{"limit_c", Celsius{needs.warm_night_c}};
  if (window.warm_without_mat) {
    return {ReasonCode::warm_enough, {night, limit}};
  }
  if (!needs.uses_mat || !window.mat_night_c) {
    return {ReasonCode::mat_needed, {night, limit}};
  }
  const NamedValue on_mat{"mat_night_c", Celsius{rounded_tenth(*window.mat_night_c)}};
  return window.warm_with_mat ? Reason{ReasonCode::mat_reaches, {night, on_mat, limit}}
                              : Reason{ReasonCode::mat_still_cool, {on_mat, limit}};
}

void judge(const LineInput& input, bool now, LineTiming& timing) {
  GateVerdict verdict{now ? Open::yes : Open::no, {}};
  apply_guard(input.guard, *timing.water.not_before <= input.garden.today, verdict);
  timing.verdict = verdict_of(verdict.open);
  timing.reasons.insert(timing.reasons.begin(), verdict.reasons.begin(), verdict.reasons.end());
}

// Where the year has no phases it may be warm enough all the same, and always.
LineTiming timing_without_phases(const LineInput& input,
                                 const BenchClimate& climate,
                                 const HotNeeds& needs) {
  LineTiming timing;
  HotWindow window;
  window.night_c = climate.smooth.night.value_c(input.garden.today);
  window.warm_without_mat = at_or_over(window.night_c, needs.warm_night_c);
  const std::optional<HeatMat> mat = mat_under(input);
  if (mat && needs.uses_mat) {
    window.mat_night_c = night_on_mat_c(window.night_c, *mat);
    window.warm_with_mat = at_or_over(*window.mat_night_c, needs.warm_night_c);
  }
  const bool warm = window.warm_without_mat || window.warm_with_mat;
  timing.water.not_before = input.garden.today;
  if (warm) {
    timing.water.expected = {input.garden.today, input.garden.today, input.garden.today, 0.0};
  }
  timing.reasons.push_back(warmth_reason(window, needs));
  judge(input, warm, timing);
  return timing;
}

} // namespace

LineTiming hot_timing(const LineInput& input,
                      BenchSeasons& seasons,
                      const std::optional<climate::Season>& season) {
  const HotNeeds needs = needs_of(input.rule.rule);
  const BenchClimate& climate = seasons.climate(input.bench);
  if (!season) {
    return timing_without_phases(input, climate, needs);
  }
  const HotWindow window = hot_window(climate, *season, needs, mat_under(input));
  const Date first = std::max(input.garden.today, window.opens);
  LineTiming timing;
  if (window.closes < input.garden.today) {
    timing.missed = window_passed(window.closes);
  }
  timing.water.not_before = first;
  timing.opens = window.opens;
  timing.water.expected = {first, first, first, 0.0};
  timing.water.no_later_than = window.closes;
  const Reason warmth = warmth_reason(window, needs);
  const bool too_cool =
      warmth.code == ReasonCode::mat_needed || warmth.code == ReasonCode::mat_still_cool;
  timing.reasons.push_back(
      {ReasonCode::starts_hot, {{"begins", window.opens}, {"ends", window.closes}}});
  // What stands in the way comes first.
  timing.reasons.insert(too_cool ? timing.reasons.begin() : timing.reasons.end(), warmth);
  const NamedValue days{"days", static_cast<int>(std::lround(needs.growth_needed_days))};
  const NamedValue rest = growth_end_value(needs.first_rest, window.rest.begins);
  if (window.season_too_short) {
    timing.risks.push_back({ReasonCode::season_too_short, {days, rest}});
  } else {
    timing.reasons.push_back({ReasonCode::growth_before_rest, {days, rest}});
  }
  judge(input, window.opens <= input.garden.today && !timing.missed, timing);
  return timing;
}

} // namespace nightsow::planner
