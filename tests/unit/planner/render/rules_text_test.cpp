#include "planner/render/answer_text.hpp"
#include "species-rules/rule_fields.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

bool holds(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST(RulesText, ARuleReadsLikeThis) {
  EXPECT_EQ(rule_show_text(small_rule(), {}), R"(Bulbine annua (Asphodelaceae)
By the rule of Bulbine.

                            Value                Known from

Starts when
  started by                cool nights          practice of an institution [1]; genus
  nights at or under        12 °C (9.5 to 14.5)  common practice; genus

Seed
  comes up, fresh and ripe  65 % (30 to 90)      from memory, unchecked; genus

Sowing
  mineral part of the mix   70 %                 common practice; family

Cautions
  A declared weed in some regions: check your local biosecurity rules before you order or sow, and
  let none of it escape. (from memory, unchecked; genus)

Notes
  A quick genus in autumn. (practice of an institution [1]; genus)

Sources
  [1] A society: Growing Bulbine, 2018 (society)
)");
}

TEST(RulesText, EveryFieldOfTheTableHasItsLabelAndItsPart) {
  RuleShowAnswer rule;
  species_rules::Rule fields;
  species_rules::for_each_field(fields, [&](const species_rules::Field& field, const auto&) {
    RuleValue value;
    value.key = field.key;
    value.meaning = "NO LABEL";
    value.word = field.key == "cautions" ? "spines" : "word";
    rule.values.push_back(value);
  });
  const std::string text = rule_show_text(rule, {});
  EXPECT_FALSE(holds(text, "NO LABEL")) << text;
  EXPECT_LT(text.find("nights at or under"), text.find("\nSeed\n"));
  EXPECT_LT(text.find("mineral part of the mix"), text.find("\nSeedlings\n"));
  EXPECT_LT(text.find("pricking out"), text.find("\nCautions\n"));
}

TEST(RulesText, AFieldThatNobodyPlacedGoesWithTheOneBeforeIt) {
  RuleShowAnswer rule = small_rule();
  RuleValue value = rule.values.at(1);
  value.key = "brand_new";
  value.meaning = "a field of tomorrow";
  rule.values.insert(rule.values.begin() + 2, value);
  const std::string text = rule_show_text(rule, {});
  EXPECT_LT(text.find("a field of tomorrow"), text.find("\nSeed\n"));
}

TEST(RulesText, FahrenheitChangesPointsAndWarmthButNoShare) {
  TextStyle style;
  style.fahrenheit = true;
  const std::string text = rule_show_text(small_rule(), style);
  EXPECT_TRUE(holds(text, "54 °F (49 to 58)")) << text;
  EXPECT_TRUE(holds(text, "65 % (30 to 90)"));
}

TEST(RulesText, ASynonymAndASpellingAreSaid) {
  RuleShowAnswer rule = small_rule();
  rule.taxon = "Bulbina old";
  rule.read_as = "Bulbine old";
  rule.by_synonym = true;
  const std::string text = rule_show_text(rule, {});
  EXPECT_TRUE(holds(text, "Bulbina old was read as Bulbine old.\n"));
  EXPECT_TRUE(holds(text, "is an older name of Bulbine annua.\n"));
}

TEST(RulesText, TheListHasOneLineForEachRule) {
  RulesListAnswer list;
  list.rules = {{"Bulbine", "Asphodelaceae", "winter", "cool", 12.0, {}, 2.0}};
  EXPECT_EQ(rules_list_text(list, {}),
            "Rule     Family         Grows      Started by   Nights to  Nights from  Half-life\n"
            "Bulbine  Asphodelaceae  in winter  cool nights      12 °C               2 years\n");
}

} // namespace
} // namespace nightsow::planner
