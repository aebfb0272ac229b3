#include "species-rules/check_rules.hpp"

#include "tests/unit/species-rules/rule_texts.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

using rule_texts::family_defaults;
using rule_texts::family_text;
using rule_texts::read;
using rule_texts::texts_of;

std::vector<std::string> name_faults(const std::vector<std::string>& files) {
  std::vector<FamilyFile> read_files;
  for (const std::string& file : files) {
    read_files.push_back(read(file));
    EXPECT_TRUE(read_files.back().faults.empty());
  }
  return texts_of(check_names(read_files));
}

std::vector<std::string> rule_faults(std::string_view genera, const std::string& family_rule) {
  return texts_of(check_rules(read(family_text(genera, "Testaceae", family_rule))));
}

// The family's defaults without one field.
std::string defaults_without(const std::string& key) {
  std::string rule = family_defaults();
  const std::size_t begin = rule.find('"' + key + '"');
  const std::size_t end = rule.find("}, ", begin) + 3;
  return rule.erase(begin, end - begin);
}

std::string number(const std::string& key, const std::string& value) {
  return '"' + key + R"(": {"value": )" + value + R"(, "low": )" + value + R"(, "high": )" + value +
         R"(, "evidence": "memory"})";
}

TEST(CheckRules, AFamilyWithEveryDefaultIsSound) {
  EXPECT_TRUE(rule_faults(R"({"genus": "Aloe"})", family_defaults()).empty());
}

TEST(CheckRules, AMissingFamilyDefaultIsToldAtTheFamilysRule) {
  EXPECT_EQ(rule_faults("", defaults_without("half_life_years")),
            std::vector<std::string>{"Testaceae.json:1:38: Testaceae gives no half_life_years; "
                                     "expected a default in every family, so that no entry has to "
                                     "guess; add \"half_life_years\" to the family's rule"});
}

TEST(CheckRules, ACoolStarterNeedsANightLimitFromSomewhere) {
  const std::string family = defaults_without("night_limit_c");
  EXPECT_EQ(rule_faults(R"({"genus": "Aloe"})", family),
            std::vector<std::string>{"Testaceae.json:3:1: Aloe starts in the cool but has no night "
                                     "limit; expected a night limit, here or in the family"});
  EXPECT_TRUE(
      rule_faults(R"({"genus": "Aloe", "rule": {)" + number("night_limit_c", "14") + "}}", family)
          .empty());
}

TEST(CheckRules, AHotStarterNeedsAWarmNight) {
  const auto faults = rule_faults(R"({"genus": "Aloe", "species": [{"species": "vera", "rule":
                      {"start": {"value": "hot", "evidence": "memory"}}}]})",
                                  defaults_without("warm_night_c"));
  EXPECT_EQ(faults.size(), 1U);
  EXPECT_NE(faults.at(0).find("Aloe vera starts in the heat"), std::string::npos);
}

TEST(CheckRules, MoreNightsCannotBeWantedThanCounted) {
  const auto faults = rule_faults(R"({"genus": "Aloe", "rule": {)" + number("gate_nights", "5") +
                                      ", " + number("gate_of", "4") + "}}",
                                  family_defaults());
  EXPECT_EQ(faults.size(), 1U);
}

TEST(CheckRules, AnAnnualIsNotPrickedOutLaterThanItLives) {
  struct Case {
    const char* way;
    const char* transplant;
    std::size_t faults;
  };

  for (const Case& one : {Case{"dies", "easy", 0},
                          Case{"dies", "never", 0},
                          Case{"dies", "after_first_rest", 1},
                          Case{"dies", "late", 1},
                          Case{"none", "after_first_rest", 0},
                          Case{"dry", "late", 0}}) {
    const std::string rule = std::string(R"("first_rest": {"value": ")") + one.way +
                             R"(", "evidence": "memory"}, "transplant": {"value": ")" +
                             one.transplant + R"(", "evidence": "memory"})";
    const auto faults =
        rule_faults(R"({"genus": "Ursinia", "rule": {)" + rule + "}}", family_defaults());
    EXPECT_EQ(faults.size(), one.faults) << one.way << ", " << one.transplant;
    if (one.faults > 0) {
      EXPECT_NE(faults.at(0).find("Ursinia is pricked out later than it lives"), std::string::npos);
    }
  }
}

TEST(CheckRules, LooksFollowEachOther) {
  const auto faults = rule_faults(
      R"({"genus": "Aloe", "rule": {)" + number("first_look_days", "30") + "}}", family_defaults());
  EXPECT_EQ(faults.size(), 1U);
  EXPECT_NE(faults.at(0).find("looks out of order"), std::string::npos);
}

TEST(CheckRules, WhatDoesNotFitTogetherIsTold) {
  struct Case {
    std::string rule;
    std::string_view said;
  };

  const auto word = [](std::string_view key, std::string_view value) {
    return '"' + std::string{key} + R"(": {"value": ")" + std::string{value} +
           R"(", "evidence": "memory"})";
  };
  const std::string cool = number("night_limit_c", "14") + ", ";
  for (const Case& known :
       {Case{cool + number("base_c", "20") + ", " + number("optimum_c", "15"), "out of order"},
        {number("night_limit_c", "14") + ", " + number("ceiling_c", "12"), "its ceiling"},
        {number("night_limit_c", "14") + ", " + number("day_limit_c", "12"), "its days may be"},
        {cool + number("optimum_c", "20") + ", " + number("day_limit_c", "18"),
         "day limit under its optimum"},
        {word("start", "hot") + ", " + number("base_c", "12") + ", " + number("optimum_c", "25") +
             ", " + number("warm_night_c", "12"),
         "warm nights in which it makes no progress"},
        {word("start", "hot") + ", " + number("ceiling_c", "28") + ", " +
             number("warm_night_c", "30"),
         "warm nights in which it makes no progress"},
        {cool +
             R"("after_ripening_c_d": {"value": 0, "low": 0, "high": 500, "evidence": "memory"})",
         "perhaps some"},
        {cool + number("seedling_frost_c", "-4") + ", " + number("older_seedling_frost_c", "-2"),
         "less frost when older"},
        {cool + word("seed_size", "dust") + ", " + word("cover", "thin"), "seed like dust"},
        {cool + word("seed_size", "dust") + ", " + word("cover", "dusting") + ", " +
             number("cover_mm", "2"),
         "seed like dust"},
        {cool + word("seed_size", "fine") + ", " + word("cover", "thin") + ", " +
             number("cover_mm", "4"),
         "buries fine seed"},
        {cool + word("seed_size", "medium") + ", " + word("cover", "half_buried"),
         "seed that is not large"},
        {cool + word("seed_size", "medium") + ", " + number("cover_mm", "5"), "leaves uncovered"},
        {cool + word("seed_size", "large") + ", " + word("cover", "dusting"),
         "leaves large seed uncovered or dusted"},
        {cool + word("seed_size", "medium") + ", " + word("cover", "dusting") + ", " +
             number("cover_mm", "3"),
         "calls a dusting what buries"},
        {cool + word("seed_size", "large") + ", " + word("cover", "deep"), "needs light"},
        {cool + word("seed_size", "fleshy") + ", " + word("store", "cool_dry"),
         "stores fleshy seed"},
        {cool + number("shade_second_year", "0.6"), "shaded more from year to year"},
        {cool + number("deferral_treated_share", "0.5"), "when it was treated"},
        {cool + word("smoke", "useless") + ", " + word("leach", "useless") + ", " +
             word("scarify", "useless"),
         "no treatment that helps"}}) {
    const std::vector<std::string> faults =
        rule_faults(R"({"genus": "Aloe", "rule": {)" + known.rule + "}}", family_defaults());
    ASSERT_FALSE(faults.empty()) << known.rule;
    EXPECT_NE(faults.front().find(known.said), std::string::npos) << faults.front();
    EXPECT_EQ(faults.size(), 1U) << known.rule;
  }
}

TEST(CheckNames, DifferentNamesAreSound) {
  EXPECT_TRUE(name_faults({family_text(R"({"genus": "Aloe", "synonyms": ["Oldaloe"]})"),
                           family_text(R"({"genus": "Oxalis"})", "Oxaceae")})
                  .empty());
}

TEST(CheckNames, AGenusThatStandsTwiceIsToldAtTheSecondPlace) {
  EXPECT_EQ(name_faults({family_text("{\"genus\": \"Aloe\"},\n{\"genus\": \"Aloe\"}")}),
            std::vector<std::string>{"Testaceae.json:4:1: Aloe stands here, and as an entry of its "
                                     "own; expected each name once"});
}

TEST(CheckNames, AFamilyOrASpeciesMayNotStandTwiceEither) {
  EXPECT_EQ(name_faults({family_text(""), family_text("")}).size(), 1U);
  EXPECT_EQ(name_faults({family_text(R"({"genus": "Aloe", "species": [{"species": "vera"},
                                         {"species": "vera"}]})")})
                .size(),
            1U);
}

TEST(CheckNames, ASynonymMayNotBeAGenusOfItsOwn) {
  EXPECT_EQ(name_faults({family_text(R"({"genus": "Aloe", "synonyms": ["Oxalis"]},
                                        {"genus": "Oxalis"})")}),
            std::vector<std::string>{"Testaceae.json:3:32: Oxalis is called a synonym of Aloe, and "
                                     "is an entry of its own; expected each name once"});
}

TEST(CheckNames, SynonymsThatGoInACircleAreTold) {
  EXPECT_EQ(name_faults({family_text(R"({"genus": "Aloe", "synonyms": ["Oxalis"]},
                                        {"genus": "Oxalis", "synonyms": ["Aloe"]})")})
                .size(),
            2U);
  EXPECT_EQ(name_faults({family_text(R"({"genus": "Aloe", "species": [
              {"species": "vera", "synonyms": ["Aloe ferox"]},
              {"species": "ferox", "synonyms": ["Aloe vera"]}]})")})
                .size(),
            2U);
}

TEST(CheckNames, ASynonymMayNotBelongToTwo) {
  EXPECT_EQ(name_faults({family_text(R"({"genus": "Aloe", "synonyms": ["Old"]},
                                        {"genus": "Oxalis", "synonyms": ["Old"]})")})
                .size(),
            1U);
}

TEST(CheckNames, AGroupIsPlacedInAnAcceptedGenus) {
  const std::string_view group = R"({"genus": "Sceletium", "accepted_genus": "Mesembryanthemum"})";
  EXPECT_EQ(name_faults({family_text(group)}).size(), 1U);
  EXPECT_TRUE(name_faults({family_text(std::string{group} + R"(, {"genus": "Mesembryanthemum"})")})
                  .empty());
}

TEST(CheckNames, AGroupAndItsGenusMayNotBothListASpecies) {
  EXPECT_EQ(name_faults({family_text(
                            R"({"genus": "Mesembryanthemum", "species": [{"species": "tortuosum"}]},
                   {"genus": "Sceletium", "accepted_genus": "Mesembryanthemum",
                    "species": [{"species": "tortuosum"}]})")})
                .size(),
            1U);
}

} // namespace
} // namespace nightsow::species_rules
