#include "planner/render/answer_text.hpp"
#include "species-rules/rule_fields.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

bool holds(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TextStyle with_why() {
  TextStyle style;
  style.why = true;
  return style;
}

constexpr std::string_view first_screen = R"(Bulbine annua (Asphodelaceae)
By the rule of Bulbine.

When       Cool nights start it: sow for the time when nights lie at or under 12 °C (9.5 to 14.5).
Expect     Of fresh, ripe seed about 7 in 10 comes up (30 to 90 %).
Mind       A declared weed in some regions: check your local biosecurity rules before you order or
           sow, and let none of it escape.
Notes      A quick genus in autumn. (practice of an institution)
)";

TEST(RulesText, TheFirstScreenReadsLikeThis) {
  EXPECT_EQ(rule_show_text(small_rule(), {}),
            std::string{first_screen} + "\nEvery value with its range, ground and source: --why\n");
}

TEST(RulesText, WithWhyTheValuesStandBehindIt) {
  EXPECT_EQ(rule_show_text(small_rule(), with_why()), std::string{first_screen} + R"(
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
  const std::string text = rule_show_text(rule, with_why());
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
  const std::string text = rule_show_text(rule, with_why());
  EXPECT_LT(text.find("a field of tomorrow"), text.find("\nSeed\n"));
}

TEST(RulesText, FahrenheitChangesPointsAndWarmthButNoShare) {
  TextStyle style = with_why();
  style.fahrenheit = true;
  const std::string text = rule_show_text(small_rule(), style);
  EXPECT_TRUE(holds(text, "nights lie at or under 54 °F (49 to 58).")) << text;
  EXPECT_TRUE(holds(text, "nights at or under        54 °F (49 to 58)")) << text;
  EXPECT_FALSE(holds(text, "°C")) << text;
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

TEST(RulesText, NamesThatHelpToFindTheKindStandBelowIt) {
  RuleShowAnswer rule = small_rule();
  rule.older_names = {"Anthericum annuum"};
  rule.own_rule = false;
  const std::string text = rule_show_text(rule, {});
  EXPECT_TRUE(holds(text, "Older names on labels: Anthericum annuum.\n")) << text;
  EXPECT_TRUE(holds(text, "It has no rule of its own: this is what is known of Bulbine")) << text;
  EXPECT_FALSE(holds(text, "By the rule of")) << text;
  rule.own_rule = true;
  rule.accepted = "Bulbine";
  rule.species_rules = {"Bulbine bruynsii"};
  EXPECT_TRUE(holds(rule_show_text(rule, {}), "With rules of their own: Bulbine bruynsii.\n"));
}

TEST(RulesText, TheGroundIsCountedWithoutNaughts) {
  RuleShowAnswer rule = small_rule();
  rule.ground = {5, 0, 1, 0, 4, {"the night limit", "light"}};
  EXPECT_TRUE(holds(rule_show_text(rule, {}),
                    "How sure   5 values that decide much: 1 on the practice of institutions, 4 on "
                    "less. Known worst: the\n           night limit; light.\n"))
      << rule_show_text(rule, {});
}

TEST(RulesText, OneIsNoPlural) {
  RuleShowAnswer rule = small_rule();
  RuleValue& value = rule.values.at(1);
  value = {"seeds_per_pot", "seeds", "", true, 1, 1, 2, "", "memory", "", "genus"};
  EXPECT_TRUE(holds(rule_show_text(rule, with_why()), "1 seed (1 to 2)"));
}

TEST(RulesText, TheListHasOneLineForEachRuleAndCountsThem) {
  RulesListAnswer list;
  RuleListLine line;
  line.rule = "Bulbine";
  line.family = "Asphodelaceae";
  line.growth = "winter";
  line.start = "cool";
  line.night_limit_c = 12.0;
  line.half_life_years = 2.0;
  line.seed_size = "small";
  list.rules = {line};
  list.of = 5;
  list.families = 1;
  list.starts = {{"cool", 1}};
  EXPECT_EQ(rules_list_text(list, {}),
            "Rule     Grows      Started by   Nights    Seed   Half-life\n"
            "Bulbine  in winter  cool nights  to 12 °C  small  2 years\n"
            "\n"
            "1 of 5 rules, all Asphodelaceae: cool nights 1.\n");
  list.families = 2;
  EXPECT_TRUE(holds(rules_list_text(list, {}), "Bulbine  Asphodelaceae  in winter"));
  EXPECT_TRUE(holds(rules_list_text(list, {}), "1 of 5 rules, in 2 families: "));
  list.evidence_below = "grower";
  list.rules.front().weak = 4;
  list.rules.front().deciding = 6;
  EXPECT_TRUE(holds(rules_list_text(list, {}), "2 years    4 of 6\n"));
  list.rules.clear();
  list.evidence_below.clear();
  EXPECT_EQ(rules_list_text(list, {}), "0 of 5 rules.\n");
}

TEST(RulesText, GapsReadLikeThis) {
  EXPECT_EQ(
      rules_gaps_text(small_gaps(), {}),
      R"(What is known worst of what decides most, in 3 rules. Each trial is one that a grower can make;
counts of both halves are worth more than a verdict.

The night limit (weighs 4 of 5)
  It moves dates.
  Try: Sow half at 9.5 °C and half at 14.5 °C. (The ends of the range of Bulbine.)
    Given by  Taken now            Known from       Holds for
    Bulbine   12 °C (9.5 to 14.5)  common practice  Bulbine, Bulbine annua and 1 more
    and 2 more

And 1 field: --all
)");
  EXPECT_EQ(rules_gaps_text({}, {}), "No rules.\n");
}

TEST(RulesText, TrialsAreReadInFahrenheitToo) {
  TextStyle style;
  style.fahrenheit = true;
  EXPECT_TRUE(holds(rules_gaps_text(small_gaps(), style), "half at 49 °F and half at 58 °F."));
}

} // namespace
} // namespace nightsow::planner
