#include "planner/answers/rules_gaps.hpp"

#include "climate/base/problem.hpp"
#include "planner/answers/deciding_fields.hpp"
#include "species-rules/rule_fields.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_garden.hpp"
#include "tests/unit/species-rules/rule_texts.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

namespace nightsow::planner {
namespace {

using species_rules::Catalogue;
using species_rules::Evidence;
using species_rules::ExplainedValue;
using species_rules::Start;
using support::embedded_catalogue;
using support::fault;

ExplainedValue number(double low, double high, std::string evidence) {
  ExplainedValue value;
  value.number = true;
  value.value = low;
  value.low = low;
  value.high = high;
  value.evidence = std::move(evidence);
  return value;
}

const DecidingField& field(std::string_view key, Start start = Start::cool) {
  return *deciding_field(key, start);
}

TEST(DecidingFields, EachIsAFieldOfTheRulesWithReasonAndTrial) {
  std::set<std::string_view> keys;
  const species_rules::Rule any;
  species_rules::for_each_field(
      any, [&](const species_rules::Field& known, const auto&) { keys.insert(known.key); });
  for (const DecidingField& deciding : deciding_fields()) {
    EXPECT_EQ(keys.erase(deciding.key), 1U) << deciding.key;
    EXPECT_TRUE(deciding.why.ends_with('.')) << deciding.key;
    EXPECT_TRUE(deciding.trial.ends_with('.')) << deciding.key;
    EXPECT_GE(deciding.weight, 1);
    EXPECT_LE(deciding.weight, 5);
  }
}

TEST(DecidingFields, StandHeaviestFirst) {
  EXPECT_TRUE(std::ranges::is_sorted(
      deciding_fields(), [](const auto& a, const auto& b) { return a.weight > b.weight; }));
}

TEST(DecidingFields, AFieldDecidesOnlyForTheKindsThatItConcerns) {
  EXPECT_NE(deciding_field("night_limit_c", Start::cool), nullptr);
  EXPECT_EQ(deciding_field("night_limit_c", Start::hot), nullptr);
  EXPECT_EQ(deciding_field("warm_night_c", Start::cool), nullptr);
  EXPECT_EQ(deciding_field("after_ripening_c_d", Start::at_once), nullptr);
  EXPECT_EQ(deciding_field("notes", Start::cool), nullptr);
}

TEST(DecidingFields, WeakerGroundIsAlwaysWeaker) {
  double before = 0.0;
  for (const auto& [evidence, word] : species_rules::Words<Evidence>::table) {
    EXPECT_GT(weakness(evidence), before) << word;
    before = weakness(evidence);
  }
  EXPECT_EQ(before, 1.0);
}

TEST(DecidingFields, ARangeIsMeasuredAgainstWhatTheFieldMayBe) {
  // Eight kelvin of night limit say nothing (table of deciding_fields.cpp).
  EXPECT_EQ(openness(field("night_limit_c"), number(12, 14, "memory")), 0.25);
  EXPECT_EQ(openness(field("night_limit_c"), number(5, 20, "memory")), 1.0);
  // Ten times as long from end to end; by ratio the same range is open wherever it lies.
  EXPECT_NEAR(openness(field("after_ripening_c_d"), number(100, 1000, "memory")), 1.0, 1e-12);
  EXPECT_NEAR(openness(field("after_ripening_c_d"), number(100, 200, "memory")),
              openness(field("after_ripening_c_d"), number(1000, 2000, "memory")),
              1e-12);
  EXPECT_EQ(openness(field("after_ripening_c_d"), number(0, 0, "memory")), 0.0);
  EXPECT_EQ(openness(field("after_ripening_c_d"), number(0, 100, "memory")), 1.0);
}

TEST(DecidingFields, TheScoreIsTheWeightWhereNothingIsKnown) {
  EXPECT_EQ(gap_score(field("night_limit_c"), number(5, 20, "memory")), 4.0);
  EXPECT_EQ(gap_score(field("night_limit_c"), number(12, 12, "memory")), 1.0);
  EXPECT_LT(gap_score(field("night_limit_c"), number(5, 20, "experiment")), 1.0);
}

// One value for the whole family, one of a genus alone; all else is memory without a range.
Catalogue two_genera() {
  return species_rules::rule_texts::catalogue_of(R"(
    {"genus": "Widia", "rule": {
      "night_limit_c": {"value": 12, "low": 7, "high": 17, "evidence": "memory"}},
      "species": [{"species": "parva", "rule": {
        "light": {"value": "dark", "evidence": "memory"}}}]},
    {"genus": "Sureia", "rule": {
      "night_limit_c": {"value": 12, "low": 11, "high": 13,
                        "evidence": "experiment", "source": "book"}}})");
}

const FieldGaps& gaps_of(const RulesGapsAnswer& answer, std::string_view key) {
  return *std::ranges::find_if(answer.fields,
                               [&](const FieldGaps& found) { return found.key == key; });
}

TEST(RulesGaps, AValueStandsOnceWithAllTheRulesThatGoByIt) {
  const RulesGapsAnswer answer = rules_gaps(two_genera(), {.all = true});
  EXPECT_EQ(answer.rules, 3);
  const FieldGaps& limit = gaps_of(answer, "night_limit_c");
  ASSERT_EQ(limit.gaps.size(), 2U);
  EXPECT_EQ(limit.gaps[0].name, "Widia");
  EXPECT_EQ(limit.gaps[0].level, "genus");
  EXPECT_EQ(limit.gaps[0].rules, (std::vector<std::string>{"Widia", "Widia parva"}));
  EXPECT_EQ(limit.gaps[0].score, 4.0);
  EXPECT_EQ(limit.gaps[1].name, "Sureia");
  const FieldGaps& growth = gaps_of(answer, "growth");
  ASSERT_EQ(growth.gaps.size(), 1U);
  EXPECT_EQ(growth.gaps[0].name, "Testaceae");
  EXPECT_EQ(growth.gaps[0].rules.size(), 3U);
}

TEST(RulesGaps, TheFieldKnownWorstStandsFirst) {
  const RulesGapsAnswer answer = rules_gaps(*embedded_catalogue(), {.all = true});
  EXPECT_TRUE(std::ranges::is_sorted(
      answer.fields, [](const auto& a, const auto& b) { return a.score > b.score; }));
  for (const FieldGaps& found : answer.fields) {
    EXPECT_TRUE(std::ranges::is_sorted(found.gaps, [](const auto& a, const auto& b) {
      return a.score > b.score;
    })) << found.key;
  }
}

TEST(RulesGaps, OnlyTheWorstAreShownAndTheOthersCounted) {
  const RulesGapsAnswer all = rules_gaps(*embedded_catalogue(), {.all = true});
  const RulesGapsAnswer few = rules_gaps(*embedded_catalogue(), {});
  ASSERT_EQ(few.fields.size(), fields_shown);
  EXPECT_EQ(few.fields.size() + static_cast<std::size_t>(few.more), all.fields.size());
  for (std::size_t i = 0; i < few.fields.size(); ++i) {
    EXPECT_EQ(few.fields[i].key, all.fields[i].key);
    EXPECT_EQ(few.fields[i].gaps.size() + static_cast<std::size_t>(few.fields[i].more),
              all.fields[i].gaps.size());
  }
  EXPECT_EQ(all.more, 0);
}

TEST(RulesGaps, OnlyTheFamilyOrTheKindsAskedFor) {
  EXPECT_EQ(rules_gaps(two_genera(), {.in_hand = std::set<std::string>{"Sureia"}}).rules, 1);
  EXPECT_EQ(rules_gaps(two_genera(), {.in_hand = std::set<std::string>{}}).rules, 0);
  const RulesGapsAnswer irids = rules_gaps(*embedded_catalogue(), {.family = "iridaceae"});
  EXPECT_EQ(irids.family, "Iridaceae");
  EXPECT_GT(irids.rules, 0);
  EXPECT_LT(irids.rules, rules_gaps(*embedded_catalogue(), {}).rules);
  EXPECT_NE(fault<UsageError>([] {
              return rules_gaps(*embedded_catalogue(), {.family = "Iridacea"});
            }).find("did you mean Iridaceae?"),
            std::string::npos);
}

} // namespace
} // namespace nightsow::planner
