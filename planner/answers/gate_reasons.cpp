#include "planner/answers/gate_reasons.hpp"

#include "planner/answers/figures.hpp"
#include "planner/answers/make_heads.hpp"

#include <algorithm>
#include <vector>

namespace nightsow::planner {

namespace {

// So long before nights hold a first cool week misleads (common practice, no source).
constexpr int false_start_days = 14;
// Wet seed is not left out in nights that freeze (common practice, no source).
constexpr double frost_c = 0.0;

Reason open_reason(const GateOutlook& gate, const std::string& bench) {
  // Once it has been observed the day is the same in every member.
  return {ReasonCode::gate_open,
          {{"cool", gate.last_14.cool},
           {"of", gate.last_14.of},
           {"limit_c", gate.limit.at_or_under},
           {"bench", bench},
           {"since", *gate.words.holds.p50}}};
}

Reason waits_reason(const GateOutlook& gate, const std::string& bench) {
  return {ReasonCode::gate_waits,
          {{"cool", gate.last_14.cool},
           {"of", climate::holds_of},
           {"needed", climate::holds_nights},
           {"limit_c", gate.limit.at_or_under},
           {"bench", bench}}};
}

// Nights that held are lost again until ten of the last 14 are cool once more.
Reason lost_reason(const GateOutlook& gate, const std::string& bench) {
  Reason reason{ReasonCode::gate_lost,
                {{"cool", gate.last_14.cool},
                 {"of", gate.last_14.of},
                 {"limit_c", gate.limit.at_or_under},
                 {"bench", bench},
                 {"since", *gate.words.holds.p50}}};
  if (gate.again && gate.again->p50) {
    reason.values.push_back({"again", *gate.again->p50});
  }
  return reason;
}

} // namespace

void apply_guard(const ReadingsGuard& guard, bool due, GateVerdict& verdict) {
  if (guard.stale && due) {
    verdict.open = Open::unknown;
    if (guard.last) {
      verdict.reasons.insert(verdict.reasons.begin(), readings_stale_reason(guard));
    }
  } else if (guard.suspect > 0 && verdict.open == Open::yes) {
    verdict.open = Open::unknown;
    verdict.reasons.insert(verdict.reasons.begin(), readings_suspect_reason(guard));
  }
}

std::optional<Reason> hot_days_reason(const BenchClimate& climate,
                                      std::optional<Celsius> day_limit) {
  const std::optional<double> mean_c = recent_day_mean_c(climate);
  if (!day_limit || !too_hot(mean_c, *day_limit)) {
    return std::nullopt;
  }
  return Reason{ReasonCode::hot_days,
                {{"mean_c", Celsius{rounded_tenth(*mean_c)}}, {"day_limit_c", *day_limit}}};
}

std::optional<Reason> freezing_reason(const BenchClimate& climate) {
  const std::optional<double> mean_c = recent_night_mean_c(climate);
  if (!mean_c || *mean_c >= frost_c) {
    return std::nullopt;
  }
  return Reason{ReasonCode::freezing_nights, {{"mean_c", Celsius{rounded_tenth(*mean_c)}}}};
}

GateVerdict gate_verdict(const BenchClimate& climate,
                         const BenchSeason& season,
                         const GateOutlook& gate,
                         const ReadingsGuard& guard,
                         Date today) {
  const bool open =
      gate.binding.binds ? gate.cool_now : mild_outlook(season, gate.limit.day_limit).mild_now;
  GateVerdict verdict{open ? Open::yes : Open::no, {}};
  if (open) {
    if (const std::optional<Reason> hot = hot_days_reason(climate, gate.limit.day_limit)) {
      verdict.open = Open::no;
      verdict.reasons.push_back(*hot);
    }
    if (const std::optional<Reason> freezing = freezing_reason(climate)) {
      verdict.open = Open::no;
      verdict.reasons.push_back(*freezing);
    }
  }
  if (gate.binding.binds && gate.doubtful) {
    verdict.open = Open::unknown;
    verdict.reasons.push_back(
        {ReasonCode::nights_unknown, {{"missing", gate.last_14.missing}, {"of", gate.last_14.of}}});
  }
  const Date allowed = climate::first_allowed_date(season.season);
  apply_guard(guard, allowed <= today, verdict);
  return verdict;
}

Reason never_cool_reason(Celsius limit, int never, int seasons) {
  return {ReasonCode::nights_never_cool,
          {{"limit_c", limit}, {"never", never}, {"seasons", seasons}}};
}

Reason start_without_gate_reason(const climate::Season& season, std::optional<Celsius> day_limit) {
  Reason reason{ReasonCode::start_without_gate, {{"limb_begins", season.limb_begins}}};
  if (day_limit) {
    reason.values.push_back({"day_limit_c", *day_limit});
  }
  return reason;
}

std::vector<Reason> gate_reasons(const GateOutlook& gate,
                                 const climate::Season& season,
                                 const std::string& bench) {
  const NamedValue limit{"limit_c", gate.limit.at_or_under};
  const NamedValue late{"late", gate.binding.late};
  const NamedValue of_seasons{"seasons", gate.binding.seasons};
  std::vector<NamedValue> binding{late, of_seasons, limit};
  if (gate.limit.day_limit) {
    binding.push_back({"day_limit_c", *gate.limit.day_limit});
  }
  if (!gate.binding.binds) {
    return {{ReasonCode::gate_does_not_bind, binding},
            start_without_gate_reason(season, gate.limit.day_limit)};
  }
  std::vector<Reason> reasons;
  const climate::DateSpread& stirs = gate.words.stirs;
  const climate::DateSpread& holds = gate.words.holds;
  if (holds.never >= never_share) {
    reasons.push_back(
        never_cool_reason(gate.limit.at_or_under, gate.binding.never, gate.binding.seasons));
    reasons.push_back({ReasonCode::cooling_could_help, {}});
  }
  const Reason binds{ReasonCode::gate_binds, binding};
  if (gate.cool_now) {
    reasons.push_back(open_reason(gate, bench));
    reasons.push_back(binds);
    return reasons;
  }
  // The count so far stands beside the line anyway; what misleads growers is the first cool week.
  if (!gate.opened && stirs.p50 && holds.p50 &&
      days_between(*stirs.p50, *holds.p50) >= false_start_days) {
    reasons.push_back(
        {ReasonCode::stirs_before_holds, {{"stirs", *stirs.p50}, {"holds", *holds.p50}, limit}});
  }
  if (gate.opened && !gate.doubtful) {
    reasons.push_back(lost_reason(gate, bench));
  }
  reasons.push_back(binds);
  reasons.push_back(waits_reason(gate, bench));
  return reasons;
}

bool has_reason(const std::vector<Reason>& reasons, ReasonCode code) {
  return std::any_of(
      reasons.begin(), reasons.end(), [code](const Reason& reason) { return reason.code == code; });
}

} // namespace nightsow::planner
