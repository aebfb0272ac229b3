#include "species-rules/explain.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

TEST(Explain, ANumberIsToldWithUnitRangeAndGround) {
  Rule rule;
  rule.gate.night_limit_c = Estimate{14, 12, 16, {Evidence::experiment, "book", Origin::genus}};
  const auto values = explain(rule);
  ASSERT_EQ(values.size(), 1U);
  EXPECT_EQ(values[0].key, "night_limit_c");
  EXPECT_EQ(values[0].unit, "°C");
  EXPECT_TRUE(values[0].number);
  EXPECT_EQ(values[0].value, 14);
  EXPECT_EQ(values[0].low, 12);
  EXPECT_EQ(values[0].high, 16);
  EXPECT_EQ(values[0].evidence + ' ' + values[0].source + ' ' + values[0].origin,
            "experiment book genus");
}

TEST(Explain, AWordIsToldAsItIsWrittenInRuleFiles) {
  Rule rule;
  rule.gate.start = Choice<Start>{Start::at_once, {Evidence::memory, "", Origin::grower}};
  const auto values = explain(rule);
  ASSERT_EQ(values.size(), 1U);
  EXPECT_FALSE(values[0].number);
  EXPECT_EQ(values[0].word, "at_once");
  EXPECT_EQ(values[0].origin, "yours");
  EXPECT_FALSE(values[0].meaning.empty());
}

TEST(Explain, RemarksAreToldOneByOne) {
  Rule rule;
  rule.cautions = {{"spines", {}}, {"bulb_toxic", {}}};
  const auto values = explain(rule);
  ASSERT_EQ(values.size(), 2U);
  EXPECT_EQ(values[0].key + ' ' + values[0].word, "cautions spines");
  EXPECT_EQ(values[1].key + ' ' + values[1].word, "cautions bulb_toxic");
}

TEST(Explain, ValuesFollowTheOrderOfTheTable) {
  Rule rule;
  rule.seedling.transplant = Choice<Transplant>{};
  rule.gate.growth = Choice<Growth>{};
  rule.seed.half_life_years = Estimate{};
  const auto values = explain(rule);
  ASSERT_EQ(values.size(), 3U);
  EXPECT_EQ(values[0].key, "growth");
  EXPECT_EQ(values[1].key, "half_life_years");
  EXPECT_EQ(values[2].key, "transplant");
}

TEST(Explain, AnEmptyRuleHasNothingToTell) {
  EXPECT_TRUE(explain(Rule{}).empty());
}

} // namespace
} // namespace nightsow::species_rules
