#pragma once

#include "planner/answers/climate_answer.hpp"
#include "planner/answers/nights_answer.hpp"
#include "planner/answers/plan_answer.hpp"
#include "planner/answers/rules_answer.hpp"
#include "planner/answers/whatif_answer.hpp"
#include "planner/render/table.hpp"
#include "planner/render/wording.hpp"
#include "tests/support/garden_text.hpp"

#include <algorithm>
#include <array>
#include <sstream>
#include <string>
#include <string_view>

namespace nightsow::planner {

// Answers made by hand, small enough to be read, for the renderers' tests.

using support::day;

inline Spread spread(std::string_view p10,
                     std::string_view p50,
                     std::string_view p90,
                     double never = 0.0) {
  return {day(p10), day(p50), day(p90), never};
}

/// A value of the kind that goes by this name in a sentence.
inline ReasonValue sample_value(std::string_view name) {
  constexpr std::array<std::string_view, 25> dates{
      "until",   "would_be",      "since",  "again", "from", "to",    "limb_begins", "stirs",
      "holds",   "last",          "begins", "ends",  "rest", "first", "ripe_on",     "on_shelf",
      "hottest", "no_later_than", "when",   "on",    "hot",  "moist", "evergreen",   "annual",
      "dry"};
  constexpr std::array<std::string_view, 14> texts{"store",
                                                   "cause",
                                                   "closed",
                                                   "sure",
                                                   "lost_to",
                                                   "bench",
                                                   "why",
                                                   "text",
                                                   "written",
                                                   "accepted",
                                                   "suggestion",
                                                   "read_as",
                                                   "rule",
                                                   "shelter"};
  const auto is_in = [&](const auto& names) {
    return std::find(names.begin(), names.end(), name) != names.end();
  };
  if (is_in(dates)) {
    return day("2026-04-12");
  }
  if (is_in(texts)) {
    return std::string{name};
  }
  if (name.ends_with("_c")) {
    return Celsius{13.0};
  }
  if (name.ends_with("_k")) {
    return CelsiusDelta{2.0};
  }
  if (name == "share" || name == "alive" || name == "treated") {
    return Share{0.25};
  }
  return name == "age_years" ? ReasonValue{1.3} : ReasonValue{3};
}

/// A reason with every value that its sentence knows.
inline Reason complete_reason(const Wording& wording) {
  Reason reason{wording.code, {}};
  std::istringstream names{std::string{wording.values}};
  for (std::string name; names >> name;) {
    reason.values.push_back({name, sample_value(name)});
  }
  return reason;
}

inline Reason waits_reason() {
  return {ReasonCode::gate_waits,
          {{"cool", 3},
           {"of", 14},
           {"needed", 10},
           {"limit_c", Celsius{13.0}},
           {"bench", std::string{"cold frame"}}}};
}

inline GardenHead small_head() {
  return {"Invented slope", -33.0, 19.0};
}

inline ReadingsHead small_readings() {
  return {day("1981-03-01"), day("2026-02-19"), 44, 0.998, 3};
}

inline Sowing waiting_sowing() {
  Sowing line;
  line.packet = "S09";
  line.taxon = "Bulbine annua";
  line.accepted = "Bulbine annua";
  line.rule = "Bulbine";
  line.seeds = 40.0;
  line.bench = "cold frame";
  line.start = "cool";
  line.gate = GateAnswer{13.0,
                         25.0,
                         5,
                         7,
                         3,
                         14,
                         10,
                         true,
                         spread("2026-03-01", "2026-03-10", "2026-03-20"),
                         spread("2026-04-01", "2026-04-12", "2026-04-26"),
                         spread("2026-04-11", "2026-04-22", "2026-05-06")};
  line.keep = {"warm_then_cool", day("2026-04-12"), ""};
  line.sow_on = day("2026-04-11");
  line.first_water = {WaterWhen{10, 14, 13.0, 30.0, "cold frame"},
                      day("2026-03-20"),
                      spread("2026-04-01", "2026-04-12", "2026-04-26", 0.1),
                      day("2026-07-20")};
  line.seed = {0.3,
               true,
               std::nullopt,
               NumberSpread{0.9, 0.8, 0.95},
               NumberSpread{0.4, 0.2, 0.7},
               day("2026-04-02"),
               false,
               0.3};
  Expected expected;
  expected.first_water = day("2026-04-12");
  expected.seedlings = {17.2, 9.0, 25.0};
  expected.first = day("2026-05-03");
  expected.half = day("2026-05-20");
  expected.plants = {12.4, 5.0, 19.0};
  expected.losses = {3.1, 0.0, 2.0, 4.0, 8.3, 0.4, 0.0, 0.2, 1.0, 8.6};
  expected.week_costs = 0.05;
  line.expected = expected;
  line.how.pots = 5;
  line.how.seeds_per_pot = 8;
  line.how.cover = "own_thickness";
  line.how.mat = "useless";
  line.how.first_look_days = 14;
  line.reasons = {waits_reason(), {ReasonCode::defers, {{"share", Share{0.2}}}}};
  line.risks = {{ReasonCode::relapse_likely, {{"share", Share{0.4}}}}};
  return line;
}

inline Sowing fleshy_sowing() {
  Sowing line;
  line.packet = "S01";
  line.taxon = "Boophone haemanthoides";
  line.accepted = line.taxon;
  line.start = "at_once";
  line.verdict = Verdict::water_now;
  line.sow_on = day("2026-02-21");
  line.first_water.expected = spread("2026-02-20", "2026-02-20", "2026-02-20");
  line.seed.fading = true;
  line.seed.lost_by_waiting = 0.92;
  line.reasons = {{ReasonCode::fleshy_at_once, {}}};
  line.cautions = {"bulb_toxic"};
  return line;
}

inline Sowing hot_sowing() {
  Sowing line;
  line.packet = "S20";
  line.taxon = "Pachypodium namaquanum";
  line.accepted = line.taxon;
  line.seeds = 8.0;
  line.start = "hot";
  line.first_water.expected = spread("2026-11-03", "2026-11-03", "2026-11-03");
  line.first_water.no_later_than = day("2027-01-10");
  line.how.mat = "helpful";
  line.work.on_mat = true;
  line.reasons = {
      {ReasonCode::starts_hot, {{"begins", day("2026-11-03")}, {"ends", day("2027-01-10")}}}};
  line.cautions = {"spines", "protected_species"};
  return line;
}

inline PlanAnswer small_plan() {
  PlanAnswer plan;
  plan.garden = small_head();
  plan.today = day("2026-02-20");
  plan.season = 2026;
  plan.phases = PhasesHead{day("2026-02-10"), day("2026-07-20"), day("2026-03-20"), 10.5};
  plan.readings = small_readings();
  plan.sowings = {fleshy_sowing(), waiting_sowing(), hot_sowing()};
  NotNow unknown;
  unknown.packet = "S16";
  unknown.taxon = "Lachenallia";
  unknown.reasons = {
      {ReasonCode::unknown_taxon,
       {{"written", std::string{"Lachenallia"}}, {"suggestion", std::string{"Lachenalia"}}}}};
  plan.not_now = {unknown};
  plan.warnings = {{ReasonCode::few_seasons, {{"seasons", 4}}}};
  return plan;
}

inline NightsAnswer small_nights() {
  NightsAnswer nights;
  nights.garden = small_head();
  nights.today = day("2026-02-20");
  nights.season = 2026;
  nights.readings = small_readings();
  nights.genera = {GenusNights{"Bulbine",
                               "cold frame",
                               13.0,
                               25.0,
                               5,
                               7,
                               2,
                               3,
                               true,
                               Open::no,
                               spread("2026-03-01", "2026-03-10", "2026-03-20"),
                               spread("2026-04-01", "2026-04-12", "2026-04-26"),
                               0.9,
                               {waits_reason()}}};
  nights.without_gate = {"Stapelia"};
  return nights;
}

inline WhatIfAnswer small_whatif() {
  WhatIfAnswer whatif;
  whatif.garden = small_head();
  whatif.today_before = whatif.today_after = day("2026-02-20");
  whatif.season_before = whatif.season_after = 2026;
  whatif.changes = {{"warmer", 2.0}};
  const WhatIfSide before{"sowings",
                          "wait",
                          true,
                          day("2026-03-20"),
                          spread("2026-04-01", "2026-04-12", "2026-04-26"),
                          day("2026-07-20"),
                          12.4};
  WhatIfSide after = before;
  after.expected = spread("2026-04-13", "2026-04-24", "2026-05-08");
  after.plants = 9.3;
  whatif.lines = {{"S09", "Bulbine annua", before, after, 12, true, -3.1},
                  {"S10", "Trachyandra tortilis", before, before, 0, false}};
  return whatif;
}

inline ClimateAnswer small_climate() {
  ClimateAnswer climate;
  climate.garden = small_head();
  climate.today = day("2026-02-20");
  climate.season = 2026;
  climate.readings = small_readings();
  climate.days_without_night = 41;
  climate.longest_hole_days = 1;
  climate.phases = PhasesLine{day("2025-11-01"),
                              day("2026-01-05"),
                              day("2026-02-10"),
                              day("2026-03-18"),
                              day("2026-03-20"),
                              day("2026-07-20"),
                              16.5,
                              6.0};
  climate.swing_k = 10.5;
  climate.trend = TrendLine{0.2, 0.1, 0.1};
  climate.night_sd_c = 2.6;
  climate.files = {
      {"readings/station.csv", "daily_table", "°C", "", {"its header names tmin and tmax"}}};
  climate.months = {{1, 15.9, 28.0, 16.1, {}, 14.1, 1395}};
  climate.counts = {{"repeated_equal", 1, 0}};
  climate.findings = {
      {"impossible", "ignored", day("1997-07-14"), "readings/station.csv", 5981, 99.9, {}}};
  return climate;
}

inline RuleShowAnswer small_rule() {
  RuleShowAnswer rule;
  rule.taxon = "Bulbine annua";
  rule.accepted = "Bulbine annua";
  rule.rule = "Bulbine";
  rule.family = "Asphodelaceae";
  rule.values = {{"start",
                  "",
                  "what starts the seed",
                  false,
                  0,
                  0,
                  0,
                  "cool",
                  "institution",
                  "bcss-bulbine-2018",
                  "genus"},
                 {"night_limit_c",
                  "°C",
                  "nights at or under this start it",
                  true,
                  12,
                  9.5,
                  14.5,
                  "",
                  "common_practice",
                  "",
                  "genus"},
                 {"germination_share",
                  "share",
                  "of fresh ripe seed when all is right",
                  true,
                  0.65,
                  0.3,
                  0.9,
                  "",
                  "memory",
                  "",
                  "genus"},
                 {"mix_mineral_share",
                  "share",
                  "mineral part of the mix",
                  true,
                  0.7,
                  0.7,
                  0.7,
                  "",
                  "common_practice",
                  "",
                  "family"},
                 {"cautions",
                  "",
                  "usual cautions",
                  false,
                  0,
                  0,
                  0,
                  "weed_in_some_regions",
                  "memory",
                  "",
                  "genus"},
                 {"notes",
                  "",
                  "where growers differ",
                  false,
                  0,
                  0,
                  0,
                  "A quick genus in autumn.",
                  "institution",
                  "bcss-bulbine-2018",
                  "genus"}};
  rule.sources = {{"bcss-bulbine-2018", "society", "A society", "Growing Bulbine", 2018}};
  return rule;
}

inline RulesGapsAnswer small_gaps() {
  RulesGapsAnswer answer;
  answer.rules = 3;
  FieldGaps field;
  field.key = "night_limit_c";
  field.name = "the night limit";
  field.weight = 4;
  field.why = "It moves dates.";
  field.score = 2.5;
  field.gaps = {{"Bulbine",
                 "genus",
                 small_rule().values.at(1),
                 3.2,
                 {"Bulbine", "Bulbine annua", "Bulbine mesembryanthoides"},
                 "Sow half at {low} and half at {high}."}};
  field.more = 2;
  answer.fields = {field};
  answer.more = 1;
  return answer;
}

/// The first line that is wider than the screen; empty when all fit.
inline std::string first_line_too_wide(const std::string& text) {
  std::istringstream lines{text};
  for (std::string line; std::getline(lines, line);) {
    if (columns_of(line) > std::size_t{text_width}) {
      return line;
    }
  }
  return "";
}

} // namespace nightsow::planner
