#include "planner/answers/learned_germinations.hpp"

#include "planner/answers/figures.hpp"
#include "planner/answers/learned_limits.hpp"
#include "planner/model/establishment.hpp"
#include "planner/model/learned_germination.hpp"
#include "planner/model/pot_care.hpp"
#include "planner/model/seed_state.hpp"

#include <algorithm>
#include <map>
#include <string>

namespace nightsow::planner {

namespace {

using species_rules::Rule;
using species_rules::RuleFor;
using species_rules::SeedParameters;

std::string word_of(GerminationRefusal refusal) {
  switch (refusal) {
  case GerminationRefusal::too_few_sowings:
    return "too_few_sowings";
  case GerminationRefusal::too_few_seeds:
    return "too_few_seeds";
  case GerminationRefusal::fits_no_share:
    return "fits_no_share";
  case GerminationRefusal::too_unsure:
    break;
  }
  return "too_unsure";
}

bool tells_of_germination(const KnownSowing& sowing) {
  const Rule& rule = held_against(sowing.rule);
  return rule.seed.germination_share && sowing.told->first_water && sowing.told->counted() &&
         sowing.told->sowing->mat.empty();
}

SeedParameters parameters_of(const RuleFor& rule, const std::vector<LearnedLimitLine>& limits) {
  SeedParameters seed = species_rules::seed_parameters(held_against(rule));
  for (const LearnedLimitLine& line : limits) {
    if (line.rule == rule.rule_name && line.offered && line.limit_c && seed.release) {
      seed.release->limit_c = line.limit_c->value;
      if (line.thermal_time_c_d) {
        seed.thermal_time_c_d = line.thermal_time_c_d->value;
      }
    }
  }
  return seed;
}

// What came of the test of its packet is left to the share that is learned.
SeedShares shares_of(const RecordedSowing& sown, const Rule& rule) {
  Packet packet = sown.packet;
  packet.tested.reset();
  const SeedState state = seed_state(packet, rule, sown.on);
  const double ripe = state.alive > 0.0 ? state.alive_and_ripe / state.alive : 0.0;
  return {state.alive, std::min(1.0, ripe)};
}

/// By the last look within the course; empty where there is none.
std::optional<ReachedSowing> reached_of(const KnownSowing& sowing,
                                        const SeedCourse& course,
                                        const SeedParameters& seed,
                                        const climate::Season& season) {
  const WhatCame& told = *sowing.told;
  const int water = days_between(course.first, *told.first_water);
  int last = -1;
  int came = 0;
  for (const CameBy& look : told.looks) {
    const int day = days_between(course.first, look.on);
    if (day > water && day < course.days()) {
      last = day;
      came = look.came;
    }
  }
  if (water < 0 || last < 0) {
    return std::nullopt;
  }
  const Rule& rule = held_against(sowing.rule);
  SeedSeason in_season(
      course, seed, pot_care(rule, told.sowing->cover), season_days(season, course.first));
  const Establishment could = in_season.watered_on(water, shares_of(*told.sowing, rule));
  ReachedSowing reached;
  reached.season = sowing.season;
  reached.count = {came, std::max(came, told.sowing->seeds)};
  reached.pots = told.sowing->pots;
  for (int day = 0; day <= last && day < static_cast<int>(could.up.size()); ++day) {
    reached.reached += could.up[static_cast<std::size_t>(day)];
  }
  return reached;
}

LearnedGerminationLine line_of(const RuleFor& kind, const std::vector<ReachedSowing>& sowings) {
  const species_rules::Estimate& share = *held_against(kind).seed.germination_share;
  LearnedGerminationLine line;
  line.rule = kind.rule_name;
  line.family = kind.family;
  line.rule_share = {share.value, share.low, share.high};
  double could = 0.0;
  for (const ReachedSowing& sowing : sowings) {
    line.seeds += sowing.count.sown;
    line.came += sowing.count.came;
    could += sowing.reached * sowing.count.sown;
  }
  line.could_come = rounded_tenth(could);
  const LearnedGermination learned = learned_germination(sowings, share);
  line.sowings = learned.sowings;
  line.seasons = learned.seasons;
  if (learned.refused) {
    line.refused = word_of(*learned.refused);
    return line;
  }
  line.share = {rounded_share(learned.share.value),
                rounded_share(learned.share.limits.low),
                rounded_share(learned.share.limits.high)};
  line.predicts_better = rounded_tenth(learned.predicts_better);
  line.offered = learned.offered;
  return line;
}

} // namespace

std::vector<LearnedGerminationLine> learned_germinations(
    const std::vector<const KnownSowing*>& sowings,
    const std::vector<LearnedLimitLine>& limits,
    BenchSeasons& seasons) {
  if (!seasons.station().turning.phases) {
    return {};
  }

  struct Kind {
    const RuleFor* rule = nullptr;
    std::vector<ReachedSowing> sowings;
  };

  std::map<std::string, Kind> kinds;
  for (const KnownSowing* sowing : sowings) {
    const SeedCourse* course =
        tells_of_germination(*sowing) ? first_course_of(*sowing->told, seasons) : nullptr;
    if (course == nullptr) {
      continue;
    }
    const climate::Season season =
        climate::season_of(*seasons.station().turning.phases, *sowing->told->first_water);
    if (const auto reached =
            reached_of(*sowing, *course, parameters_of(sowing->rule, limits), season)) {
      Kind& kind = kinds[sowing->rule.rule_name];
      kind.rule = &sowing->rule;
      kind.sowings.push_back(*reached);
    }
  }
  std::vector<LearnedGerminationLine> lines;
  lines.reserve(kinds.size());
  for (const auto& [name, kind] : kinds) {
    lines.push_back(line_of(*kind.rule, kind.sowings));
  }
  return lines;
}

} // namespace nightsow::planner
