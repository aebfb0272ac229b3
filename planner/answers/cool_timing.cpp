#include "planner/answers/figures.hpp"
#include "planner/answers/gate_reasons.hpp"
#include "planner/answers/line_timing.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/model/first_rest.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/usual_looks.hpp"
#include "species-rules/growth.hpp"
#include "species-rules/seed_parameters.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

// No day of the coming week may be hotter than the day limit by so much (common practice, no
// source).
constexpr double single_day_margin_k = 5.0;
// A kind that starts in any mild season, and whose rule names no day limit (common practice).
constexpr double usual_day_limit_c = 27.0;
// Below so many seasons in ten a warning would stand beside every line (common practice, no
// source).
constexpr double relapse_worth_saying = 0.3;
// For rules that do not say (common practice, no source).
constexpr double usual_growth_days = 70.0;

GateAnswer gate_answer(const GateOutlook& gate) {
  GateAnswer answer;
  answer.limit_c = rounded_tenth(gate.limit.at_or_under.degrees());
  if (gate.limit.day_limit) {
    answer.day_limit_c = rounded_tenth(gate.limit.day_limit->degrees());
  }
  answer.nights = gate.limit.nights;
  answer.of = gate.limit.of;
  answer.counted = gate.last_14.cool;
  answer.counted_of = gate.last_14.of;
  answer.needed = climate::holds_nights;
  answer.binds = gate.binding.binds;
  answer.stirs = to_spread(gate.words.stirs);
  answer.holds = to_spread(gate.words.holds);
  answer.settles = to_spread(gate.words.settles);
  return answer;
}

LineTiming timing_without_phases(const LineInput& input,
                                 BenchSeasons& seasons,
                                 const climate::NightLimit& limit) {
  LineTiming timing;
  timing.never = true;
  const BenchClimate& climate = seasons.climate(input.bench);
  const climate::YearsNeverCool years =
      climate::years_never_cool(climate.bench, climate.turning.hottest, limit);
  timing.reasons.push_back(never_cool_reason(limit.at_or_under, years.never, years.years));
  timing.reasons.push_back(no_cooling_limb_reason(seasons.station()));
  timing.reasons.push_back({ReasonCode::cooling_could_help, {}});
  timing.water.expected.never = 1.0;
  return timing;
}

void set_latest_day(const LineInput& input,
                    const BenchClimate& climate,
                    const climate::Season& season,
                    LineTiming& timing) {
  const species_rules::SeedlingRule& seedling = input.rule.rule.seedling;
  const double days = value_or(seedling.growth_needed_days, usual_growth_days);
  const species_rules::FirstRestWay way = species_rules::first_rest_of(input.rule.rule);
  const FirstRest rest = growth_ends(climate,
                                     season,
                                     GrowingSeason::winter,
                                     value_or(seedling.rest_sum, species_rules::default_rest_sum),
                                     way);
  timing.water.no_later_than = latest_first_water(
      climate,
      GrowingSeason::winter,
      rest,
      days,
      static_cast<int>(std::lround(value_or(seedling.main_look_days, usual_main_look_days))),
      season.limb_begins);
  if (!timing.water.no_later_than && input.garden.today >= season.coldest) {
    // Too short a season even from its first day: at least none of its second half.
    timing.water.no_later_than = season.coldest - Days{1};
  }
  if (timing.water.no_later_than && *timing.water.no_later_than < input.garden.today) {
    timing.missed = window_passed(*timing.water.no_later_than);
  }
  const ReasonCode code =
      timing.water.no_later_than ? ReasonCode::growth_before_rest : ReasonCode::season_too_short;
  std::vector<Reason>& list = timing.water.no_later_than ? timing.reasons : timing.risks;
  const Reason needs{
      code, {{"days", static_cast<int>(std::lround(days))}, growth_end_value(way, rest.begins)}};
  list.push_back(needs);
  if (!rest.reached && way != species_rules::FirstRestWay::none) {
    timing.reasons.push_back({ReasonCode::no_rest_by_heat, {}});
  }
  const std::optional<Date>& expected = timing.water.expected.p50;
  if (timing.water.no_later_than && expected && *expected > *timing.water.no_later_than) {
    timing.risks.push_back({ReasonCode::season_too_short, needs.values});
  }
}

Reason not_ripe_reason(const SeedState& seed) {
  Reason reason{ReasonCode::seed_not_ripe, {}};
  if (seed.ripe_on) {
    reason.values.push_back({"ripe_on", *seed.ripe_on});
  }
  if (!seed.ripe_on || *seed.ripe_on_shelf < *seed.ripe_on) {
    reason.values.push_back({"on_shelf", *seed.ripe_on_shelf});
  }
  return reason;
}

// Of seed that will be ripe by the time water is expected nothing need be said.
void tell_ripeness(const LineInput& input, LineTiming& timing) {
  const std::optional<Date>& expected = timing.water.expected.p50;
  const bool in_time = input.seed.ripe_on && expected && *input.seed.ripe_on <= *expected;
  if (!input.seed.ripe && !in_time) {
    timing.reasons.insert(timing.reasons.begin(), not_ripe_reason(input.seed));
  }
}

// What holds water up for now puts its date off: of hot days the members know how long, of frost
// no date is better than today's.
void put_off_while_held_up(const BenchSeason& season,
                           std::optional<Celsius> day_limit,
                           LineTiming& timing) {
  if (has_reason(timing.reasons, ReasonCode::freezing_nights)) {
    timing.water.expected = {};
  } else if (day_limit && has_reason(timing.reasons, ReasonCode::hot_days)) {
    timing.water.expected = to_spread(mild_again(season, *day_limit));
  }
}

void append(std::vector<Reason>& list, std::vector<Reason> more) {
  list.insert(list.end(), more.begin(), more.end());
}

void add_day_limit_risk(bool left_out, std::optional<Celsius> day_limit, LineTiming& timing) {
  if (left_out && day_limit) {
    timing.risks.push_back({ReasonCode::day_limit_left_out, {{"day_limit_c", *day_limit}}});
  }
}

void add_gate_risks(const GateOutlook& gate, LineTiming& timing) {
  if (gate.words.relapse >= relapse_worth_saying) {
    timing.risks.push_back(
        {ReasonCode::relapse_likely, {{"share", Share{rounded_share(gate.words.relapse)}}}});
  }
}

void time_by_gate(const GateOutlook& gate, const std::string& bench, LineTiming& timing) {
  timing.water.expected = to_spread(gate.again.value_or(gate.words.holds));
  WaterWhen when{climate::holds_nights,
                 climate::holds_of,
                 rounded_tenth(gate.limit.at_or_under.degrees()),
                 std::nullopt,
                 bench};
  if (gate.limit.day_limit) {
    when.no_day_over_c = rounded_tenth(gate.limit.day_limit->degrees() + single_day_margin_k);
  }
  timing.water.when = when;
  timing.never = gate.words.holds.never >= never_share;
  add_gate_risks(gate, timing);
}

// Guards for a start that no gate decides.
void judge_mild_days(const LineInput& input,
                     const BenchClimate& climate,
                     Celsius day_limit,
                     bool mild_now,
                     LineTiming& timing) {
  GateVerdict verdict{mild_now ? Open::yes : Open::no, {}};
  if (mild_now) {
    if (const std::optional<Reason> hot = hot_days_reason(climate, day_limit)) {
      verdict = {Open::no, {*hot}};
    }
    if (const std::optional<Reason> freezing = freezing_reason(climate)) {
      verdict = {Open::no, {*freezing}};
    }
  }
  apply_guard(input.guard, *timing.water.not_before <= input.garden.today, verdict);
  timing.verdict = verdict_of(verdict.open);
  timing.reasons.insert(timing.reasons.begin(), verdict.reasons.begin(), verdict.reasons.end());
}

Date first_allowed(const LineInput& input, const climate::Season& season) {
  return std::max(input.garden.today, climate::first_allowed_date(season));
}

} // namespace

LineTiming cool_timing(const LineInput& input,
                       BenchSeasons& seasons,
                       const std::optional<climate::Season>& season) {
  const std::optional<climate::NightLimit> limit = night_limit(input.rule.rule);
  if (!limit) {
    return mild_timing(input, seasons, season);
  }
  if (!season) {
    return timing_without_phases(input, seasons, *limit);
  }
  const BenchClimate& climate = seasons.climate(input.bench);
  const BenchSeason& here = seasons.season(input.bench, *season);
  const GateOutlook& gate = seasons.gate(input.bench, *season, *limit);
  LineTiming timing;
  timing.gate = gate_answer(gate);
  timing.water.not_before = first_allowed(input, *season);
  GateVerdict verdict = gate_verdict(climate, here, gate, input.guard, input.garden.today);
  timing.verdict = verdict_of(verdict.open);
  timing.reasons = std::move(verdict.reasons);
  append(timing.reasons, gate_reasons(gate, *season, input.bench));
  const MildOutlook mild = mild_outlook(here, limit->day_limit);
  add_day_limit_risk(
      mild.day_limit_left_out || gate.words.observed.day_limit_left_out, limit->day_limit, timing);
  if (gate.binding.binds) {
    time_by_gate(gate, input.bench, timing);
    timing.opens = timing.gate->holds.p50;
  } else {
    timing.water.expected = to_spread(mild.days);
    timing.opens = climate::first_allowed_date(*season);
  }
  put_off_while_held_up(here, limit->day_limit, timing);
  keep_from(*timing.water.not_before, timing.water.expected);
  set_latest_day(input, climate, *season, timing);
  tell_ripeness(input, timing);
  return timing;
}

LineTiming mild_timing(const LineInput& input,
                       BenchSeasons& seasons,
                       const std::optional<climate::Season>& season) {
  const std::optional<species_rules::Estimate>& limit = input.rule.rule.gate.day_limit_c;
  const Celsius day_limit{value_or(limit, usual_day_limit_c)};
  const BenchClimate& climate = seasons.climate(input.bench);
  LineTiming timing;
  timing.water.not_before = input.garden.today;
  if (!season) {
    const std::optional<double> mean_c = recent_day_mean_c(climate);
    timing.reasons.push_back(no_cooling_limb_reason(seasons.station()));
    judge_mild_days(
        input, climate, day_limit, mean_c && at_or_under(*mean_c, day_limit.degrees()), timing);
    return timing;
  }
  const MildOutlook mild = mild_outlook(seasons.season(input.bench, *season), day_limit);
  timing.water.not_before = first_allowed(input, *season);
  timing.opens = climate::first_allowed_date(*season);
  timing.water.expected = to_spread(mild.days);
  timing.reasons.push_back(start_without_gate_reason(*season, day_limit));
  judge_mild_days(input, climate, day_limit, mild.mild_now, timing);
  add_day_limit_risk(mild.day_limit_left_out, day_limit, timing);
  put_off_while_held_up(seasons.season(input.bench, *season), day_limit, timing);
  keep_from(*timing.water.not_before, timing.water.expected);
  set_latest_day(input, climate, *season, timing);
  tell_ripeness(input, timing);
  return timing;
}

} // namespace nightsow::planner
