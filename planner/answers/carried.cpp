#include "planner/answers/carried.hpp"

#include "planner/answers/figures.hpp"
#include "planner/answers/gate_reasons.hpp"
#include "planner/answers/line_timing.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/answers/plan_line.hpp"
#include "planner/answers/pot_prospects.hpp"
#include "planner/answers/recorded_work.hpp"
#include "planner/answers/resting_work.hpp"
#include "planner/answers/wake.hpp"
#include "planner/answers/work_facts.hpp"
#include "planner/garden/open_sowings.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/usual_looks.hpp"
#include "species-rules/seed_parameters.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>
#include <utility>
#include <variant>

namespace nightsow::planner {

namespace {

using species_rules::FirstRestWay;

// Water so long before nights hold already woke the pot.
constexpr Days near_wake{14};
// Where no season tells, the looks at a pot are asked for so long.
constexpr int days_of_looks = 180;

/// One sowing, with all that decides about it.
struct Pot {
  const LoadedGarden& garden;
  const RecordedSowing& sowing;
  const species_rules::RuleFor& rule;
  Packet packet; ///< as it was sown, with the seeds that were
  SeedState seed;
  std::string bench;
  PotSeen seen;
};

std::string bench_now(const LoadedGarden& garden, const RecordedSowing& sowing) {
  std::string bench = sowing.bench;
  for (const Move& move : garden.records.moves) {
    if (move.sowing == sowing.id && move.kind == MoveKind::bench) {
      bench = move.to;
    }
  }
  return bench_named(garden.garden, bench).name;
}

Packet packet_as_sown(const RecordedSowing& sowing, const std::string& bench) {
  Packet packet = sowing.packet;
  packet.id = sowing.packet_id;
  packet.taxon = sowing.taxon;
  packet.bench = bench;
  packet.seeds = {static_cast<double>(sowing.seeds), static_cast<double>(sowing.seeds), {}};
  packet.wanted_plants.reset();
  packet.irreplaceable = false;
  return packet;
}

CarriedPot pot_head(const LoadedGarden& garden, const RecordedSowing& sowing, const PotSeen& seen) {
  CarriedPot pot;
  pot.sowing = std::max<EntryId>(sowing.id, 0);
  pot.packet = sowing.packet_id;
  pot.taxon = sowing.taxon;
  pot.bench = bench_now(garden, sowing);
  pot.sown_on = sowing.on;
  pot.seeds = sowing.seeds;
  pot.pots = sowing.pots;
  pot.alive = seen.alive;
  pot.counted_on = seen.on;
  return pot;
}

// The first water on that day or later.
std::optional<Date> wetted_from(const Records& records, EntryId sowing, Date day) {
  for (const Watering& watering : records.waterings) {
    if (watering.sowing == sowing && watering.kind != WateringKind::dry_rest &&
        watering.on >= day) {
      return watering.on;
    }
  }
  return std::nullopt;
}

WorkFacts facts_of(const Pot& of,
                   BenchSeasons& seasons,
                   const std::optional<climate::Season>& season,
                   const std::optional<Date>& water = std::nullopt) {
  const LineInput input{
      of.garden, of.packet, of.rule, of.seed, seasons.guard(of.bench), of.bench, nullptr};
  return work_facts(input, seasons, season, water);
}

// The work of the season in which it was first watered.
void add_work(const Pot& of, BenchSeasons& seasons, const WorkFacts& facts, CarriedPot& pot) {
  const auto& seedling = of.rule.rule.seedling;
  const auto days = [](const std::optional<species_rules::Estimate>& told, int usual) {
    return told ? static_cast<int>(std::lround(told->value)) : usual;
  };
  const auto& cover = of.rule.rule.sowing.humidity_cover;
  PotNeeds needs;
  needs.first_look_days = days(seedling.first_look_days, usual_first_look_days);
  needs.main_look_days = days(seedling.main_look_days, usual_main_look_days);
  needs.last_look_days = days(seedling.last_look_days, usual_last_look_days);
  needs.bag = cover && cover->value == species_rules::HumidityCover::useful;
  needs.mat = facts.on_mat;
  needs.shade = facts.shade_first_year;
  needs.defers = facts.defers;
  needs.may_go_dry = facts.may_go_dry;
  needs.first_rest = species_rules::first_rest_of(of.rule.rule);
  needs.rests = facts.rests;
  if (waters_are_told(of.garden.records, of.sowing.id, *pot.first_water)) {
    const WorkFacts by_need = facts_of(of, seasons, std::nullopt, pot.first_water);
    needs.water_every_days = by_need.water_every_days;
    needs.waters_later_days = by_need.waters_later_days;
  }
  pot.work = recorded_work(of.garden.records, of.sowing, pot.first_water, needs, of.garden.today);
}

// A sowing whose seedlings were seen was watered, whether or not that was written down.
void set_first_water(const LoadedGarden& garden, const RecordedSowing& sowing, CarriedPot& pot) {
  pot.first_water = sowing.first_water;
  if (!pot.first_water) {
    pot.first_water = wetted_from(garden.records, sowing.id, Date::min());
  }
  if (!pot.first_water && pot.alive) {
    pot.first_water = sowing.on;
    pot.reasons.push_back({ReasonCode::water_not_recorded, {{"on", sowing.on}}});
  }
}

void set_dry(const Pot& of,
             BenchSeasons& seasons,
             const std::optional<climate::Season>& season,
             CarriedPot& pot) {
  pot.stage = PotStage::dry;
  PlanLine line = plan_line(of.garden, of.packet, seasons, season);
  if (auto* sowing = std::get_if<Sowing>(&line.place)) {
    pot.verdict = sowing->verdict;
    pot.water = sowing->first_water;
    pot.reasons = std::move(sowing->reasons);
    if (sowing->expected) {
      pot.more = sowing->expected->seedlings;
    }
  } else {
    auto& later = std::get<NotNow>(line.place);
    pot.water.expected.p50 = later.when;
    pot.reasons = std::move(later.reasons);
  }
  if (pot.water.no_later_than && *pot.water.no_later_than < of.garden.today) {
    pot.water_due_since = pot.water.no_later_than;
  }
  pot.work = recorded_work(of.garden.records, of.sowing, std::nullopt, {}, of.garden.today);
  pot.reasons.insert(pot.reasons.begin(), {ReasonCode::sown_dry, {{"on", pot.sown_on}}});
}

// `wakes`: when what rests in the pot is watered again.
void add_seed_left(const Pot& of,
                   BenchSeasons& seasons,
                   const climate::Season& season,
                   const std::optional<Date>& wakes,
                   CarriedPot& pot) {
  const int missing = pot.seeds - of.seen.ever_up;
  if (missing > 0 && wakes) {
    const auto prospects = pot_prospects(
        of.garden, seasons, {of.rule, of.sowing, of.bench, *pot.first_water}, season, *wakes);
    if (prospects) {
      pot.more = prospects->seedlings;
      pot.reasons.push_back(
          {ReasonCode::seed_in_pot,
           {{"missing", missing}, {"waiting", static_cast<int>(std::lround(prospects->living))}}});
    }
  }
  if (!pot.alive) {
    pot.reasons.push_back({ReasonCode::count_not_recorded, {}});
  }
  const bool none_alive =
      (pot.alive && *pot.alive == 0) || first_rest_of(of.rule.rule) == FirstRestWay::dies;
  if (none_alive && pot.cool_seasons >= pot.keep_seasons) {
    pot.reasons.push_back({ReasonCode::press_before_emptying, {{"seasons", pot.cool_seasons}}});
  } else if (missing > 0) {
    pot.reasons.push_back(
        {ReasonCode::pot_kept, {{"seasons", pot.cool_seasons}, {"keep", pot.keep_seasons}}});
  }
}

void set_resting(const Pot& of, Wake wake, CarriedPot& pot) {
  const species_rules::SeedParameters seed = species_rules::seed_parameters(of.rule.rule);
  pot.stage = PotStage::resting;
  pot.verdict = wake.verdict;
  pot.water = std::move(wake.water);
  if (seed.first_rest == FirstRestWay::dies) {
    pot.reasons.push_back({ReasonCode::annual_over, {}});
  }
  if (wake.verdict == Verdict::water_now && wake.since) {
    pot.water_due_since = wake.since;
    pot.reasons.push_back({ReasonCode::wake_due, {{"since", *wake.since}}});
  }
  pot.reasons.insert(pot.reasons.end(), wake.reasons.begin(), wake.reasons.end());
  if (!pot_rests_dry(seed, pot.alive.value_or(0) > 0)) {
    pot.reasons.push_back({ReasonCode::not_dried_off, {}});
  }
}

void set_growing(const species_rules::Rule& rule,
                 const std::optional<Date>& rests,
                 CarriedPot& pot) {
  pot.stage = PotStage::growing;
  pot.rests = rests;
  if (rests) {
    pot.reasons.push_back(rests_reason(first_rest_of(rule), *rests));
  }
}

// Where nothing is alive in the pot, its seed rests as other seed does.
bool stays_awake(const Pot& of) {
  return first_rest_of(of.rule.rule) == FirstRestWay::none && of.seen.alive != 0;
}

bool may_be_pricked_out(const species_rules::Rule& rule) {
  const auto& how = rule.seedling.transplant;
  return how && (how->value == species_rules::Transplant::easy ||
                 how->value == species_rules::Transplant::after_first_rest);
}

// The work of a pot that grows in a later season; `later`: so many seasons after its first.
void add_later_work(
    const Pot& of, BenchSeasons& seasons, int later, LaterPotNeeds needs, CarriedPot& pot) {
  const auto& how = of.rule.rule.seedling.transplant;
  needs.rest = first_rest_of(of.rule.rule);
  // Annuals counted before are dead by now.
  const bool annual = needs.rest == FirstRestWay::dies;
  const bool grows = pot.alive.value_or(0) > 0 && (!annual || pot.counted_on >= needs.grows_from);
  const bool never = how && how->value == species_rules::Transplant::never;
  needs.prick_out = needs.prick_out && grows && may_be_pricked_out(of.rule.rule);
  needs.pot_on = grows && !annual && later >= 2 && !never;
  if (waters_are_told(of.garden.records, of.sowing.id, needs.by_need_from())) {
    needs.water_every_days =
        facts_of(of, seasons, std::nullopt, needs.grows_from).waters_later_days;
  }
  pot.work = recorded_later_work(of.garden.records, of.sowing, needs, of.garden.today);
}

// What is not let rest grows on; from when nights would have woken it there is work as on others.
void set_evergreen(const Pot& of,
                   BenchSeasons& seasons,
                   const climate::Season& season,
                   int later,
                   const std::optional<Date>& rests,
                   CarriedPot& pot) {
  set_growing(of.rule.rule, rests, pot);
  const Wake wake = wake_of(of.rule.rule, of.bench, of.garden.today, seasons, season);
  LaterPotNeeds needs;
  needs.grows_from = wake.since.value_or(*pot.first_water);
  needs.woken = false;
  needs.prick_out = wake.since.has_value();
  needs.rests = rests;
  add_later_work(of, seasons, wake.since ? later : 0, needs, pot);
  if (!rests || of.garden.today < *rests) {
    const auto wakes = day_of_water(wake.verdict, wake.water, of.garden.today);
    add_seed_left(of, seasons, season, wakes, pot);
  }
}

// Woken in the season at hand, or waiting to be.
void set_carried_over(const Pot& of,
                      BenchSeasons& seasons,
                      const climate::Season& season,
                      int later,
                      const std::optional<Date>& rests,
                      CarriedPot& pot) {
  Wake wake = wake_of(of.rule.rule, of.bench, of.garden.today, seasons, season);
  const std::optional<Date> woken =
      wake.since ? wetted_from(of.garden.records, of.sowing.id, *wake.since - near_wake)
                 : std::nullopt;
  if (woken) {
    set_growing(of.rule.rule, rests, pot);
    LaterPotNeeds needs;
    needs.grows_from = *woken;
    needs.prick_out = true;
    needs.rests = rests;
    add_later_work(of, seasons, later, needs, pot);
    return;
  }
  set_resting(of, std::move(wake), pot);
  add_seed_left(of, seasons, season, day_of_water(pot.verdict, pot.water, of.garden.today), pot);
}

// Where something lives in it. In the first season its work has that.
void add_later_rest(const Pot& of, int later, const std::optional<Date>& rests, CarriedPot& pot) {
  const FirstRestWay way = first_rest_of(of.rule.rule);
  const auto rest = recorded_rest(of.garden.records, of.sowing.id, way, rests, of.garden.today);
  if (later > 0 && of.seen.alive != 0 && way != FirstRestWay::dies && rest) {
    pot.work.push_back(*rest);
  }
}

void set_watered(const Pot& of,
                 BenchSeasons& seasons,
                 const climate::Season& season,
                 CarriedPot& pot) {
  const Date today = of.garden.today;
  const climate::Season first =
      season_planned_on(*seasons.station().turning.phases, *pot.first_water);
  const WorkFacts facts = facts_of(of, seasons, season);
  const int later = std::max(0, season.name - first.name);
  const bool at_rest = facts.rests && today >= *facts.rests && season.planning_begins <= today;
  pot.keep_seasons = facts.keep_seasons.value_or(usual_keep_seasons);
  pot.cool_seasons = later + (at_rest ? 1 : 0);
  if (later == 0) {
    add_work(of, seasons, facts, pot);
  }
  if (at_rest && !stays_awake(of)) {
    add_later_rest(of, later, facts.rests, pot);
    set_resting(of,
                wake_on(facts.wakes.value_or(season.next_planning_begins),
                        today,
                        grows_in_summer(of.rule.rule) ? ReasonCode::wakes_in_warmth
                                                      : ReasonCode::next_window),
                pot);
  } else if (later == 0) {
    set_growing(of.rule.rule, facts.rests, pot);
  } else if (stays_awake(of)) {
    set_evergreen(of, seasons, season, later, facts.rests, pot);
  } else {
    set_carried_over(of, seasons, season, later, facts.rests, pot);
  }
}

} // namespace

std::string_view name_of(PotStage stage) {
  constexpr std::array<std::string_view, 3> names{"dry", "growing", "resting"};
  return names.at(static_cast<std::size_t>(stage));
}

std::optional<CarriedPot> carried_pot(const LoadedGarden& garden,
                                      BenchSeasons& seasons,
                                      const std::optional<climate::Season>& season,
                                      const RecordedSowing& sowing) {
  const PotSeen seen = pot_seen(garden.records, sowing);
  if (sowing.on > garden.today || closing_of(garden.records, sowing.id) != nullptr ||
      (seen.alive == 0 && seen.ever_up >= sowing.seeds)) {
    return std::nullopt;
  }
  CarriedPot pot = pot_head(garden, sowing, seen);
  const species_rules::Lookup lookup = garden.catalogue->rule_for(sowing.taxon);
  if (!lookup.found) {
    pot.stage = PotStage::growing;
    pot.verdict = Verdict::unknown;
    pot.reasons.push_back({ReasonCode::unknown_taxon,
                           {{"written", sowing.taxon}, {"suggestion", lookup.suggestion}}});
    return pot;
  }
  const species_rules::Rule& rule = lookup.found->rule;
  pot.accepted = lookup.found->accepted;
  pot.start = species_rules::word_of(start_of(rule));
  pot.first_rest = species_rules::word_of(species_rules::first_rest_of(rule));
  set_first_water(garden, sowing, pot);
  const Packet packet = packet_as_sown(sowing, pot.bench);
  const Pot of{garden,
               sowing,
               *lookup.found,
               packet,
               seed_state(packet, rule, garden.today),
               pot.bench,
               seen};
  if (!pot.first_water) {
    set_dry(of, seasons, season, pot);
  } else if (season) {
    set_watered(of, seasons, *season, pot);
  } else {
    set_growing(rule, std::nullopt, pot);
    if (days_between(*pot.first_water, garden.today) <= days_of_looks) {
      add_work(of, seasons, facts_of(of, seasons, std::nullopt), pot);
    }
    pot.reasons.push_back(no_cooling_limb_reason(seasons.station()));
  }
  return pot;
}

std::vector<CarriedPot> carried_pots(const LoadedGarden& garden,
                                     BenchSeasons& seasons,
                                     const std::optional<climate::Season>& season) {
  std::vector<CarriedPot> pots;
  for (const RecordedSowing& sowing : garden.records.sowings) {
    if (auto pot = carried_pot(garden, seasons, season, sowing)) {
      pots.push_back(*std::move(pot));
    }
  }
  const auto key = [&](const CarriedPot& pot) {
    const bool grows = pot.stage == PotStage::growing;
    const auto water = day_of_water(pot.verdict, pot.water, garden.today);
    return std::tuple{grows, water.value_or(Date::max()), pot.packet, pot.sowing, pot.sown_on};
  };
  std::stable_sort(pots.begin(), pots.end(), [&](const CarriedPot& a, const CarriedPot& b) {
    return key(a) < key(b);
  });
  return pots;
}

} // namespace nightsow::planner
