#include "species-rules/seed_parameters.hpp"

#include "species-rules/catalogue.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

Estimate exactly(double value) {
  return {value, value, value, {}};
}

TEST(SeedParameters, ACoolStarterWaitsForItsNightLimitAHotOneForItsWarmNight) {
  Rule rule;
  rule.gate.start = Choice<Start>{Start::cool, {}};
  rule.gate.night_limit_c = exactly(13.0);
  rule.gate.warm_night_c = exactly(20.0);
  rule.gate.night_limit_spread_k = exactly(1.5);
  rule.gate.indifferent_share = exactly(0.4);
  EXPECT_DOUBLE_EQ(seed_parameters(rule).release->limit_c, 13.0);
  EXPECT_DOUBLE_EQ(seed_parameters(rule).release->spread_k, 1.5);
  EXPECT_DOUBLE_EQ(seed_parameters(rule).release->indifferent_share, 0.4);
  rule.gate.start->value = Start::hot;
  EXPECT_DOUBLE_EQ(seed_parameters(rule).release->limit_c, 20.0);
}

TEST(SeedParameters, FleshySeedWaitsForNothing) {
  Rule rule;
  rule.gate.start = Choice<Start>{Start::at_once, {}};
  rule.gate.night_limit_c = exactly(13.0);
  EXPECT_FALSE(seed_parameters(rule).release);
}

TEST(SeedParameters, TheOrderOfTemperaturesIsKept) {
  Rule rule;
  rule.development.base_c = exactly(20.0);
  rule.development.optimum_c = exactly(15.0);
  rule.development.ceiling_c = exactly(10.0);
  const CardinalTemperatures cardinal = seed_parameters(rule).cardinal;
  EXPECT_LT(cardinal.base_c, cardinal.optimum_c);
  EXPECT_LT(cardinal.optimum_c, cardinal.ceiling_c);
}

TEST(SeedParameters, TreatedSeedWaitsLessWhereTheRuleSaysSoAndElseAsMuch) {
  Rule rule;
  rule.seed.deferral_share = Estimate{0.6, 0.4, 0.8, {}};
  EXPECT_DOUBLE_EQ(treated(seed_parameters(rule)).deferral_share, 0.6);
  rule.seed.deferral_treated_share = Estimate{0.1, 0.02, 0.2, {}};
  EXPECT_DOUBLE_EQ(seed_parameters(rule).deferral_share, 0.6);
  EXPECT_DOUBLE_EQ(treated(seed_parameters(rule)).deferral_share, 0.1);
}

TEST(SeedParameters, FleshySeedAndSeedThatCannotWaitDieDry) {
  Rule rule;
  EXPECT_EQ(storage_of(rule), SeedStorage::orthodox);
  rule.seed.size = Choice<SeedSize>{SeedSize::fleshy, {}};
  EXPECT_EQ(storage_of(rule), SeedStorage::recalcitrant);
  rule.seed.size = Choice<SeedSize>{SeedSize::small, {}};
  rule.gate.start = Choice<Start>{Start::at_once, {}};
  EXPECT_EQ(storage_of(rule), SeedStorage::recalcitrant);
}

TEST(SeedParameters, EveryRuleOfTheCatalogueGivesUsableNumbers) {
  const Catalogue catalogue = Catalogue::embedded();
  for (const std::string& name : catalogue.rule_names()) {
    const SeedParameters seed = seed_parameters(catalogue.rule_for(name).found->rule);
    EXPECT_EQ(seed.release.has_value(), seed.start == Start::cool || seed.start == Start::hot)
        << name;
    EXPECT_LE(seed.nights, seed.of) << name;
    EXPECT_GT(seed.thermal_time_c_d, 0.0) << name;
    EXPECT_GT(seed.half_life_years, 0.0) << name;
    EXPECT_GT(seed.growth_needed_days, 0.0) << name;
    EXPECT_LE(seed.older_frost_limit_c, seed.frost_limit_c) << name;
    EXPECT_LT(seed.cardinal.base_c, seed.cardinal.optimum_c) << name;
    EXPECT_LT(seed.cardinal.optimum_c, seed.cardinal.ceiling_c) << name;
  }
}

} // namespace
} // namespace nightsow::species_rules
