#include "planner/answers/whatif.hpp"

#include "climate/base/problem.hpp"
#include "planner/render/to_json.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <memory>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

/// Nights fall from 17 to 7 °C, days lie 10 K above them, single nights depart by 2 K.
class WhatIfOnBothHalves : public testing::TestWithParam<int> {
protected:
  [[nodiscard]] static LoadedGarden garden(int days_after_hottest) {
    support::InventedGarden garden;
    garden.climate.hottest_day_of_year = GetParam();
    garden.days_after_hottest = days_after_hottest;
    garden.packets = {"Bulbine annua, 40 seeds, harvested 300 days ago",
                      "Conophytum bilobum, 80 seeds, harvested 300 days ago",
                      "Brunsvigia josephinae, 6 seeds, harvested 3 days ago",
                      "Zzyzx, 3 seeds"};
    return support::garden_of(garden);
  }
};

WhatIfAnswer warmer(const LoadedGarden& garden, double by_k) {
  return whatif(garden, {.changes = {Warmer{CelsiusDelta{by_k}}}, .plan = {}});
}

WhatIfAnswer mirror(const LoadedGarden& garden) {
  return whatif(garden, {.changes = {Mirror{}}, .plan = {}});
}

TEST_P(WhatIfOnBothHalves, WarmerNightsPutFirstWaterOff) {
  const WhatIfAnswer answer = warmer(garden(60), 1.0);
  // Smooth nights fall by 0.09 K a day where they pass 12: a kelvin is eleven days or more.
  EXPECT_NEAR(*support::line_of(answer.lines, "Bulbine annua").moved_days, 12, 6);
  EXPECT_EQ(support::line_of(answer.lines, "Brunsvigia josephinae").moved_days, 0);
}

TEST_P(WhatIfOnBothHalves, ColderNightsBringFirstWaterForward) {
  const WhatIfAnswer answer = warmer(garden(60), -1.0);
  EXPECT_NEAR(*support::line_of(answer.lines, "Bulbine annua").moved_days, -12, 6);
}

TEST_P(WhatIfOnBothHalves, MuchWarmerNightsAreNeverCoolEnough) {
  const WhatIfLine line = support::line_of(warmer(garden(60), 12.0).lines, "Bulbine annua");
  EXPECT_EQ(line.before.list, "sowings");
  EXPECT_EQ(line.after.list, "not_now");
  EXPECT_FALSE(line.moved_days);
}

TEST_P(WhatIfOnBothHalves, NoWarmerIsNoChange) {
  const WhatIfAnswer answer = warmer(garden(60), 0.0);
  for (const WhatIfLine& line : answer.lines) {
    EXPECT_EQ(line.before.verdict, line.after.verdict);
    EXPECT_EQ(line.moved_days.value_or(0), 0);
  }
}

TEST_P(WhatIfOnBothHalves, TheMirrorMovesNothingAsADistanceFromToday) {
  for (const int day : {20, 60, 100, 140}) {
    const WhatIfAnswer answer = mirror(garden(day));
    EXPECT_EQ(days_between(answer.today_before, answer.today_after), mirror_days);
    for (const WhatIfLine& line : answer.lines) {
      EXPECT_EQ(line.before.list, line.after.list) << line.taxon;
      EXPECT_EQ(line.before.verdict, line.after.verdict) << line.taxon;
      EXPECT_LE(std::abs(line.moved_days.value_or(0)), 1) << line.taxon;
    }
  }
}

TEST_P(WhatIfOnBothHalves, ChangesAddUp) {
  const LoadedGarden here = garden(60);
  const WhatIfAnswer twice =
      whatif(here, {.changes = {Warmer{CelsiusDelta{0.5}}, Warmer{CelsiusDelta{0.5}}}, .plan = {}});
  EXPECT_EQ(twice.changes.size(), 2U);
  EXPECT_EQ(support::line_of(twice.lines, "Bulbine annua").moved_days,
            support::line_of(warmer(here, 1.0).lines, "Bulbine annua").moved_days);
}

TEST_P(WhatIfOnBothHalves, WhatMovesMostStandsFirst) {
  const WhatIfAnswer answer = warmer(garden(60), 2.0);
  int before = 1000;
  for (const WhatIfLine& line : answer.lines) {
    if (line.before.list == line.after.list) {
      EXPECT_LE(std::abs(line.moved_days.value_or(0)), before) << line.taxon;
      before = std::abs(line.moved_days.value_or(0));
    }
  }
}

TEST_P(WhatIfOnBothHalves, HoldsEveryPacketOfThePlan) {
  EXPECT_EQ(warmer(garden(60), 1.0).lines.size(), 4U);
}

TEST_P(WhatIfOnBothHalves, IsTheSameForTheSameCall) {
  const LoadedGarden here = garden(60);
  EXPECT_EQ(to_json(warmer(here, 1.0)), to_json(warmer(here, 1.0)));
}

TEST_P(WhatIfOnBothHalves, AHigherLimitOfARuleBringsFirstWaterForward) {
  const LoadedGarden here = garden(60);
  const WhatIfAnswer answer =
      whatif(here, {.changes = {OneRuleValue{"Bulbine", "night_limit_c", "14"}}, .plan = {}});
  // A kelvin of the limit is worth what a kelvin of the nights is.
  EXPECT_NEAR(*support::line_of(answer.lines, "Bulbine annua").moved_days, -12, 6);
  EXPECT_EQ(support::line_of(answer.lines, "Conophytum bilobum").moved_days, 0);
  EXPECT_EQ(answer.changes.front().what, "Bulbine.night_limit_c=14");
}

TEST_P(WhatIfOnBothHalves, ARuleValueIsCheckedAsAnOverrideIs) {
  const LoadedGarden here = garden(60);
  for (const OneRuleValue& wrong : {OneRuleValue{"Bulbine", "night_limit_c", "99"},
                                    OneRuleValue{"Bulbine", "night_limit", "12"},
                                    OneRuleValue{"Bulbine", "start", "12"},
                                    OneRuleValue{"Bulbina", "night_limit_c", "12"}}) {
    EXPECT_THROW(static_cast<void>(apply(wrong, here)), UsageError) << wrong.field;
  }
}

TEST_P(WhatIfOnBothHalves, ABenchMustBeOneOfTheGardens) {
  EXPECT_THROW(static_cast<void>(apply(OnBench{"nowhere"}, garden(60))), UsageError);
}

TEST_P(WhatIfOnBothHalves, TheSamePlaceIsNoChange) {
  const LoadedGarden here = garden(60);
  const auto place = std::make_shared<const LoadedGarden>(here);
  const WhatIfAnswer answer = whatif(here, {.changes = {OtherPlace{place}}, .plan = {}});
  EXPECT_EQ(answer.totals.moved, 0);
  EXPECT_EQ(answer.totals.change_side, 0);
  EXPECT_EQ(answer.totals.plants_before, answer.totals.plants_after);
}

TEST_P(WhatIfOnBothHalves, AWarmerPlaceIsAsWarmerNights) {
  const LoadedGarden here = garden(60);
  const auto place = std::make_shared<const LoadedGarden>(apply(Warmer{CelsiusDelta{1.0}}, here));
  const WhatIfAnswer there = whatif(here, {.changes = {OtherPlace{place}}, .plan = {}});
  const WhatIfAnswer warm = warmer(here, 1.0);
  for (const WhatIfLine& line : warm.lines) {
    EXPECT_EQ(support::line_of(there.lines, line.taxon).moved_days, line.moved_days) << line.taxon;
  }
}

TEST_P(WhatIfOnBothHalves, OtherPacketsStandBesideThoseInHand) {
  const LoadedGarden here = garden(60);
  std::vector<Packet> some{here.packets.front()};
  some.front().id = "another";
  const WhatIfAnswer answer = whatif(here, {.changes = {OtherPackets{"file", some}}, .plan = {}});
  EXPECT_EQ(answer.lines.size(), here.packets.size() + 1);
  for (const WhatIfLine& line : answer.lines) {
    EXPECT_EQ(line.before.list.empty(), line.packet == "another");
    EXPECT_EQ(line.after.list.empty(), line.packet != "another");
  }
}

TEST_P(WhatIfOnBothHalves, ASweepIsOneWhatIfForEachValue) {
  const LoadedGarden here = garden(60);
  const std::vector<double> by_k{-1.0, 0.0, 1.0};
  const SweepAnswer sweep = whatif_sweep(here, {}, by_k);
  ASSERT_EQ(sweep.rows.size(), by_k.size());
  for (std::size_t i = 0; i < by_k.size(); ++i) {
    const WhatIfAnswer one = warmer(here, by_k[i]);
    for (const SweepLine& line : sweep.rows[i].lines) {
      const WhatIfSide& after = support::line_of(one.lines, line.taxon).after;
      EXPECT_EQ(line.side.expected.p50, after.expected.p50) << line.taxon << by_k[i];
      EXPECT_EQ(line.side.plants, after.plants) << line.taxon << by_k[i];
    }
    EXPECT_EQ(sweep.rows[i].plants, one.totals.plants_after);
  }
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         WhatIfOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

} // namespace
} // namespace nightsow::planner
