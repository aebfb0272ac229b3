#include "planner/answers/rules_report.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace nightsow::planner {
namespace {

using nightsow::support::fault;
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
  EXPECT_EQ(listed("Bulbine").night_limit_c, 12.0);
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
  EXPECT_EQ(show_rule(*embedded_catalogue(), "Bulbine annua").rule, "Bulbine");
}

TEST(RuleShow, IsRefusedForAnUnknownNameWithTheNearestOne) {
  const auto said = [](std::string_view typed) {
    return fault<UsageError>([&] { return show_rule(*embedded_catalogue(), typed); });
  };
  EXPECT_NE(said("Bulbinne").find("did you mean Bulbine?"), std::string::npos);
  EXPECT_NE(said("Zzyzx").find("nightsow rules list"), std::string::npos);
}

} // namespace
} // namespace nightsow::planner
