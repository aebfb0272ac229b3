#include "planner/answers/seed_reasons.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace nightsow::planner {
namespace {

using support::day;

SeedState aged(double years, double alive) {
  SeedState seed;
  seed.age_years = years;
  seed.alive = alive;
  seed.alive_low = alive / 2;
  seed.alive_high = (1 + alive) / 2;
  seed.alive_next_year = alive / 2;
  return seed;
}

species_rules::Rule living(double half_life_years) {
  species_rules::Rule rule;
  rule.seed.half_life_years = species_rules::Estimate{half_life_years, 1, 40, {}};
  return rule;
}

bool says(const std::vector<Reason>& reasons, ReasonCode code) {
  return std::any_of(
      reasons.begin(), reasons.end(), [&](const Reason& reason) { return reason.code == code; });
}

TEST(SeedReasons, OfSeedOfUnknownAgeOnlyThatIsSaid) {
  const SeedReasons said = seed_reasons({}, living(2), {}, true);
  EXPECT_TRUE(said.reasons.empty());
  EXPECT_TRUE(says(said.risks, ReasonCode::seed_age_unknown));
  EXPECT_FALSE(seed_answer({}).alive);
}

TEST(SeedReasons, SeedKeepsFromAHalfLifeOfFiveYearsOn) {
  EXPECT_TRUE(
      says(seed_reasons({}, living(5), aged(1, 0.9), true).reasons, ReasonCode::seed_keeps));
  EXPECT_TRUE(
      says(seed_reasons({}, living(4.9), aged(1, 0.9), true).reasons, ReasonCode::seed_alive));
}

TEST(SeedReasons, FadingSeedIsSaidFirstWhereItIsSown) {
  const SeedReasons sown = seed_reasons({}, living(2), aged(2, 0.5), true);
  EXPECT_TRUE(sown.first);
  EXPECT_TRUE(says(sown.reasons, ReasonCode::seed_fading));
  const SeedReasons left = seed_reasons({}, living(2), aged(2, 0.5), false);
  EXPECT_FALSE(left.first);
  EXPECT_TRUE(says(left.reasons, ReasonCode::seed_fades_first));
}

TEST(SeedReasons, WhatIsGuessedIsARisk) {
  Packet packet;
  packet.harvested = DateRange{day("2025-01-01"), day("2025-12-31")};
  packet.harvest_guessed = true;
  SeedState seed = aged(1, 0.9);
  seed.store_known = false;
  const SeedReasons said = seed_reasons(packet, living(2), seed, true);
  EXPECT_TRUE(says(said.risks, ReasonCode::harvest_guessed));
  EXPECT_TRUE(says(said.risks, ReasonCode::store_unknown));
  const SeedReasons sure = seed_reasons({}, living(2), aged(1, 0.9), true);
  EXPECT_TRUE(sure.risks.empty());
}

TEST(SeedReasons, ATestThatSuitedLittleIsSaidToSayLittle) {
  SeedState seed = aged(1, 0.9);
  seed.test =
      SeedTest{{day("2026-02-01"), true, {3, 20}, 25.0}, little_fit, 1.0, 0.0, {0.8, 0.5, 0.9}};
  EXPECT_FALSE(says(seed_reasons({}, living(2), seed, true).risks, ReasonCode::test_says_little));
  seed.test->fit = little_fit - 0.01;
  const SeedReasons said = seed_reasons({}, living(2), seed, true);
  EXPECT_TRUE(says(said.risks, ReasonCode::test_says_little));
  EXPECT_TRUE(says(said.reasons, ReasonCode::seed_tested));
}

TEST(SeedReasons, TheAnswerHoldsTheSharesAndTheirRange) {
  SeedState seed = aged(1.26, 0.5);
  seed.ripe = false;
  seed.ripe_on = day("2026-05-01");
  const SeedAnswer answer = seed_answer(seed);
  ASSERT_TRUE(answer.alive);
  EXPECT_DOUBLE_EQ(answer.alive->mean, 0.5);
  EXPECT_DOUBLE_EQ(answer.alive->p10, 0.25);
  EXPECT_DOUBLE_EQ(answer.alive->p90, 0.75);
  EXPECT_DOUBLE_EQ(answer.age_years.value(), 1.3);
  EXPECT_EQ(answer.ripe_on, day("2026-05-01"));
  seed.ripe = true;
  EXPECT_FALSE(seed_answer(seed).ripe_on);
}

} // namespace
} // namespace nightsow::planner
