#include "planner/model/seed_test.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using species_rules::Estimate;
using species_rules::SeedBelief;
using support::day;

const Date today = day("2026-11-15");

Packet tested(std::optional<Date> on) {
  Packet packet;
  packet.harvested = DateRange{day("2025-11-01"), day("2025-11-30")};
  packet.tested = GerminationTest{};
  packet.tested->sprouted = 14;
  packet.tested->of = 20;
  packet.tested->on = on;
  return packet;
}

TEST(SeedTest, IsOfUseBetweenHarvestAndToday) {
  EXPECT_TRUE(usable_test(tested(day("2026-05-01")), today));
  EXPECT_TRUE(usable_test(tested(today), today));
  EXPECT_FALSE(usable_test(tested(day("2026-11-16")), today));
  EXPECT_TRUE(usable_test(tested(day("2025-11-01")), today));
  EXPECT_FALSE(usable_test(tested(day("2025-10-31")), today));
  EXPECT_FALSE(usable_test(Packet{}, today));
}

TEST(SeedTest, WithoutADayIsTakenAsOfToday) {
  const auto test = usable_test(tested({}), today);
  ASSERT_TRUE(test);
  EXPECT_EQ(test->on, today);
  EXPECT_FALSE(test->day_written);
  EXPECT_EQ(test->count.sprouted, 14);
  EXPECT_EQ(test->count.of, 20);
}

/// A cool starter that defers as much as is said.
species_rules::Rule cool_starter(double deferral) {
  species_rules::Rule rule;
  rule.gate.start = species_rules::Choice<species_rules::Start>{species_rules::Start::cool, {}};
  rule.gate.night_limit_c = Estimate{14, 12, 16, {}};
  rule.gate.night_limit_spread_k = Estimate{2, 1, 3, {}};
  rule.seed.deferral_share = Estimate{deferral, deferral, deferral, {}};
  return rule;
}

const SeedBelief before{{0.6, 0.2, 0.75}, {0.8, 0.6, 0.95}};

TestReading reading(int sprouted, std::optional<double> at_c, double deferral, double ripe) {
  return read_test({today, true, {sprouted, 20}, at_c}, cool_starter(deferral), before, ripe);
}

TEST(SeedTest, SuitsTheSeedThatIsRipeAndDoesNotDefer) {
  EXPECT_NEAR(reading(10, 8.0, 0.0, 1.0).fit, 1.0, 0.05);
  EXPECT_NEAR(reading(10, 8.0, 0.25, 1.0).fit, 0.75 * reading(10, 8.0, 0.0, 1.0).fit, 1e-9);
  EXPECT_NEAR(reading(3, 8.0, 0.0, 0.5).fit, 0.5 * reading(3, 8.0, 0.0, 1.0).fit, 1e-9);
}

// Of seed a twentieth of which is ripe, 14 of 20 do not come up.
TEST(SeedTest, OutweighsUnripenessWhenMoreComesUpThanUnripeSeedBrings) {
  const TestReading said = reading(14, 8.0, 0.0, 0.05);
  EXPECT_GT(said.needs_no_ripening, 0.8);
  EXPECT_GT(said.fit, 0.8 * reading(14, 8.0, 0.0, 1.0).fit);
  EXPECT_EQ(reading(0, 8.0, 0.0, 0.05).needs_no_ripening, 0.0);
  EXPECT_EQ(reading(14, 8.0, 0.0, 1.0).needs_no_ripening, 0.0);
}

// What comes up in spite of warm nights speaks against the limit, not against unripeness.
TEST(SeedTest, ThatSuitedFewForItsTemperatureSaysNoMoreOfRipeness) {
  EXPECT_LT(reading(2, 30.0, 0.0, 0.5).needs_no_ripening,
            reading(14, 8.0, 0.0, 0.5).needs_no_ripening);
}

// All of it, three quarters, half: a test of which no temperature is written.
TEST(SeedTest, OfNoWrittenTemperatureSuitsThreeQuartersOfIt) {
  EXPECT_NEAR(reading(10, {}, 0.0, 1.0).fit, 0.75, 1e-9);
}

TEST(SeedTest, ThatSuitsNoneOfTheSeedChangesNothing) {
  for (const TestReading& said : {reading(0, 45.0, 0.0, 1.0), reading(0, 8.0, 0.0, 0.0)}) {
    EXPECT_NEAR(said.fit, 0.0, 1e-9);
    EXPECT_NEAR(said.after.alive.share, before.alive.share, 1e-9);
    EXPECT_NEAR(said.after.alive.low, before.alive.low, 1e-9);
    EXPECT_NEAR(said.after.alive.high, before.alive.high, 1e-9);
  }
}

TEST(SeedTest, AGoodCountRaisesAndABadOneLowersTheBelief) {
  EXPECT_GT(reading(19, 8.0, 0.0, 1.0).after.alive.share, before.alive.share);
  EXPECT_LT(reading(1, 8.0, 0.0, 1.0).after.alive.share, before.alive.share);
}

} // namespace
} // namespace nightsow::planner
