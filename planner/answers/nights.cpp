#include "planner/answers/nights.hpp"

#include "planner/answers/asked_kinds.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/gate_reasons.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/answers/recent_nights.hpp"
#include "planner/model/bench_seasons.hpp"

#include <utility>

namespace nightsow::planner {

namespace {

GenusNights head_of(const AskedKind& asked, const climate::NightLimit& limit) {
  GenusNights line;
  line.genus = asked.name;
  line.bench = asked.bench;
  line.limit_c = rounded_tenth(limit.at_or_under.degrees());
  if (limit.day_limit) {
    line.day_limit_c = rounded_tenth(limit.day_limit->degrees());
  }
  line.nights = limit.nights;
  line.of = limit.of;
  return line;
}

GenusNights genus_line(const AskedKind& asked,
                       const climate::NightLimit& limit,
                       BenchSeasons& seasons,
                       Date today,
                       const climate::Season& season) {
  GenusNights line = head_of(asked, limit);
  const BenchClimate& climate = seasons.climate(asked.bench);
  const GateOutlook& gate = seasons.gate(asked.bench, season, limit);
  line.counted = gate.last_7.cool;
  line.counted_of_14 = gate.last_14.cool;
  line.binds = gate.binding.binds;
  line.stirs = to_spread(gate.words.stirs);
  line.holds = to_spread(gate.again.value_or(gate.words.holds));
  line.relapse = rounded_share(gate.words.relapse);
  GateVerdict verdict = gate_verdict(
      climate, seasons.season(asked.bench, season), gate, seasons.guard(asked.bench), today);
  if (limit.day_limit && has_reason(verdict.reasons, ReasonCode::hot_days)) {
    // Nights hold, and days are too hot.
    line.holds = to_spread(mild_again(seasons.season(asked.bench, season), *limit.day_limit));
  }
  line.open = verdict.open;
  line.reasons = std::move(verdict.reasons);
  const std::vector<Reason> more = gate_reasons(gate, season, asked.bench);
  line.reasons.insert(line.reasons.end(), more.begin(), more.end());
  line.recent = recent_nights(climate.bench, today);
  line.forecast = forecast_nights(climate.bench, limit);
  line.relapse_after_today =
      relapse_after(seasons.season(asked.bench, season).outlook, limit, today);
  return line;
}

GenusNights line_without_phases(const AskedKind& asked,
                                const climate::NightLimit& limit,
                                BenchSeasons& seasons,
                                Date today) {
  GenusNights line = head_of(asked, limit);
  const BenchClimate& climate = seasons.climate(asked.bench);
  const climate::YearsNeverCool years =
      climate::years_never_cool(climate.bench, climate.turning.hottest, limit);
  line.open = Open::no;
  line.binds = true;
  line.stirs.never = 1.0;
  line.holds.never = 1.0;
  line.reasons.push_back(never_cool_reason(limit.at_or_under, years.never, years.years));
  line.reasons.push_back({ReasonCode::cooling_could_help, {}});
  line.recent = recent_nights(climate.bench, today);
  line.forecast = forecast_nights(climate.bench, limit);
  return line;
}

} // namespace

NightsAnswer nights(const LoadedGarden& garden, const NightsRequest& request) {
  const std::vector<AskedKind> asked = asked_kinds(garden, request.genera);
  BenchSeasons seasons{garden};
  const std::optional<climate::Season> season =
      chosen_season(seasons.station(), garden.today, request.season);
  const int usable = usable_seasons(seasons.station(), season);
  if (season) {
    require_past_season(garden, *season, usable);
  }

  NightsAnswer answer;
  answer.garden = garden_head(garden.garden);
  answer.today = garden.today;
  answer.season = season ? season->name : year_of(garden.today);
  answer.readings = readings_head(garden, usable);
  answer.warnings = warnings_of(garden, seasons.station(), usable);
  for (const AskedKind& kind : asked) {
    const std::optional<climate::NightLimit> limit = night_limit(kind.rule.rule);
    if (!limit) {
      answer.without_gate.push_back(kind.name);
    } else if (season) {
      answer.genera.push_back(genus_line(kind, *limit, seasons, garden.today, *season));
    } else {
      answer.genera.push_back(line_without_phases(kind, *limit, seasons, garden.today));
    }
  }
  return answer;
}

} // namespace nightsow::planner
