#include "planner/garden/what_came.hpp"

#include "tests/support/invented_journal.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using support::invented_count;
using support::invented_sowing;
using support::on;

/// One sowing, number 1, of 25 seeds.
Records records_of(std::vector<SeedlingCount> counts) {
  Records records;
  records.sowings.push_back(invented_sowing());
  records.sowings.front().id = 1;
  records.counts = std::move(counts);
  return records;
}

SeedlingCount dead(SeedlingCount count, int seedlings, DeathCause why) {
  count.dead = seedlings;
  count.why = why;
  return count;
}

TEST(WhatCame, CountsTheDeadAsCome) {
  const Records records =
      records_of({invented_count(1, "2026-03-20", 6),
                  dead(invented_count(1, "2026-03-30", 5), 3, DeathCause::damping_off)});
  const WhatCame told = what_came(records).front();
  EXPECT_EQ(told.came(), 8);
  EXPECT_EQ(told.came_by(on("2026-03-25")), 6);
  EXPECT_EQ(told.came_by(on("2026-03-10")), 0);
  EXPECT_EQ(told.dead.at(DeathCause::damping_off), 3);
}

TEST(WhatCame, NeverFallsAndNeverPassesTheSeedsSown) {
  const Records records = records_of({invented_count(1, "2026-03-20", 9),
                                      invented_count(1, "2026-03-30", 4),
                                      invented_count(1, "2026-04-10", 40)});
  const WhatCame told = what_came(records).front();
  ASSERT_EQ(told.looks.size(), 3U);
  EXPECT_EQ(told.looks[1].came, 9);
  EXPECT_EQ(told.looks[2].came, 25);
}

TEST(WhatCame, TellsASowingThatNobodyCountedFromOneInWhichNothingCame) {
  EXPECT_FALSE(what_came(records_of({})).front().counted());
  const Records counted = records_of({invented_count(1, "2026-03-20", 0)});
  EXPECT_TRUE(what_came(counted).front().counted());
  EXPECT_EQ(what_came(counted).front().came(), 0);
}

TEST(WhatCame, TakesFirstWaterFromAWateringWhereTheSowingHasNone) {
  Records records = records_of({});
  EXPECT_FALSE(what_came(records).front().first_water);
  records.waterings.push_back({2, 1, on("2026-03-09"), WateringKind::first_water});
  EXPECT_EQ(what_came(records).front().first_water, on("2026-03-09"));
  records.sowings.front().first_water = on("2026-03-02");
  EXPECT_EQ(what_came(records).front().first_water, on("2026-03-02"));
}

TEST(WhatCame, KeepsWhatIsBackAfterTheRestAndWhatWasPressed) {
  Records records = records_of({invented_count(1, "2026-05-01", 9)});
  EXPECT_FALSE(what_came(records).front().back);
  records.counts.push_back(invented_count(1, "2027-04-01", 7));
  records.counts.back().phase = CountPhase::back_after_rest;
  records.press_tests = {{5, 1, on("2026-06-01"), 2, 3}, {6, 1, on("2026-07-01"), 0, 1}};
  const WhatCame told = what_came(records).front();
  EXPECT_EQ(told.back, 7);
  EXPECT_EQ(told.firm, 2);
  EXPECT_EQ(told.soft, 4);
}

} // namespace
} // namespace nightsow::planner
