#include "planner/answers/plan_line.hpp"

#include "planner/answers/chilled_route.hpp"
#include "planner/answers/decision.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/line_timing.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/answers/placed_line.hpp"
#include "planner/answers/seed_reasons.hpp"
#include "planner/answers/work_facts.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/seed_place.hpp"
#include "planner/model/seed_state.hpp"
#include "planner/model/sowing_days.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace nightsow::planner {

namespace {

using species_rules::word_of;

constexpr int most_seasons_ahead = 4;

template <class E>
std::optional<std::string> word(const std::optional<species_rules::Choice<E>>& choice) {
  return choice ? std::optional{std::string(word_of(choice->value))} : std::nullopt;
}

std::optional<int> whole(const std::optional<species_rules::Estimate>& estimate) {
  return estimate ? std::optional{static_cast<int>(std::lround(estimate->value))} : std::nullopt;
}

// How many pots is reckoned with how much is sown, see amounts.hpp.
How how_of(const species_rules::Rule& rule) {
  How how;
  how.seeds_per_pot = whole(rule.sowing.seeds_per_pot);
  how.pot_depth = word(rule.sowing.pot_depth);
  how.cover = word(rule.sowing.cover);
  how.mat = word(rule.sowing.mat);
  how.humidity_cover = word(rule.sowing.humidity_cover);
  how.light = word(rule.sowing.light);
  how.transplant = word(rule.seedling.transplant);
  how.first_rest = word(rule.seedling.first_rest);
  how.nick = word(rule.sowing.scarify);
  how.first_look_days = whole(rule.seedling.first_look_days);
  how.main_look_days = whole(rule.seedling.main_look_days);
  how.last_look_days = whole(rule.seedling.last_look_days);
  return how;
}

// How much less of it waits once it is nicked was counted for few kinds.
void add_deferral(const species_rules::Rule& rule, std::vector<Reason>& risks) {
  if (!keeps_for_another_season(rule)) {
    return;
  }
  const double defers = value_or(rule.seed.deferral_share, 0.0);
  Reason reason{helps(rule.sowing.scarify) ? ReasonCode::defers_whole : ReasonCode::defers,
                {{"share", Share{rounded_share(defers)}}}};
  if (reason.code == ReasonCode::defers_whole && rule.seed.deferral_treated_share) {
    reason.values.push_back(
        {"treated", Share{rounded_share(rule.seed.deferral_treated_share->value)}});
  }
  risks.push_back(std::move(reason));
}

void add_name_reasons(const species_rules::Lookup& lookup,
                      const std::string& written,
                      std::vector<Reason>& reasons) {
  if (!lookup.read_as.empty()) {
    reasons.push_back({ReasonCode::spelling, {{"written", written}, {"read_as", lookup.read_as}}});
  }
  if (lookup.found->by_synonym) {
    reasons.push_back(
        {ReasonCode::synonym, {{"written", written}, {"accepted", lookup.found->accepted}}});
  }
}

// The bench has its time, and first water is expected outside it.
void add_out_of_use(const Bench& bench, const Sowing& line, std::vector<Reason>& risks) {
  const std::optional<Date> when = line.first_water.expected.p50;
  const bool early = when && bench.from && *when < *bench.from;
  const bool late = when && bench.to && *when > *bench.to;
  if (!early && !late) {
    return;
  }
  Reason reason{ReasonCode::bench_out_of_use, {{"bench", bench.name}, {"when", *when}}};
  if (early) {
    reason.values.push_back({"from", *bench.from});
  } else {
    reason.values.push_back({"to", *bench.to});
  }
  risks.push_back(std::move(reason));
}

NotNow unknown_taxon(const Packet& packet, const species_rules::Lookup& lookup) {
  NotNow line;
  line.packet = packet.id;
  line.taxon = packet.taxon;
  line.reasons.push_back(
      {ReasonCode::unknown_taxon, {{"written", packet.taxon}, {"suggestion", lookup.suggestion}}});
  return line;
}

std::string keep_now(const species_rules::Rule& rule, const SeedState& seed) {
  if (!seed.ripe) {
    return std::string(word_of(species_rules::Store::warm_dry));
  }
  return rule.seed.store ? std::string(word_of(rule.seed.store->value)) : "";
}

// A day the grower has free, within the window. Where none is left that is said, and it is today
// for what is due now, unless the grower is away.
std::optional<Date> sow_on(const LineInput& input, LineTiming& timing) {
  const Date today = input.garden.today;
  const std::optional<Date> water = day_of_water(timing.verdict, timing.water, today);
  if (!water) {
    return std::nullopt;
  }
  const std::optional<Date>& latest = timing.water.no_later_than;
  if (latest && *water > *latest) {
    // No free day would help: its risks say that the season is too short.
    return std::nullopt;
  }
  const Date from = input.packet.in_hand_from.value_or(today);
  const std::optional<Date> free = sowing_day_for(input.garden.garden, from, *water);
  if (!latest || (free && *free <= *latest)) {
    return free;
  }
  timing.reasons.insert(timing.reasons.begin(),
                        {ReasonCode::last_chance, {{"no_later_than", *latest}}});
  const bool could_today =
      timing.verdict == Verdict::water_now && !is_away(input.garden.garden.away, today);
  return could_today ? std::optional{today} : std::nullopt;
}

// How to keep it until first water; `before` is what the rule says where nothing was compared.
Keep keep_of(const LineInput& input, const LineTiming& timing, const Decision& decision) {
  Keep keep;
  keep.now = keep_now(input.rule.rule, input.seed);
  if (timing.verdict == Verdict::water_now) {
    return keep;
  }
  keep.until = day_of_water(timing.verdict, timing.water, input.garden.today);
  if (decision.route == "keep_warm") {
    keep.now = word_of(species_rules::Store::warm_dry);
  } else if (decision.route == "fridge") {
    keep.now = word_of(species_rules::Store::cool_dry);
  } else if (decision.route == "warm_then_fridge") {
    keep.now = word_of(species_rules::Store::warm_dry);
    keep.until = decision.keeping.warm_until;
    keep.then = word_of(species_rules::Store::cool_dry);
  }
  return keep;
}

Sowing sowing_of(const LineInput& input, LineTiming timing, Decision decision) {
  const species_rules::Rule& rule = input.rule.rule;
  Sowing line;
  line.packet = input.packet.id;
  line.taxon = input.packet.taxon;
  line.accepted = input.rule.accepted;
  line.rule = input.rule.rule_name;
  line.seeds = input.packet.seeds.middle();
  line.bench = input.bench;
  line.in_hand_from = input.packet.in_hand_from;
  line.start = word_of(start_of(rule));
  line.verdict = timing.verdict;
  line.gate = timing.gate;
  line.first_water = timing.water;
  line.keep = keep_of(input, timing, decision);
  line.route = std::move(decision.route);
  line.routes = std::move(decision.routes);
  line.expected = std::move(decision.expected);
  line.keep_back = decision.keep_back;
  line.sow_on = sow_on(input, timing);
  line.how = how_of(rule);
  for (const species_rules::Remark& caution : rule.cautions) {
    line.cautions.push_back(caution.value);
  }
  line.reasons = std::move(timing.reasons);
  line.risks = std::move(timing.risks);
  return line;
}

NotNow not_now_of(const LineInput& input, LineTiming timing, std::optional<Date> when) {
  NotNow line;
  line.packet = input.packet.id;
  line.taxon = input.packet.taxon;
  line.accepted = input.rule.accepted;
  line.start = word_of(start_of(input.rule.rule));
  line.when = when;
  line.reasons = std::move(timing.reasons);
  return line;
}

// Of the possible seasons more than half bring a night, from today to the season's end, that young
// seedlings of the kind do not stand. What stands in a house kept free of frost is left out.
void add_frost_risk(const LineInput& input,
                    BenchSeasons& seasons,
                    const climate::Season& season,
                    LineTiming& timing) {
  const std::optional<species_rules::Estimate>& stands = input.rule.rule.seedling.seedling_frost_c;
  const Bench& bench = bench_named(input.garden.garden, input.bench);
  const climate::FrostCare care = frost_care_of(bench);
  if (!stands || care == climate::FrostCare::in) {
    return;
  }
  const std::optional<double> coldest_c = usual_coldest_night_c(
      seasons.season(input.bench, season).outlook, care == climate::FrostCare::fleece);
  if (coldest_c && *coldest_c < stands->value) {
    timing.risks.push_back({ReasonCode::frost_ahead,
                            {{"coldest_c", Celsius{rounded_tenth(*coldest_c)}},
                             {"limit_c", Celsius{stands->value}},
                             {"bench", bench.name}}});
  }
}

// The same packet a season later, for "not now, but then".
NotNow next_season_line(const LineInput& input,
                        PacketProspects& known,
                        BenchSeasons& seasons,
                        const climate::Season& season,
                        const LineTiming& passed) {
  const climate::Phases& phases = *seasons.station().turning.phases;
  climate::Season next = season_after(phases, season, input.garden.today);
  LineInput unsaved = input;
  unsaved.saved = nullptr; // it is of the season at hand
  const auto timing_of_next = [&] { return placed_line(unsaved, known, seasons, next).timing; };
  LineTiming timing = timing_of_next();
  // Seed that ripens slowly may miss that one, too.
  for (int tries = 0; timing.missed && tries < most_seasons_ahead; ++tries) {
    next = season_after(phases, next, input.garden.today);
    timing = timing_of_next();
  }
  std::vector<Reason> reasons{*passed.missed};
  std::copy_if(passed.reasons.begin(),
               passed.reasons.end(),
               std::back_inserter(reasons),
               [](const Reason& reason) {
                 return reason.code == ReasonCode::seed_not_ripe ||
                        reason.code == ReasonCode::season_held;
               });
  if (timing.water.expected.p50) {
    reasons.push_back({ReasonCode::next_window, {{"when", *timing.water.expected.p50}}});
  }
  // What stands in the way every season has to be said while it is put off, too.
  std::copy_if(timing.risks.begin(),
               timing.risks.end(),
               std::back_inserter(reasons),
               [](const Reason& risk) { return risk.code == ReasonCode::season_too_short; });
  const std::optional<Date> when = timing.water.expected.p50;
  timing.reasons = std::move(reasons);
  return not_now_of(input, std::move(timing), when);
}

// What a sowing says besides its timing and what is decided about it.
void complete(const LineInput& input,
              BenchSeasons& seasons,
              const std::optional<climate::Season>& season,
              std::vector<Reason> risks,
              Sowing& sowing) {
  if (sowing.keep_back) {
    sowing.reasons.push_back(
        {ReasonCode::keep_some_back,
         {{"seeds", static_cast<int>(std::lround(*sowing.seeds)) - *sowing.keep_back},
          {"keep", *sowing.keep_back}}});
  }
  add_deferral(input.rule.rule, risks);
  add_out_of_use(bench_named(input.garden.garden, input.bench), sowing, risks);
  sowing.work = work_facts(
      input, seasons, season, day_of_water(sowing.verdict, sowing.first_water, input.garden.today));
  sowing.risks.insert(sowing.risks.end(), risks.begin(), risks.end());
  sowing.seed = seed_answer(input.seed);
}

} // namespace

PlanLine plan_line(const LoadedGarden& garden,
                   const Packet& packet,
                   BenchSeasons& seasons,
                   const std::optional<climate::Season>& season,
                   const SavedLine* saved) {
  const species_rules::Lookup lookup = garden.catalogue->rule_for(packet.taxon);
  if (!lookup.found) {
    return {unknown_taxon(packet, lookup)};
  }
  const SeedState seed = seed_state(packet, lookup.found->rule, garden.today);
  const std::string& name = bench_named(garden.garden, packet.bench).name;
  const LineInput own{garden, packet, *lookup.found, seed, seasons.guard(name), name, saved};
  PacketProspects known;
  PlacedLine placed = placed_line(own, known, seasons, season);
  std::optional<ChilledLine> chilled =
      season ? chilled_line(own, known, seasons, *season, placed) : std::nullopt;
  LineInput input = chilled ? chilled->input : own;
  auto& [timing, decision, off_mat] = chilled ? chilled->line : placed;
  input.off_mat = off_mat;
  if (season && !timing.never) {
    add_frost_risk(input, seasons, *season, timing);
  }
  PlanLine line;
  line.passed = season && timing.missed && timing.missed->code == ReasonCode::window_passed;
  std::vector<Reason>* reasons = nullptr;
  if (season && timing.missed) {
    line.place = next_season_line(input, known, seasons, *season, timing);
    reasons = &std::get<NotNow>(line.place).reasons;
  } else if (timing.never) {
    line.place = not_now_of(input, std::move(timing), std::nullopt);
    reasons = &std::get<NotNow>(line.place).reasons;
  } else {
    line.place = sowing_of(input, std::move(timing), std::move(decision));
    reasons = &std::get<Sowing>(line.place).reasons;
  }
  SeedReasons of_seed =
      seed_reasons(packet, lookup.found->rule, seed, std::holds_alternative<Sowing>(line.place));
  reasons->insert(of_seed.first ? reasons->begin() : reasons->end(),
                  std::make_move_iterator(of_seed.reasons.begin()),
                  std::make_move_iterator(of_seed.reasons.end()));
  add_name_reasons(lookup, packet.taxon, *reasons);
  const Bench& bench = bench_named(garden.garden, input.bench);
  if (auto reached = bench_reason(seasons.climate(input.bench).bench, bench)) {
    reasons->push_back(std::move(*reached));
  }
  if (auto* sowing = std::get_if<Sowing>(&line.place)) {
    complete(input, seasons, season, std::move(of_seed.risks), *sowing);
  } else {
    std::get<NotNow>(line.place).seed = seed_answer(seed);
  }
  return line;
}

} // namespace nightsow::planner
