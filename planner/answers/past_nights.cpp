#include "planner/answers/asked_kinds.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/gate_reasons.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/answers/nights.hpp"

namespace nightsow::planner {

namespace {

std::optional<Date> observed_date(const climate::PastSeason& past, const climate::WordDay& word) {
  return word.day ? std::optional{past.season.hottest + Days{*word.day}} : std::nullopt;
}

PastSeasonDates dates_of(const climate::PastSeason& past) {
  PastSeasonDates dates;
  dates.season = past.season.name;
  dates.usable = past.usable;
  dates.stirs = observed_date(past, past.words.stirs);
  dates.holds = observed_date(past, past.words.holds);
  dates.settles = observed_date(past, past.words.settles);
  if (past.words.stirs.unknown) {
    dates.unknown.emplace_back("stirs");
  }
  if (past.words.holds.unknown) {
    dates.unknown.emplace_back("holds");
  }
  if (past.words.settles.unknown) {
    dates.unknown.emplace_back("settles");
  }
  return dates;
}

PastGate past_gate(std::string name,
                   const climate::NightLimit& limit,
                   const BenchClimate& climate) {
  PastGate gate;
  gate.genus = std::move(name);
  gate.limit_c = rounded_tenth(limit.at_or_under.degrees());
  if (limit.day_limit) {
    gate.day_limit_c = rounded_tenth(limit.day_limit->degrees());
  }
  gate.nights = limit.nights;
  gate.of = limit.of;
  if (!climate.turning.phases) {
    const climate::YearsNeverCool years =
        climate::years_never_cool(climate.bench, climate.turning.hottest, limit);
    gate.usable_seasons = years.years;
    gate.never = years.never;
    return gate;
  }
  const std::vector<climate::PastSeason> past =
      climate::past_seasons(climate.bench, *climate.turning.phases, limit);
  const climate::Binding binding = climate::binding(past);
  gate.binds = binding.binds;
  gate.usable_seasons = binding.seasons;
  gate.never = binding.never;
  for (const climate::PastSeason& season : past) {
    gate.seasons.push_back(dates_of(season));
  }
  return gate;
}

} // namespace

PastNightsAnswer past_nights(const LoadedGarden& garden, const PastNightsRequest& request) {
  BenchSeasons seasons{garden};
  PastNightsAnswer answer;
  answer.garden = garden_head(garden.garden);
  answer.today = garden.today;
  answer.warnings =
      warnings_of(garden, seasons.station(), usable_seasons(seasons.station(), std::nullopt));
  if (request.limit_c) {
    climate::NightLimit limit;
    limit.at_or_under = Celsius{*request.limit_c};
    if (request.day_limit_c) {
      limit.day_limit = Celsius{*request.day_limit_c};
    }
    answer.gates.push_back(
        past_gate("", limit, seasons.climate(garden.garden.benches.front().name)));
    return answer;
  }
  for (const AskedKind& kind : asked_kinds(garden, request.genera)) {
    if (const std::optional<climate::NightLimit> limit = night_limit(kind.rule.rule)) {
      answer.gates.push_back(past_gate(kind.name, *limit, seasons.climate(kind.bench)));
    }
  }
  return answer;
}

} // namespace nightsow::planner
