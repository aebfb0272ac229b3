#include "planner/answers/work_facts.hpp"

#include "planner/answers/expectation.hpp"
#include "planner/answers/resting_work.hpp"
#include "planner/model/first_rest.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/seed_place.hpp"
#include "planner/model/usual_looks.hpp"
#include "planner/model/usual_watering.hpp"
#include "species-rules/growth.hpp"
#include "species-rules/seed_parameters.hpp"

#include <cmath>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::Choice;
using species_rules::Estimate;
using species_rules::FirstRestWay;
using species_rules::Treatment;

std::optional<double> value_of(const std::optional<Estimate>& estimate) {
  return estimate ? std::optional{estimate->value} : std::nullopt;
}

bool off_at_night(const species_rules::Rule& rule) {
  return rule.sowing.mat_at_night &&
         rule.sowing.mat_at_night->value == species_rules::MatAtNight::off;
}

// Good growing days of the usual year, the first included, the last not.
double growth_between(const BenchClimate& climate, bool summer, Date from, Date to) {
  double grown = 0.0;
  for (Date day = from; day < to; day += Days{1}) {
    const double mean_c = smooth_mean_c(climate, day);
    grown += summer ? species_rules::summer_growth_rate(mean_c)
                    : species_rules::winter_growth_rate(mean_c);
  }
  return grown;
}

// A season on: what wakes a resting plant came this far after this season's hottest night.
std::optional<Date> wakes_on(const LineInput& input,
                             BenchSeasons& seasons,
                             const climate::Season& season) {
  const species_rules::Rule& rule = input.rule.rule;
  if (grows_in_summer(rule)) {
    return season.next_planning_begins;
  }
  std::optional<climate::NightLimit> limit = night_limit(rule);
  const int on = days_between(season.hottest, season.limb_begins);
  const Date limb = season.next_hottest + Days{on};
  if (!limit) {
    return limb;
  }
  limit->at_or_under =
      limit->at_or_under + CelsiusDelta{value_or(rule.gate.wake_above_limit_k, usual_wake_above_k)};
  const std::optional<Date> holds = seasons.gate(input.bench, season, *limit).words.holds.p50;
  return holds ? season.next_hottest + (*holds - season.hottest) : limb;
}

void add_rest(const LineInput& input,
              BenchSeasons& seasons,
              const climate::Season& season,
              const std::optional<Date>& water,
              WorkFacts& facts) {
  const species_rules::Rule& rule = input.rule.rule;
  const BenchClimate& climate = seasons.climate(input.bench);
  const bool summer = grows_in_summer(rule);
  // An evergreen's own sum brings it no rest: the word to water on comes when others rest.
  const bool evergreen = first_rest_of(rule) == FirstRestWay::none;
  const double rest_sum = evergreen
                              ? species_rules::default_rest_sum
                              : value_or(rule.seedling.rest_sum, species_rules::default_rest_sum);
  const FirstRest rest = resting_season(
      climate, season, summer ? GrowingSeason::summer : GrowingSeason::winter, rest_sum);
  // A summer grower that the cool does not reach grows on.
  if (rest.reached || !summer) {
    facts.rests = rest.begins;
    facts.wakes = wakes_on(input, seasons, season);
  }
  if (water && rule.seedling.growth_needed_days && rule.seedling.main_look_days) {
    const Date up = *water + Days{std::lround(rule.seedling.main_look_days->value)};
    facts.too_small_to_rest =
        growth_between(climate, summer, up, rest.begins) < rule.seedling.growth_needed_days->value;
  }
}

// How often the pots usually want water, in their bag until they are up and without it later.
void add_watering(const LineInput& input, BenchSeasons& seasons, Date water, WorkFacts& facts) {
  const species_rules::Rule& rule = input.rule.rule;
  const Garden& garden = input.garden.garden;
  const climate::SeedPlace place = seed_place(garden, bench_named(garden, input.bench));
  const auto every = [&](bool bag, Date from) {
    const bool grit = !rule.sowing.cover || rule.sowing.cover->value != species_rules::Cover::none;
    return usual_watering_days(seasons.station(),
                               seasons.climate(input.bench),
                               place,
                               {.grit = grit, .closed_bag = bag},
                               from);
  };
  const bool bag = rule.sowing.humidity_cover &&
                   rule.sowing.humidity_cover->value == species_rules::HumidityCover::useful;
  const int main_look =
      static_cast<int>(std::lround(value_or(rule.seedling.main_look_days, usual_main_look_days)));
  facts.water_every_days = every(bag, water);
  facts.waters_later_days = every(false, water + Days{main_look});
}

} // namespace

bool helps(const std::optional<Choice<Treatment>>& treatment) {
  return treatment &&
         (treatment->value == Treatment::needed || treatment->value == Treatment::helpful);
}

bool keeps_for_another_season(const species_rules::Rule& rule) {
  constexpr double much = 0.15; // common practice, no source
  return value_or(rule.seed.deferral_share, 0.0) >= much;
}

WorkFacts work_facts(const LineInput& input,
                     BenchSeasons& seasons,
                     const std::optional<climate::Season>& season,
                     const std::optional<Date>& water) {
  const species_rules::Rule& rule = input.rule.rule;
  WorkFacts facts;
  facts.number = input.packet.number;
  facts.provenance = input.packet.provenance;
  for (const auto& [word, treatment] : {std::pair{"leach", &rule.sowing.leach},
                                        std::pair{"scarify", &rule.sowing.scarify},
                                        std::pair{"smoke", &rule.sowing.smoke}}) {
    if (helps(*treatment)) {
      facts.treatments.emplace_back(word);
    }
  }
  facts.on_mat = on_mat(input);
  facts.mat_off_at_night = facts.on_mat && off_at_night(rule);
  facts.shade_first_year = value_of(rule.seedling.shade_first_year);
  if (first_rest_of(rule) != FirstRestWay::dies) {
    facts.shade_second_year = value_of(rule.seedling.shade_second_year);
    facts.shade_third_year = value_of(rule.seedling.shade_third_year);
  }
  if (rule.seedling.keep_seasons) {
    facts.keep_seasons = static_cast<int>(std::lround(rule.seedling.keep_seasons->value));
  }
  facts.defers = keeps_for_another_season(rule);
  facts.may_go_dry = pot_may_go_dry(rule);
  if (water) {
    add_watering(input, seasons, *water, facts);
  }
  if (season) {
    add_rest(input, seasons, *season, water, facts);
  }
  return facts;
}

} // namespace nightsow::planner
