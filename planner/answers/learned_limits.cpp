#include "planner/answers/learned_limits.hpp"

#include "planner/answers/figures.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/watched_sowing.hpp"
#include "species-rules/write_rule.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::Estimate;
using species_rules::Evidence;
using species_rules::Rule;
using species_rules::RuleFor;

std::string word_of(LimitRefusal refusal) {
  switch (refusal) {
  case LimitRefusal::too_few_sowings:
    return "too_few_sowings";
  case LimitRefusal::too_few_seedlings:
    return "too_few_seedlings";
  case LimitRefusal::nights_too_alike:
    return "nights_too_alike";
  case LimitRefusal::fits_no_limit:
    return "fits_no_limit";
  case LimitRefusal::too_unsure:
    break;
  }
  return "too_unsure";
}

bool tells_of_nights(const KnownSowing& sowing) {
  const Rule& rule = held_against(sowing.rule);
  return start_of(rule) == species_rules::Start::cool && rule.gate.night_limit_c &&
         sowing.told->first_water && sowing.told->counted() && sowing.told->sowing->mat.empty();
}

LearnedNumber rounded(const LearnedValue& value) {
  return {rounded_tenth(value.value),
          rounded_tenth(value.limits.low),
          rounded_tenth(value.limits.high)};
}

LearnedNumber whole(const LearnedValue& value) {
  return {std::round(value.value), std::round(value.limits.low), std::round(value.limits.high)};
}

LearnedNumber number_of(const Estimate& estimate) {
  return {estimate.value, estimate.low, estimate.high};
}

LearnedLimitLine line_of(const RuleFor& kind,
                         const std::vector<WatchedSowing>& sowings,
                         int seedlings) {
  const Rule& rule = held_against(kind);
  LearnedLimitLine line;
  line.rule = kind.rule_name;
  line.family = kind.family;
  line.seedlings = seedlings;
  line.rule_limit_c = number_of(*rule.gate.night_limit_c);
  if (rule.development.thermal_time_c_d) {
    line.rule_thermal_time_c_d = number_of(*rule.development.thermal_time_c_d);
  }
  const LearnedLimit learned = learned_limit(sowings, rule);
  line.sowings = learned.sowings;
  line.seasons = learned.seasons;
  if (learned.refused) {
    line.refused = word_of(*learned.refused);
    return line;
  }
  line.limit_c = rounded(learned.limit_c);
  if (learned.thermal_time_c_d && rule.development.thermal_time_c_d) {
    line.thermal_time_c_d = whole(*learned.thermal_time_c_d);
  }
  line.predicts_better = rounded_tenth(learned.predicts_better);
  line.offered = learned.offered;
  return line;
}

Estimate own(const LearnedNumber& number) {
  return {number.value, number.low, number.high, {Evidence::grower, "", {}}};
}

std::string slug_of(const std::string& name) {
  std::string slug;
  for (const char c : name) {
    slug += c == ' ' ? '-' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return slug;
}

void add_to(RuleFor& rule, const LearnedLimitLine& line) {
  rule.rule.gate.night_limit_c = own(*line.limit_c);
  if (line.thermal_time_c_d) {
    rule.rule.development.thermal_time_c_d = own(*line.thermal_time_c_d);
  }
  rule.rule.notes.push_back(
      {fmt::format("Night limit{} from this garden, {} sowings in {} seasons.",
                   line.thermal_time_c_d ? " and thermal time" : "",
                   line.sowings,
                   line.seasons),
       {Evidence::grower, "", {}}});
}

void add_to(RuleFor& rule, const LearnedGerminationLine& line) {
  rule.rule.seed.germination_share = own(*line.share);
  rule.rule.notes.push_back({fmt::format("Germination share from this garden, {} sowings in {} "
                                         "seasons.",
                                         line.sowings,
                                         line.seasons),
                             {Evidence::grower, "", {}}});
}

template <class Line>
void add_offered(const std::vector<Line>& lines, std::map<std::string, RuleFor>& rules) {
  for (const Line& line : lines) {
    if (line.offered) {
      RuleFor& rule = rules[line.rule];
      rule.accepted = line.rule;
      rule.rule_name = line.rule;
      rule.family = line.family;
      add_to(rule, line);
    }
  }
}

} // namespace

const Rule& held_against(const RuleFor& rule) {
  return rule.otherwise ? *rule.otherwise : rule.rule;
}

const SeedCourse* first_course_of(const WhatCame& told, BenchSeasons& seasons) {
  const climate::Season season =
      climate::season_of(*seasons.station().turning.phases, *told.first_water);
  const std::string& bench = told.sowing->bench;
  if (seasons.season(bench, season).outlook.members == 0) {
    return nullptr;
  }
  return &seasons.courses({bench, season, false, std::nullopt}).front();
}

std::vector<LearnedLimitLine> learned_limits(const std::vector<const KnownSowing*>& sowings,
                                             BenchSeasons& seasons) {
  if (!seasons.station().turning.phases) {
    return {};
  }

  struct Kind {
    const RuleFor* rule = nullptr;
    std::vector<WatchedSowing> sowings;
    int seedlings = 0;
  };

  std::map<std::string, Kind> kinds;
  for (const KnownSowing* sowing : sowings) {
    if (!tells_of_nights(*sowing)) {
      continue;
    }
    const SeedCourse* course = first_course_of(*sowing->told, seasons);
    if (course == nullptr) {
      continue;
    }
    std::optional<WatchedSowing> watched = watched_sowing(
        *sowing->told, *course, species_rules::seed_parameters(held_against(sowing->rule)));
    if (!watched) {
      continue;
    }
    Kind& kind = kinds[sowing->rule.rule_name];
    kind.rule = &sowing->rule;
    watched->season = sowing->season;
    kind.seedlings += watched->looks.empty() ? 0 : watched->looks.back().came;
    kind.sowings.push_back(*std::move(watched));
  }
  std::vector<LearnedLimitLine> lines;
  lines.reserve(kinds.size());
  for (const auto& [name, kind] : kinds) {
    lines.push_back(line_of(*kind.rule, kind.sowings, kind.seedlings));
  }
  return lines;
}

std::vector<OfferedRules> offered_rules(const std::vector<LearnedLimitLine>& limits,
                                        const std::vector<LearnedGerminationLine>& germinations) {
  std::map<std::string, RuleFor> rules;
  add_offered(limits, rules);
  add_offered(germinations, rules);
  std::vector<OfferedRules> offers;
  offers.reserve(rules.size());
  for (const auto& [name, rule] : rules) {
    offers.push_back({name,
                      fmt::format("rules/learned-{}.json", slug_of(name)),
                      species_rules::override_text(rule),
                      false});
  }
  return offers;
}

} // namespace nightsow::planner
