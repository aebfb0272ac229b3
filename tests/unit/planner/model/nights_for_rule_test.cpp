#include "planner/model/nights_for_rule.hpp"

#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using species_rules::Choice;
using species_rules::Estimate;
using species_rules::Rule;
using species_rules::Start;

Rule rule_with(std::optional<Start> start, std::optional<double> night_limit_c) {
  Rule rule;
  if (start) {
    rule.gate.start = Choice<Start>{*start, {}};
  }
  if (night_limit_c) {
    rule.gate.night_limit_c = Estimate{*night_limit_c, *night_limit_c, *night_limit_c, {}};
  }
  return rule;
}

TEST(NightsForRule, AreFiveOfSevenAtOrUnderTheLimitUnlessTheRuleSaysOtherwise) {
  Rule rule = rule_with(Start::cool, 13.0);
  EXPECT_EQ(night_limit(rule), (climate::NightLimit{Celsius{13.0}, std::nullopt, 5, 7}));
  rule.gate.nights = Estimate{6.0, 5.0, 7.0, {}};
  rule.gate.of = Estimate{10.0, 10.0, 10.0, {}};
  EXPECT_EQ(night_limit(rule), (climate::NightLimit{Celsius{13.0}, std::nullopt, 6, 10}));
}

TEST(NightsForRule, TakeTheDayLimitFromTheRule) {
  Rule rule = rule_with(Start::cool, 13.0);
  rule.gate.day_limit_c = Estimate{25.0, 23.0, 27.0, {}};
  EXPECT_EQ(night_limit(rule)->day_limit, Celsius{25.0});
}

TEST(NightsForRule, AreAskedForByCoolStartersOnly) {
  EXPECT_TRUE(night_limit(rule_with(Start::cool, 13.0)));
  EXPECT_FALSE(night_limit(rule_with(Start::hot, 13.0)));
  EXPECT_FALSE(night_limit(rule_with(Start::any, 13.0)));
  EXPECT_FALSE(night_limit(rule_with(Start::at_once, 13.0)));
  EXPECT_FALSE(night_limit(rule_with(Start::cool, std::nullopt)));
}

TEST(NightsForRule, ARuleWithoutAStartIsCoolWhenItHasALimit) {
  EXPECT_EQ(start_of(rule_with(std::nullopt, 13.0)), Start::cool);
  EXPECT_EQ(start_of(rule_with(std::nullopt, std::nullopt)), Start::any);
}

TEST(NightsForRule, AnEstimateThatIsNotKnownGivesTheValueInItsPlace) {
  EXPECT_EQ(value_or(Estimate{3.0, 2.0, 4.0, {}}, 7.0), 3.0);
  EXPECT_EQ(value_or(std::nullopt, 7.0), 7.0);
}

TEST(NightsForRule, AreThirteenForBulbineAndEighteenForMonsonia) {
  const auto catalogue = support::embedded_catalogue();
  EXPECT_EQ(night_limit(catalogue->rule_for("Bulbine").found->rule)->at_or_under, Celsius{13.0});
  EXPECT_EQ(night_limit(catalogue->rule_for("Monsonia").found->rule)->at_or_under, Celsius{18.0});
}

} // namespace
} // namespace nightsow::planner
