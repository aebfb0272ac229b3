#include "climate/base/problem.hpp"
#include "planner/answers/nights.hpp"
#include "planner/render/to_json.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

using nightsow::support::fault;

/// Nights fall from 17 to 7 °C, days lie 10 K above them.
class PastNightsOnBothHalves : public testing::TestWithParam<int> {
protected:
  [[nodiscard]] static support::InventedGarden invented() {
    support::InventedGarden garden;
    garden.climate.hottest_day_of_year = GetParam();
    garden.packets = {"Bulbine alooides, 9 seeds", "Stapelia grandiflora, 9 seeds"};
    return garden;
  }

  [[nodiscard]] static LoadedGarden garden() { return support::garden_of(invented()); }
};

TEST_P(PastNightsOnBothHalves, TellEverySeasonOldestFirst) {
  const PastGate gate = past_nights(garden(), {}).gates.at(0);
  EXPECT_EQ(gate.usable_seasons, 28);
  EXPECT_EQ(gate.seasons.size(), 28U);
  EXPECT_TRUE(std::is_sorted(
      gate.seasons.begin(),
      gate.seasons.end(),
      [](const PastSeasonDates& a, const PastSeasonDates& b) { return a.season < b.season; }));
}

TEST_P(PastNightsOnBothHalves, StirBeforeTheyHold) {
  const PastGate gate = past_nights(garden(), {}).gates.at(0);
  for (const PastSeasonDates& season : gate.seasons) {
    ASSERT_TRUE(season.usable) << season.season;
    EXPECT_LE(*season.stirs, *season.holds) << season.season;
    EXPECT_LE(*season.stirs, *season.settles) << season.season;
  }
}

TEST_P(PastNightsOnBothHalves, AreToldForKindsInHandThatWait) {
  const PastNightsAnswer answer = past_nights(garden(), {});
  ASSERT_EQ(answer.gates.size(), 1U);
  EXPECT_EQ(answer.gates[0].genus, "Bulbine");
}

TEST_P(PastNightsOnBothHalves, AreToldForALimitOfTheGrowersOwn) {
  const PastNightsAnswer answer =
      past_nights(garden(), {.genera = {"Bulbine"}, .limit_c = 13.0, .day_limit_c = 25.0});
  ASSERT_EQ(answer.gates.size(), 1U);
  EXPECT_EQ(answer.gates[0].genus, "");
  EXPECT_EQ(answer.gates[0].limit_c, 13.0);
  EXPECT_EQ(answer.gates[0].day_limit_c, 25.0);
  EXPECT_EQ(answer.gates[0].of, 7);
}

TEST_P(PastNightsOnBothHalves, HoldLaterForALowerLimit) {
  const LoadedGarden here = garden();
  const auto holds = [&](double limit_c) {
    return *past_nights(here, {.genera = {}, .limit_c = limit_c, .day_limit_c = {}})
                .gates.at(0)
                .seasons.front()
                .holds;
  };
  EXPECT_LT(holds(13.0), holds(11.0));
}

TEST_P(PastNightsOnBothHalves, CountTheSeasonsInWhichTheyNeverHeld) {
  const PastGate gate =
      past_nights(garden(), {.genera = {}, .limit_c = 0.0, .day_limit_c = {}}).gates.at(0);
  EXPECT_EQ(gate.never, gate.usable_seasons);
  EXPECT_FALSE(gate.seasons.front().holds);
  EXPECT_TRUE(gate.binds);
}

TEST_P(PastNightsOnBothHalves, AreUnknownInASeasonWhereMissingNightsCouldHaveMattered) {
  LoadedGarden holes = garden();
  const Date held = *past_nights(holes, {}).gates.at(0).seasons.at(3).holds;
  for (int back = 1; back <= 6; ++back) {
    holes.station.set_night(*holes.station.index_of(held - Days{back}), climate::missing_c);
  }
  const PastSeasonDates season = past_nights(holes, {}).gates.at(0).seasons.at(3);
  EXPECT_FALSE(season.usable);
  EXPECT_EQ(std::count(season.unknown.begin(), season.unknown.end(), "holds"), 1);
}

TEST_P(PastNightsOnBothHalves, AreCountedByYearsWhereThereIsNoCoolingLimb) {
  support::InventedGarden warm = invented();
  warm.climate = support::tropics();
  warm.climate.hottest_day_of_year = GetParam();
  const PastGate gate = past_nights(support::garden_of(warm), {}).gates.at(0);
  EXPECT_GE(gate.usable_seasons, 26);
  EXPECT_EQ(gate.never, gate.usable_seasons);
}

TEST_P(PastNightsOnBothHalves, AreRefusedForAnUnknownGenus) {
  const LoadedGarden here = garden();
  const std::string said =
      fault<UsageError>([&] { return past_nights(here, {.genera = {"Lachenallia"}}); });
  EXPECT_NE(said.find("did you mean Lachenalia?"), std::string::npos) << said;
}

TEST_P(PastNightsOnBothHalves, AreTheSameForTheSameCall) {
  const LoadedGarden here = garden();
  EXPECT_EQ(to_json(past_nights(here, {})), to_json(past_nights(here, {})));
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         PastNightsOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

} // namespace
} // namespace nightsow::planner
