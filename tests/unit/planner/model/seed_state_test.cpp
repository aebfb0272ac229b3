#include "planner/model/seed_state.hpp"

#include "species-rules/viability.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::planner {
namespace {

using nightsow::support::day;
using species_rules::Estimate;

const Date today = day("2026-11-15");
constexpr double days_a_year = 365.25;

/// Seed that lives two years at room temperature and ripens in 80 days of it.
species_rules::Rule two_years() {
  species_rules::Rule rule;
  rule.seed.half_life_years = Estimate{2.0, 1.0, 4.0, {}};
  rule.seed.after_ripening_c_d = Estimate{1200.0, 700.0, 2200.0, {}};
  rule.seed.after_ripening_base_c = Estimate{5.0, 5.0, 5.0, {}};
  return rule;
}

SeedState state_of(const std::string& packet) {
  return seed_state(support::packet_from(packet, today), two_years(), today);
}

SeedState harvested(int days_ago, const std::string& more = "") {
  return state_of("Bulbine, 40 seeds, harvested " + std::to_string(days_ago) + " days ago" + more);
}

TEST(SeedState, IsAsOldAsTheMiddleOfItsHarvest) {
  EXPECT_NEAR(*state_of("Bulbine, harvested 2025-11").age_years, 1.0, 0.003);
  EXPECT_NEAR(*state_of("Bulbine, harvested 2025").age_years, 1.37, 0.01);
}

TEST(SeedState, IsTakenAsFreshAndNeverFadingWhereTheAgeIsNotKnown) {
  const SeedState state = state_of("Bulbine, 40 seeds");
  EXPECT_FALSE(state.age_years);
  EXPECT_EQ(state.alive, 0.95);
  EXPECT_FALSE(state.fading());
}

TEST(SeedState, IsHalfAliveAfterItsHalfLifeOnTheShelf) {
  EXPECT_NEAR(harvested(0).alive, 0.95, 0.0005);
  EXPECT_NEAR(harvested(730).alive, 0.5, 0.001);
  EXPECT_NEAR(harvested(365).alive_next_year, 0.5, 0.001);
}

TEST(SeedState, AgesInEachStoreAtItsOwnPace) {
  const SeedState state = harvested(400, ", stored shelf 25C to 2026-05-09; fridge");
  // 210 days on the shelf to 9 May, then 190 in the fridge.
  const double years = 210 / days_a_year * species_rules::ageing_factor(25.0, 0.45) +
                       190 / days_a_year * species_rules::ageing_factor(5.0, 0.45);
  EXPECT_NEAR(state.alive, species_rules::share_alive(2.0, years), 1e-9);
}

TEST(SeedState, CountsNoStoreFromBeforeTheHarvest) {
  const SeedState late = harvested(100, ", stored indoors 30C to 2026-01-01; shelf");
  EXPECT_NEAR(late.alive, harvested(100, ", stored shelf").alive, 1e-12);
}

TEST(SeedState, StaysInTheLastStoreThatIsWritten) {
  const SeedState state = harvested(400, ", stored freezer to 2026-01-01");
  EXPECT_NEAR(state.alive, harvested(400, ", stored freezer").alive, 1e-12);
}

TEST(SeedState, FadesFromThreeInFiveAliveOn) {
  // 0.6 of it is alive after 617.995 days: probit 0.2533 of 1.645, two years.
  EXPECT_FALSE(harvested(617).fading());
  EXPECT_TRUE(harvested(618).fading());
}

TEST(SeedState, LosesByWaitingWhatDiesOfTheLivingSeedWithinAYear) {
  const SeedState state = harvested(365);
  EXPECT_NEAR(state.lost_by_waiting(), 1.0 - state.alive_next_year / state.alive, 1e-12);
  EXPECT_GT(state.lost_by_waiting(), harvested(365, ", stored fridge").lost_by_waiting());
}

TEST(SeedState, KnowsTheShareAliveFromTheShortestLifeToTheLongest) {
  const SeedState state = state_of("Bulbine, harvested 2025-06");
  EXPECT_LT(state.alive_low, state.alive);
  EXPECT_GT(state.alive_high, state.alive);
  EXPECT_NEAR(harvested(365).alive_low, 0.5, 0.001); // in a year, if it lives one only
}

// Harvest, half-life and store at their worst together are rarer than one in ten.
TEST(SeedState, IsLessUnsureThanAllThatIsUnsureAtItsWorst) {
  const SeedState whole_year = state_of("Bulbine, harvested 2025, stored unknown");
  const SeedState worst = state_of("Bulbine, harvested 2025-01-01, stored shelf");
  const SeedState best =
      state_of("Bulbine, harvested 2025-12-31, stored shelf to 2026-03-01; fridge");
  EXPECT_GT(whole_year.alive_low, worst.alive_low + 0.02);
  EXPECT_LT(whole_year.alive_high, best.alive_high);
  EXPECT_LT(whole_year.alive_low, whole_year.alive);
  EXPECT_GT(whole_year.alive_high, whole_year.alive);
}

TEST(SeedState, OfSomeDayOfAYearIsMoreUnsureThanOfOneDay) {
  const SeedState known = state_of("Bulbine, harvested 2025-07-02, stored shelf");
  const SeedState some_day = state_of("Bulbine, harvested 2025, stored shelf");
  EXPECT_GT(some_day.alive_high - some_day.alive_low, known.alive_high - known.alive_low);
}

TEST(SeedState, OfAnUnknownStoreMayBeAsOfEither) {
  const SeedState shelf = state_of("Bulbine, harvested 2025-07-02, stored shelf");
  const SeedState fridge =
      state_of("Bulbine, harvested 2025-07-02, stored shelf to 2025-08-31; fridge");
  const SeedState unknown = state_of("Bulbine, harvested 2025-07-02, stored unknown");
  EXPECT_LT(unknown.alive_low, fridge.alive_low);
  EXPECT_GT(unknown.alive_high, shelf.alive_high);
  EXPECT_GT(unknown.alive_low, shelf.alive_low); // the worst of half the cases is rarer
  EXPECT_LT(unknown.alive_high, fridge.alive_high);
}

// Of one harvest and store the range is that of the half-life, 1 to 4 years; and of ripeness that
// of the sum needed, 700 to 2200 °C d against 70 days at 15 over the base.
TEST(SeedState, OfOneHarvestAndStoreIsAsUnsureAsItsRule) {
  const SeedState state = harvested(365, ", stored shelf");
  EXPECT_NEAR(state.alive_low, species_rules::share_alive(1.0, 365 / days_a_year), 0.002);
  EXPECT_NEAR(state.alive_high, species_rules::share_alive(4.0, 365 / days_a_year), 0.002);
  const SeedState young = harvested(70, ", stored shelf");
  EXPECT_NEAR(young.ripe_share.low, species_rules::ripe_share(1050.0, 2200.0), 0.005);
  EXPECT_NEAR(young.ripe_share.high, species_rules::ripe_share(1050.0, 700.0), 0.005);
}

// A fridge at 5 °C ripens nothing by a base of 5, and much in two years by one of 2.
TEST(SeedState, RipenessOfSeedFromAFridgeIsAsUnsureAsTheBaseOfRipening) {
  const auto ripe_share = [](const Estimate& base_c) {
    species_rules::Rule rule = two_years();
    rule.seed.after_ripening_base_c = base_c;
    const Packet packet =
        support::packet_from("Bulbine, 40 seeds, harvested 700 days ago, stored fridge", today);
    return seed_state(packet, rule, today).ripe_share;
  };
  EXPECT_EQ(ripe_share(Estimate{5.0, 5.0, 5.0, {}}).high, 0.0);
  const auto unsure = ripe_share(Estimate{5.0, 2.0, 8.0, {}});
  EXPECT_EQ(unsure.share, 0.0);
  EXPECT_EQ(unsure.low, 0.0);
  EXPECT_GT(unsure.high, 0.5);
}

TEST(SeedState, IsRipeOnTheDayItsWarmDryStorageIsEnough) {
  // 15 °C over the base of 5 a day: 1200 °C d in 80 days.
  EXPECT_FALSE(harvested(79).ripe);
  EXPECT_TRUE(harvested(80).ripe);
  EXPECT_FALSE(harvested(80).ripe_on);
  EXPECT_EQ(harvested(30).ripe_on, today + Days{50});
  EXPECT_EQ(harvested(79).ripe_on, today + Days{1});
}

TEST(SeedState, NeverRipensInTheFridge) {
  const SeedState state = harvested(400, ", stored fridge");
  EXPECT_FALSE(state.ripe);
  EXPECT_FALSE(state.ripe_on);
}

TEST(SeedState, KeepsTheRipenessOfAnEarlierWarmStore) {
  EXPECT_TRUE(harvested(400, ", stored shelf to 2026-01-09; fridge").ripe);  // 90 days of shelf
  EXPECT_FALSE(harvested(400, ", stored shelf to 2025-12-20; fridge").ripe); // 70
}

TEST(SeedState, IsRipeWhenItsTestShowsSoThoughItsStorageWouldNot) {
  const auto tried = [](int sprouted) {
    Packet packet = support::packet_from("Bulbine, harvested 60 days ago, stored fridge", today);
    packet.tested = GerminationTest{sprouted, 20, day("2026-11-10"), 10.0};
    return seed_state(packet, two_years(), today);
  };
  EXPECT_LT(harvested(60, ", stored fridge").ripe_share.share, 0.05);
  const SeedState came_up = tried(14);
  EXPECT_GT(came_up.ripe_share.share, 0.9);
  EXPECT_TRUE(came_up.ripe);
  EXPECT_FALSE(came_up.ripe_on);
  EXPECT_NEAR(came_up.alive_and_ripe, came_up.alive, 0.1);
  EXPECT_FALSE(tried(0).ripe);
}

TEST(SeedState, IsRipeWhenItsRuleAsksForNoStorage) {
  species_rules::Rule rule = two_years();
  rule.seed.after_ripening_c_d.reset();
  const Packet packet = support::packet_from("Aloe, harvested 0 days ago", today);
  EXPECT_TRUE(seed_state(packet, rule, today).ripe);
}

TEST(SeedState, TakesAHarvestAfterTodayAsFresh) {
  const SeedState state = state_of("Bulbine, harvested 2027-03");
  EXPECT_EQ(state.age_years, 0.0);
  EXPECT_NEAR(state.alive, 0.95, 0.0005);
  EXPECT_EQ(state.ripe_on, today + Days{80});
}

} // namespace
} // namespace nightsow::planner
