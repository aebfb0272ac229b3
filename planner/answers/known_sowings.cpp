#include "planner/answers/known_sowings.hpp"

#include "climate/seasons.hpp"
#include "planner/garden/open_sowings.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/seed_state.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double usual_last_look_days = 60.0; // where a rule says nothing (common practice)

Date begins_on(const WhatCame& told) {
  return told.first_water.value_or(told.sowing->on);
}

bool season_is_over(const climate::Phases& phases, Date begins, Date today) {
  return today >= climate::season_planned_on(phases, begins).next_hottest;
}

bool looked_at_long_enough(const WhatCame& told, const species_rules::Rule& rule) {
  const auto last =
      static_cast<int>(std::lround(value_or(rule.seedling.last_look_days, usual_last_look_days)));
  return told.first_water && days_between(*told.first_water, told.looks.back().on) >= last;
}

} // namespace

KnownSowings known_sowings(const LoadedGarden& garden,
                           const std::optional<climate::Phases>& phases) {
  KnownSowings record;
  record.told = what_came(garden.records);
  for (const WhatCame& told : record.told) {
    species_rules::Lookup lookup = garden.catalogue->rule_for(told.sowing->taxon);
    if (!lookup.found) {
      ++record.unknown;
      continue;
    }
    KnownSowing known;
    known.told = &told;
    known.rule = *std::move(lookup.found);
    known.genus = known.rule.accepted.substr(0, known.rule.accepted.find(' '));
    const Date begins = begins_on(told);
    known.season = phases ? climate::season_planned_on(*phases, begins).name : year_of(begins);
    known.age_years = seed_state(told.sowing->packet, known.rule.rule, begins).age_years;
    known.closed = closing_of(garden.records, told.sowing->id);
    const Date seen_until = known.closed == nullptr ? garden.today : known.closed->on;
    known.looked_at_to_the_end =
        told.counted() && (looked_at_long_enough(told, known.rule.rule) ||
                           (phases && season_is_over(*phases, begins, seen_until)));
    record.sowings.push_back(std::move(known));
  }
  return record;
}

std::vector<int> seasons_of(const std::vector<KnownSowing>& sowings) {
  std::set<int> seasons;
  for (const KnownSowing& sowing : sowings) {
    seasons.insert(sowing.season);
  }
  return {seasons.begin(), seasons.end()};
}

bool is_of(const KnownSowing& sowing, const std::string& accepted) {
  return sowing.rule.accepted == accepted || sowing.genus == accepted ||
         sowing.rule.family == accepted || sowing.rule.rule_name == accepted;
}

} // namespace nightsow::planner
