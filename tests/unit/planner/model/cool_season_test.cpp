#include "planner/model/cool_season.hpp"

#include "tests/support/invented_bench.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using support::bench_of;
using support::InventedBench;

const climate::NightLimit at_11{.at_or_under = Celsius{11.0}};

/// Nights fall from 17 to 7 °C without weather, 0.08 K a day where they pass 11: 103 days after the
/// hottest. `holds` is met with the tenth of them.
class GateOnBothHalves : public testing::TestWithParam<int> {
protected:
  [[nodiscard]] static LoadedGarden garden(int days_after_hottest) {
    return support::garden_of(
        {.climate = {.hottest_day_of_year = GetParam()}, .days_after_hottest = days_after_hottest});
  }

  [[nodiscard]] static GateOutlook gate(const LoadedGarden& garden) {
    const InventedBench here = bench_of(garden);
    return gate_outlook(here.climate, here.bench_season(), at_11);
  }

  static void set_last_nights(LoadedGarden& garden, std::size_t count, float night_c) {
    for (std::size_t back = 1; back <= count; ++back) {
      garden.station.set_night(garden.station.size() - back, night_c);
    }
  }
};

TEST_P(GateOnBothHalves, IsShutWhileNightsAreWarm) {
  const GateOutlook early = gate(garden(90));
  EXPECT_FALSE(early.opened);
  EXPECT_FALSE(early.cool_now);
  EXPECT_EQ(early.last_14.cool, 0);
  EXPECT_TRUE(early.binding.binds);
}

TEST_P(GateOnBothHalves, CountsTheNightsSoFar) {
  const GateOutlook gate = this->gate(garden(107));
  EXPECT_GT(gate.last_14.cool, 0);
  EXPECT_LT(gate.last_14.cool, climate::holds_nights);
  EXPECT_EQ(gate.last_14.of, 14);
  EXPECT_EQ(gate.last_7.of, 7);
  EXPECT_FALSE(gate.opened);
}

TEST_P(GateOnBothHalves, IsOpenOnceTenOfFourteenNightsAreCool) {
  const GateOutlook late = gate(garden(120));
  EXPECT_TRUE(late.opened);
  EXPECT_TRUE(late.cool_now);
  EXPECT_EQ(late.last_14.cool, 14);
  EXPECT_FALSE(late.again);
}

TEST_P(GateOnBothHalves, IsExpectedAgainAfterNightsTurnWarmOnceMore) {
  LoadedGarden relapsed = garden(125);
  set_last_nights(relapsed, 5, 16.0F);
  const GateOutlook gate = this->gate(relapsed);
  EXPECT_TRUE(gate.opened);
  EXPECT_FALSE(gate.cool_now);
  ASSERT_TRUE(gate.again);
  EXPECT_GT(*gate.again->p50, relapsed.today);
  EXPECT_LE(*gate.again->p50, relapsed.today + Days{14});
}

TEST_P(GateOnBothHalves, IsInDoubtWhenMissingNightsCouldHaveOpenedIt) {
  LoadedGarden holes = garden(112);
  set_last_nights(holes, 6, climate::missing_c);
  holes.station.set_night(holes.station.size() - 1, 10.5F);
  const GateOutlook gate = this->gate(holes);
  EXPECT_TRUE(gate.doubtful);
  EXPECT_FALSE(gate.opened);
  EXPECT_EQ(gate.last_14.missing, 5);
}

TEST_P(GateOnBothHalves, IsNotInDoubtWhenMissingNightsDoNotMatter) {
  LoadedGarden holes = garden(80);
  set_last_nights(holes, 6, climate::missing_c);
  holes.station.set_night(holes.station.size() - 1, 13.0F);
  EXPECT_FALSE(gate(holes).doubtful);
}

TEST_P(GateOnBothHalves, StaysOpenWhileTenCoolNightsOfFourteenAreSeen) {
  LoadedGarden holes = garden(140);
  set_last_nights(holes, 5, climate::missing_c);
  holes.station.set_night(holes.station.size() - 1, 9.0F);
  const GateOutlook gate = this->gate(holes);
  EXPECT_EQ(gate.last_14.missing, 4);
  EXPECT_TRUE(gate.cool_now);
  EXPECT_FALSE(gate.doubtful);
}

TEST_P(GateOnBothHalves, IsInDoubtOnceOpenedWhenMissingNightsMakeTheTen) {
  LoadedGarden holes = garden(140);
  set_last_nights(holes, 6, climate::missing_c);
  holes.station.set_night(holes.station.size() - 1, 9.0F);
  const GateOutlook gate = this->gate(holes);
  EXPECT_TRUE(gate.opened);
  EXPECT_FALSE(gate.cool_now);
  EXPECT_TRUE(gate.doubtful);
}

MildOutlook mild(const LoadedGarden& garden, double day_limit_c) {
  return mild_outlook(bench_of(garden).bench_season(), Celsius{day_limit_c});
}

TEST_P(GateOnBothHalves, IsMildOnceTheLimbHasBegunAndDaysAreMildToo) {
  EXPECT_FALSE(mild(garden(34), 30.0).mild_now); // before the limb, which begins after 37 days
  EXPECT_TRUE(mild(garden(40), 30.0).mild_now);
  EXPECT_FALSE(mild(garden(40), 25.0).mild_now); // days of 25.8
  EXPECT_TRUE(mild(garden(60), 25.0).mild_now);
}

TEST_P(GateOnBothHalves, SaysWhenTooFewMaximaAreThereToTellMildDays) {
  LoadedGarden holes = garden(60);
  EXPECT_FALSE(mild(holes, 25.0).day_limit_left_out);
  for (std::size_t back = 1; back <= 8; ++back) {
    holes.station.set_day(holes.station.size() - back, climate::missing_c);
  }
  EXPECT_TRUE(mild(holes, 25.0).day_limit_left_out);
  EXPECT_TRUE(mild(holes, 25.0).mild_now);
}

TEST_P(GateOnBothHalves, IsExpectedToBeMildWithTheLimbWhereDaysDoNotMatter) {
  const LoadedGarden early = garden(10);
  const MildOutlook outlook = mild(early, 35.0);
  EXPECT_NEAR(days_between(early.today, *outlook.days.p50), 27, 2);
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         GateOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

} // namespace
} // namespace nightsow::planner
