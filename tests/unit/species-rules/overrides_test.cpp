#include "species-rules/overrides.hpp"

#include "species-rules/explain.hpp"
#include "tests/unit/species-rules/rule_texts.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace nightsow::species_rules {
namespace {

using rule_texts::catalogue_of;
using rule_texts::texts_of;

std::shared_ptr<const Catalogue> small_catalogue() {
  return std::make_shared<const Catalogue>(catalogue_of(R"(
    { "genus": "Testia", "rule": {"night_limit_c": {"value": 14, "low": 12, "high": 16, "evidence": "memory"}},
      "species": [ {"species": "alba", "rule": {"night_limit_c": {"value": 10, "low": 9, "high": 11, "evidence": "memory"}}} ] },
    { "genus": "Otheria" } )"));
}

RuleText own(const std::string& genera, std::string name = "rules/mine.json") {
  return {std::move(name), R"({"schema": 1, "family": "Testaceae", "genera": [)" + genera + "]}"};
}

RuleText limit_of_genus(const std::string& genus,
                        int limit_c,
                        std::string name = "rules/mine.json") {
  const std::string c = std::to_string(limit_c);
  return own(R"({"genus": ")" + genus + R"(", "rule": {"night_limit_c": {"value": )" + c +
                 R"(, "low": )" + c + R"(, "high": )" + c + R"(, "evidence": "grower"}}})",
             std::move(name));
}

Overlaid over(const std::vector<RuleText>& files) {
  return overlaid(small_catalogue(), files, std::nullopt);
}

double limit_c(const Overlaid& rules, std::string_view taxon) {
  return rules.catalogue->rule_for(taxon).found->rule.gate.night_limit_c->value;
}

// One file that is refused: its first fault.
std::string refusal_of(const RuleText& file) {
  const Overlaid rules = over({file});
  EXPECT_EQ(rules.refused.size(), 1U) << file.text;
  EXPECT_DOUBLE_EQ(limit_c(rules, "Testia"), 14.0) << "the catalogue holds";
  return rules.faults.empty() ? std::string{} : to_text(rules.faults.front());
}

TEST(Overrides, OneFieldIsEnoughAndNeedsNoSource) {
  const Overlaid rules = over({limit_of_genus("Testia", 11)});
  EXPECT_EQ(texts_of(rules.faults), std::vector<std::string>{});
  EXPECT_DOUBLE_EQ(limit_c(rules, "Testia"), 11.0);
  EXPECT_DOUBLE_EQ(limit_c(rules, "Testia rubra"), 11.0);
}

TEST(Overrides, WhatTheCatalogueSaysOfASpeciesGoesBeforeTheGrowersGenus) {
  EXPECT_DOUBLE_EQ(limit_c(over({limit_of_genus("Testia", 11)}), "Testia alba"), 10.0);
}

TEST(Overrides, TheGrowersValueIsMarkedAndSaysWhatItWouldBe) {
  const RuleFor rule = *over({limit_of_genus("Testia", 11)}).catalogue->rule_for("Testia").found;
  const std::vector<ExplainedValue> values = explain(rule.rule, rule.otherwise);
  const auto limit = std::ranges::find(values, "night_limit_c", &ExplainedValue::key);
  EXPECT_EQ(limit->origin, "yours");
  ASSERT_TRUE(limit->otherwise);
  EXPECT_DOUBLE_EQ(limit->otherwise->value, 14.0);
  EXPECT_EQ(limit->otherwise->origin, "genus");
  const auto growth = std::ranges::find(values, "growth", &ExplainedValue::key);
  EXPECT_FALSE(growth->otherwise);
}

TEST(Overrides, ANewGenusOfAKnownFamilyNeedsNothingElse) {
  const Overlaid rules = over({own(R"({"genus": "Novia"})")});
  EXPECT_TRUE(rules.faults.empty());
  EXPECT_EQ(rules.catalogue->rule_for("Novia").found->family, "Testaceae");
  EXPECT_FALSE(rules.catalogue->rule_for("Novia").found->otherwise);
}

TEST(Overrides, ANewFamilyMustBeComplete) {
  const std::string said =
      refusal_of({"rules/mine.json",
                  R"({"schema": 1, "family": "Novaceae", "genera": [{"genus": "Novia"}]})"});
  EXPECT_NE(said.find("Novaceae gives no growth"), std::string::npos) << said;
}

TEST(Overrides, ANewSpeciesStandsUnderItsGenus) {
  const Overlaid rules = over({own(
      R"({"genus": "Testia", "species": [{"species": "nova", "synonyms": ["Oldia nova"],
          "rule": {"night_limit_c": {"value": 8, "low": 7, "high": 9, "evidence": "grower"}}}]})")});
  EXPECT_TRUE(rules.faults.empty());
  EXPECT_DOUBLE_EQ(limit_c(rules, "Testia nova"), 8.0);
  EXPECT_DOUBLE_EQ(limit_c(rules, "Oldia nova"), 8.0);
  EXPECT_DOUBLE_EQ(limit_c(rules, "Testia"), 14.0);
}

TEST(Overrides, ARemarkThatSaysTheSameIsNotSaidTwice) {
  const Overlaid rules = over({own(R"({"genus": "Testia", "rule":
      {"notes": [{"value": "Mine.", "evidence": "grower"}, {"value": "Mine.", "evidence": "grower"}]}})")});
  EXPECT_EQ(rules.catalogue->rule_for("Testia").found->rule.notes.size(), 1U);
}

TEST(Overrides, AFaultyFileIsLeftAsideAndTheOthersHold) {
  const Overlaid rules =
      over({{"rules/a.json", "{"}, limit_of_genus("Otheria", 9, "rules/b.json")});
  ASSERT_EQ(rules.refused.size(), 1U);
  EXPECT_EQ(rules.refused.front().name, "rules/a.json");
  EXPECT_DOUBLE_EQ(limit_c(rules, "Otheria"), 9.0);
}

TEST(Overrides, SayWhatIsWrongAndWhere) {
  struct Case {
    RuleText file;
    std::string_view said;
  };

  for (
      const Case& known : {
          Case{own(R"({"genus": "Testia", "rule": {"nigth_limit_c": 3}})"),
               "unknown key \"nigth_limit_c\""},
          {limit_of_genus("Testia", 57), "Fahrenheit suspected"},
          {own(R"({"genus": "Testia", "rule": {"night_limit_c":
                {"value": 9, "low": 10, "high": 12, "evidence": "grower"}}})"),
           "low <= value <= high"},
          {own(R"({"genus": "Testia", "rule": {"gate_nights":
                {"value": 9, "low": 9, "high": 9, "evidence": "grower"}}})"),
           "wants more cool nights than it counts"},
          {own(R"({"genus": "Testia", "rule": {"start": {"value": "cold", "evidence": "grower"}}})"),
           "start \"cold\""},
          {own(R"({"genus": "Testia", "rule": {"growth": {"value": "winter", "evidence": "grower"}}},
                   {"genus": "Testia", "rule": {"growth": {"value": "summer", "evidence": "grower"}}})"),
           "Testia is given twice"},
          {own(R"({"genus": "Testia", "species": [{"species": "alba"}, {"species": "alba"}]})"),
           "Testia alba is given twice"},
          {{"rules/mine.json",
            R"({"schema": 1, "family": "Otheraceae", "genera": [{"genus": "Testia"}]})"},
           "Testia stands in Otheraceae; expected its family, Testaceae"},
          {{"rules/mine.json", "\xFF\xFE{\0\"\0"}, "UTF-8"},
          {{"rules/mine.json", "{\"schema\": 1, \"family\": \"Test\xE9\", \"genera\": []}"},
           "UTF-8"},
          {{"rules/mine.json", std::string(10'000'000, '[')}, "64"},
          {{"rules/mine.json", R"({"schema": 2, "family": "Testaceae", "genera": []})"},
           "\"schema\" is 2"},
      }) {
    const std::string said = refusal_of(known.file);
    EXPECT_NE(said.find(known.said), std::string::npos) << said;
    EXPECT_TRUE(said.starts_with("rules/mine.json")) << said;
  }
}

TEST(Overrides, AFaultOfOneValueHidesNoneThatShowsBesideOthers) {
  const Overlaid rules = over({own(R"({"genus": "Testia", "rule": {"nigth_limit_c": 3,
      "base_c": {"value": 20, "low": 20, "high": 20, "evidence": "grower"}}})")});
  ASSERT_GE(rules.faults.size(), 2U);
  EXPECT_NE(rules.faults[0].found.find("nigth_limit_c"), std::string::npos);
  EXPECT_EQ(rules.faults[1].found, "Testia has its temperatures out of order");
}

TEST(Overrides, WhatCouldNotBeReadIsNotComparedWithWhatTheCatalogueSays) {
  const Overlaid rules = over({own(R"({"genus": "Testia", "rule": {"start":
      {"value": "cool", "evidence": "grower"}, "night_limit_c": {"value": "cool", "low": 3,
      "high": 4, "evidence": "grower"}}})")});
  EXPECT_EQ(rules.faults.size(), 1U) << texts_of(rules.faults).back();
}

// The catalogue's Testia alba waits for 10 °C; a ceiling of 9 does not suit it, but the genus'
// own 8.
TEST(Overrides, AFaultThatShowsInTheCatalogueIsToldWhereTheGrowerMadeIt) {
  const RuleText file{"rules/mine.json",
                      "{\"schema\": 1, \"family\": \"Testaceae\", \"genera\": [\n"
                      " {\"genus\": \"Testia\", \"rule\": {\n"
                      R"("night_limit_c": {"value": 8, "low": 7, "high": 9, "evidence": "grower"},
                         "base_c": {"value": 1, "low": 1, "high": 1, "evidence": "grower"},
                         "optimum_c": {"value": 5, "low": 5, "high": 5, "evidence": "grower"},
                         "ceiling_c": {"value": 9, "low": 9, "high": 9, "evidence": "grower"}}}]})"};
  const Overlaid rules = over({file});
  ASSERT_EQ(rules.faults.size(), 1U);
  const Problem& fault = rules.faults.front();
  EXPECT_EQ(fault.where, "rules/mine.json");
  EXPECT_EQ(fault.line, 2U);
  EXPECT_EQ(fault.pointer, "/genera/0");
  EXPECT_EQ(fault.found, "Testia alba waits for nights warmer than its ceiling");
  EXPECT_NE(fault.remedy.find("it shows at that entry of "), std::string::npos) << fault.remedy;
}

TEST(Overrides, AFaultThatTheFamilysRuleMakesIsToldThere) {
  const RuleText file{"rules/mine.json",
                      "{\"schema\": 1, \"family\": \"Testaceae\",\n \"rule\": {\n"
                      R"("ceiling_c": {"value": 13, "low": 13, "high": 13, "evidence": "grower"},
                         "base_c": {"value": 1, "low": 1, "high": 1, "evidence": "grower"},
                         "optimum_c": {"value": 5, "low": 5, "high": 5, "evidence": "grower"}}})"};
  const Overlaid rules = over({file});
  ASSERT_FALSE(rules.faults.empty());
  for (const Problem& fault : rules.faults) {
    EXPECT_EQ(fault.where, "rules/mine.json") << to_text(fault);
    EXPECT_EQ(fault.line, 2U) << to_text(fault);
    EXPECT_EQ(fault.pointer, "/rule") << to_text(fault);
  }
}

TEST(Overrides, ATaxonThatTwoFilesGiveIsTakenFromTheFirst) {
  const Overlaid rules = over(
      {limit_of_genus("Testia", 11, "rules/a.json"), limit_of_genus("Testia", 9, "rules/b.json")});
  EXPECT_DOUBLE_EQ(limit_c(rules, "Testia"), 11.0);
  ASSERT_EQ(rules.refused.size(), 1U);
  EXPECT_NE(to_text(rules.faults.front()).find("it stands in rules/a.json"), std::string::npos);
}

TEST(Overrides, OwnSourcesMayBeNamed) {
  const RuleText file = own(R"({"genus": "Testia", "rule": {"growth":
      {"value": "summer", "evidence": "grower", "source": "my-notes"}}})");
  const RuleText sources{
      "rules/sources.json",
      R"({"schema": 1, "sources": {"my-notes": {"kind": "notes", "title": "Sowings"}}})"};
  EXPECT_EQ(overlaid(small_catalogue(), std::span{&file, 1}, std::nullopt).refused.size(), 1U);
  const Overlaid rules = overlaid(small_catalogue(), std::span{&file, 1}, sources);
  EXPECT_TRUE(rules.faults.empty());
  EXPECT_NE(rules.catalogue->source("my-notes"), nullptr);
}

} // namespace
} // namespace nightsow::species_rules
