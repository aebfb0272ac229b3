#include "planner/answers/rules_report.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_garden.hpp"
#include "tests/unit/species-rules/rule_texts.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

using nightsow::support::fault;
using species_rules::Catalogue;
using support::embedded_catalogue;

RuleListLine listed(const std::string& rule) {
  const RulesListAnswer answer = list_rules(*embedded_catalogue());
  const auto found = std::find_if(answer.rules.begin(),
                                  answer.rules.end(),
                                  [&](const RuleListLine& line) { return line.rule == rule; });
  return found == answer.rules.end() ? RuleListLine{} : *found;
}

TEST(RulesList, HoldsEveryRuleOfTheCatalogue) {
  EXPECT_EQ(list_rules(*embedded_catalogue()).rules.size(),
            embedded_catalogue()->rule_names().size());
}

TEST(RulesList, GivesTheNightLimitOfCoolStartersOnly) {
  EXPECT_EQ(listed("Bulbine").start, "cool");
  EXPECT_EQ(listed("Bulbine").night_limit_c, 13.0);
  EXPECT_FALSE(listed("Bulbine").warm_night_c);
  EXPECT_FALSE(listed("Haworthia").night_limit_c);
}

TEST(RulesList, GivesTheWarmNightOfHotStartersOnly) {
  EXPECT_EQ(listed("Pachypodium namaquanum").start, "hot");
  EXPECT_EQ(listed("Pachypodium namaquanum").warm_night_c, 20.0);
  EXPECT_FALSE(listed("Pachypodium namaquanum").night_limit_c);
}

const RuleValue& value_of(const RuleShowAnswer& answer, const std::string& key) {
  return *std::find_if(answer.values.begin(), answer.values.end(), [&](const RuleValue& value) {
    return value.key == key;
  });
}

TEST(RuleShow, GivesEachValueWithItsRangeAndOrigin) {
  const RuleShowAnswer answer = show_rule(*embedded_catalogue(), "Pachypodium namaquanum");
  const RuleValue& warm = value_of(answer, "warm_night_c");
  EXPECT_EQ(warm.value, 20.0);
  EXPECT_LE(warm.low, warm.value);
  EXPECT_GE(warm.high, warm.value);
  EXPECT_EQ(warm.origin, "species");
  EXPECT_EQ(value_of(answer, "gate_nights").origin, "family");
}

TEST(RuleShow, NamesEachSourceOfItsValuesOnce) {
  const RuleShowAnswer answer = show_rule(*embedded_catalogue(), "Pachypodium namaquanum");
  for (const RuleValue& value : answer.values) {
    const auto named =
        std::count_if(answer.sources.begin(), answer.sources.end(), [&](const RuleSource& source) {
          return source.id == value.source;
        });
    EXPECT_EQ(named, value.source.empty() ? 0 : 1) << value.key;
  }
}

TEST(RuleShow, FollowsAnOlderName) {
  const RuleShowAnswer answer = show_rule(*embedded_catalogue(), "Sarcocaulon vanderietiae");
  EXPECT_TRUE(answer.by_synonym);
  EXPECT_EQ(answer.accepted, "Monsonia vanderietiae");
  EXPECT_EQ(answer.taxon, "Sarcocaulon vanderietiae");
}

TEST(RuleShow, IsTheRuleOfTheGenusForASpeciesWithoutItsOwn) {
  EXPECT_EQ(show_rule(*embedded_catalogue(), "Bulbine alooides").rule, "Bulbine");
}

TEST(RuleShow, IsRefusedForAnUnknownNameWithTheNearestOne) {
  const auto said = [](std::string_view typed) {
    return fault<UsageError>([&] { return show_rule(*embedded_catalogue(), typed); });
  };
  EXPECT_NE(said("Bulbinne").find("did you mean Bulbine?"), std::string::npos);
  EXPECT_NE(said("Zzyzx").find("nightsow rules list"), std::string::npos);
}

std::vector<std::string> names_of(const RulesListAnswer& answer) {
  std::vector<std::string> names;
  for (const RuleListLine& line : answer.rules) {
    names.push_back(line.rule);
  }
  return names;
}

using Names = std::vector<std::string>;

// Four genera of one family, everything else from memory.
Catalogue four_genera() {
  return species_rules::rule_texts::catalogue_of(R"(
    {"genus": "Coolia", "synonyms": ["Oldia"], "rule": {
      "growth": {"value": "summer", "evidence": "experiment", "source": "book"},
      "mat": {"value": "harmful", "evidence": "memory"}}},
    {"genus": "Hotia", "rule": {
      "start": {"value": "hot", "evidence": "memory"},
      "cover": {"value": "own_thickness", "evidence": "memory"},
      "seed_size": {"value": "large", "evidence": "memory"}}},
    {"genus": "Fleshia", "rule": {"start": {"value": "at_once", "evidence": "memory"},
      "first_rest": {"value": "barely_moist", "evidence": "memory"}}},
    {"genus": "Otheria", "species": [{"species": "coolioides"}]})");
}

TEST(RulesList, EachFilterKeepsTheRulesThatFit) {
  const Catalogue catalogue = four_genera();
  const auto kept = [&](const RulesListRequest& request) {
    return names_of(list_rules(catalogue, request));
  };
  EXPECT_EQ(kept({.start = species_rules::Start::hot}), Names{"Hotia"});
  EXPECT_EQ(kept({.growth = species_rules::Growth::summer}), Names{"Coolia"});
  EXPECT_EQ(kept({.mat = species_rules::Mat::harmful}), Names{"Coolia"});
  EXPECT_EQ(kept({.seed_size = species_rules::SeedSize::large}), Names{"Hotia"});
  EXPECT_EQ(kept({.first_rest = species_rules::FirstRestWay::barely_moist}), Names{"Fleshia"});
  EXPECT_EQ(kept({.first_rest = species_rules::FirstRestWay::none}), Names{});
  EXPECT_EQ(kept({.in_hand = std::set<std::string>{"Fleshia"}}), Names{"Fleshia"});
  EXPECT_EQ(kept({.family = "testaceae"}).size(), 4U);
  EXPECT_EQ(kept({.growth = species_rules::Growth::summer, .mat = species_rules::Mat::needed}),
            Names{});
}

TEST(RulesList, ATextIsLookedForInOldNamesTooWhateverItsCase) {
  const Catalogue catalogue = four_genera();
  EXPECT_EQ(names_of(list_rules(catalogue, {.text = "OLDI"})), Names{"Coolia"});
  EXPECT_EQ(names_of(list_rules(catalogue, {.text = "hot"})), Names{"Hotia"});
  EXPECT_EQ(names_of(list_rules(catalogue, {.text = "zz"})), Names{});
}

TEST(RulesList, WeakGroundIsCountedAgainstTheWordAskedFor) {
  const Catalogue catalogue = four_genera();
  const RulesListAnswer all =
      list_rules(catalogue, {.evidence_below = species_rules::Evidence::relatives});
  ASSERT_EQ(all.rules.size(), 4U);
  EXPECT_EQ(all.rules.front().rule, "Coolia");
  // The growing season alone is known from an experiment.
  EXPECT_EQ(all.rules.front().weak, all.rules.front().deciding - 1);
  EXPECT_EQ(all.rules.back().weak, all.rules.back().deciding);
  // Nothing is weaker than memory.
  EXPECT_TRUE(
      list_rules(catalogue, {.evidence_below = species_rules::Evidence::memory}).rules.empty());
}

TEST(RulesList, CountsWhatItShowsByStart) {
  const RulesListAnswer answer = list_rules(four_genera());
  EXPECT_EQ(answer.of, 4);
  EXPECT_EQ(answer.families, 1);
  ASSERT_EQ(answer.starts.size(), 3U);
  EXPECT_EQ(answer.starts.front().start, "cool");
  EXPECT_EQ(answer.starts.front().rules, 2);
}

TEST(RulesList, AnUnknownFamilyIsRefusedWithTheNearest) {
  const auto said = [](std::string family) {
    return fault<UsageError>(
        [&] { return list_rules(*embedded_catalogue(), {.family = std::move(family)}); });
  };
  EXPECT_NE(said("Iridacae").find("did you mean Iridaceae?"), std::string::npos);
  EXPECT_NE(said("Xx").find("nightsow rules list"), std::string::npos);
}

TEST(RuleShow, SaysWhenASpeciesGoesByTheRuleOfItsGenus) {
  EXPECT_FALSE(show_rule(four_genera(), "Otheria coolioides").own_rule);
  EXPECT_TRUE(show_rule(four_genera(), "Otheria").own_rule);
  EXPECT_TRUE(show_rule(*embedded_catalogue(), "Pachypodium namaquanum").own_rule);
}

TEST(RuleShow, NamesOlderNamesAndSpeciesWithRulesOfTheirOwn) {
  EXPECT_EQ(show_rule(four_genera(), "Coolia").older_names, Names{"Oldia"});
  const RuleShowAnswer genus = show_rule(*embedded_catalogue(), "Pachypodium");
  EXPECT_TRUE(std::ranges::count(genus.species_rules, "Pachypodium namaquanum") == 1);
}

TEST(RuleShow, CountsTheGroundOfWhatDecidesAndNamesTheWeakest) {
  const RuleGround ground = show_rule(four_genera(), "Coolia").ground;
  EXPECT_EQ(ground.experiment, 1);
  EXPECT_EQ(ground.less, ground.deciding - 1);
  ASSERT_EQ(ground.weakest.size(), 3U);
  // All from memory with no range: the heaviest words come first.
  EXPECT_EQ(ground.weakest.front(), "what starts the seed");
}

TEST(RuleShow, RipeningIsToldInDaysAtRoomTemperature) {
  const Catalogue catalogue = species_rules::rule_texts::catalogue_of(
      R"({"genus": "Ripia", "rule": {"after_ripening_c_d":
            {"value": 1200, "low": 600, "high": 2400, "evidence": "memory"},
            "after_ripening_base_c": {"value": 5, "low": 2, "high": 8, "evidence": "memory"}}})");
  const auto ripe = show_rule(catalogue, "Ripia").half_ripe;
  ASSERT_TRUE(ripe);
  // 20 °C lies 15 K above the base of 5 °C.
  EXPECT_EQ(ripe->days, 80.0);
  EXPECT_EQ(ripe->low, 40.0);
  EXPECT_EQ(ripe->high, 160.0);
  EXPECT_FALSE(show_rule(four_genera(), "Fleshia").half_ripe);
}

} // namespace
} // namespace nightsow::planner
