#include "planner/answers/nights.hpp"

#include "climate/base/problem.hpp"
#include "planner/answers/plan.hpp"
#include "planner/render/to_json.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

namespace nightsow::planner {
namespace {

using nightsow::support::fault;
using support::gives;
using support::value_in;

/// Nights fall from 17 to 7 °C, days lie 10 K above them, single nights depart by 2 K. Lachenalia
/// waits for 13.5, Bulbine for 13, Romulea for 12.
class NightsOnBothHalves : public testing::TestWithParam<int> {
protected:
  [[nodiscard]] static LoadedGarden garden(int days_after_hottest,
                                           std::vector<std::string> packets = {}) {
    support::InventedGarden garden;
    garden.climate.hottest_day_of_year = GetParam();
    garden.days_after_hottest = days_after_hottest;
    garden.packets = std::move(packets);
    return support::garden_of(garden);
  }

  [[nodiscard]] static GenusNights line(const LoadedGarden& garden, const std::string& genus) {
    return nights(garden, {.genera = {genus}}).genera.at(0);
  }
};

TEST_P(NightsOnBothHalves, AreNotCoolEnoughYet) {
  const GenusNights line = this->line(garden(50), "Bulbine");
  EXPECT_EQ(line.open, Open::no);
  EXPECT_EQ(line.limit_c, 13.0);
  EXPECT_EQ(line.day_limit_c, 25.0);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::gate_waits));
  EXPECT_GT(*line.holds.p50, *line.stirs.p50);
}

TEST_P(NightsOnBothHalves, AreCoolEnoughOnceTheyHaveHeld) {
  const GenusNights line = this->line(garden(140), "Bulbine");
  EXPECT_EQ(line.open, Open::yes);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::gate_open));
  EXPECT_EQ(line.holds.p10, line.holds.p90);
}

TEST_P(NightsOnBothHalves, AreUnknownOnStaleReadings) {
  support::InventedGarden old;
  old.climate.hottest_day_of_year = GetParam();
  old.days_after_hottest = 140;
  old.readings_end_before_today = 11;
  const GenusNights line = this->line(support::garden_of(old), "Bulbine");
  EXPECT_EQ(line.open, Open::unknown);
  EXPECT_EQ(line.reasons.front().code, ReasonCode::readings_stale);
}

TEST_P(NightsOnBothHalves, AreUnknownWhereMissingOnesCouldHaveBeenCool) {
  LoadedGarden holes = garden(110);
  for (std::size_t back = 2; back <= 40; ++back) {
    holes.station.set_night(holes.station.size() - back, climate::missing_c);
  }
  const GenusNights line = this->line(holes, "Bulbine");
  EXPECT_EQ(line.open, Open::unknown);
  EXPECT_EQ(value_in<int>(line.reasons, ReasonCode::nights_unknown, "missing"), 13);
}

TEST_P(NightsOnBothHalves, AreCountedOverTheLastSevenAndTheLastFourteen) {
  LoadedGarden counted = garden(60);
  for (std::size_t back = 1; back <= 14; ++back) {
    const bool cool = back == 2 || back == 5 || back == 9;
    counted.station.set_night(counted.station.size() - back, cool ? 12.0F : 12.1F);
  }
  const GenusNights line = this->line(counted, "Romulea");
  EXPECT_EQ(line.counted, 2);
  EXPECT_EQ(line.counted_of_14, 3);
  EXPECT_EQ(line.of, 7);
}

TEST_P(NightsOnBothHalves, AreAskedForEveryKindInHandThatWaits) {
  const NightsAnswer answer = nights(garden(60,
                                            {"Lachenalia mutabilis, 9 seeds",
                                             "Bulbine alooides, 9 seeds",
                                             "Bulbine torta, 9 seeds",
                                             "Stapelia grandiflora, 5 seeds",
                                             "Zzyzx"}),
                                     {});
  ASSERT_EQ(answer.genera.size(), 2U);
  EXPECT_EQ(answer.genera[0].genus, "Bulbine");
  EXPECT_EQ(answer.genera[1].genus, "Lachenalia");
  EXPECT_EQ(answer.without_gate, std::vector<std::string>{"Stapelia"});
}

TEST_P(NightsOnBothHalves, AreAskedForTheGeneraThatAreNamedAndNoOthers) {
  const NightsAnswer answer =
      nights(garden(60, {"Lachenalia mutabilis, 9 seeds"}), {.genera = {"Bulbine", "Stapelia"}});
  ASSERT_EQ(answer.genera.size(), 1U);
  EXPECT_EQ(answer.genera[0].genus, "Bulbine");
  EXPECT_EQ(answer.without_gate, std::vector<std::string>{"Stapelia"});
}

TEST_P(NightsOnBothHalves, AreToldForEachBenchThatHoldsTheKind) {
  support::InventedGarden two;
  two.climate.hottest_day_of_year = GetParam();
  two.benches = {support::open_bench(), support::bench_with("frame", 2.0, 2.0)};
  two.packets = {"Bulbine alooides, 9 seeds", "Bulbine torta, 9 seeds, on frame"};
  const NightsAnswer answer = nights(support::garden_of(two), {});
  ASSERT_EQ(answer.genera.size(), 2U);
  EXPECT_EQ(answer.genera[0].bench, "frame");
  EXPECT_EQ(answer.genera[1].bench, "open bench");
  EXPECT_GT(*answer.genera[0].holds.p50, *answer.genera[1].holds.p50);
}

TEST_P(NightsOnBothHalves, AreRefusedForAnUnknownGenusWithTheNearestOne) {
  const LoadedGarden here = garden(60);
  const auto said = [&](const std::string& genus) {
    return fault<UsageError>([&] { return nights(here, {.genera = {genus}}); });
  };
  EXPECT_NE(said("Bulbinne").find("did you mean Bulbine?"), std::string::npos) << said("Bulbinne");
  EXPECT_NE(said("Zzyzx").find("no rule for \"Zzyzx\""), std::string::npos) << said("Zzyzx");
}

TEST_P(NightsOnBothHalves, DoNotDecideInACoolSummer) {
  support::InventedGarden cool;
  cool.climate = support::cool_summers();
  cool.climate.hottest_day_of_year = GetParam();
  const GenusNights line = this->line(support::garden_of(cool), "Conophytum");
  EXPECT_FALSE(line.binds);
  EXPECT_EQ(line.open, Open::yes);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::start_without_gate));
}

TEST_P(NightsOnBothHalves, AreNeverCoolEnoughInTheTropics) {
  support::InventedGarden warm;
  warm.climate = support::tropics();
  warm.climate.hottest_day_of_year = GetParam();
  const GenusNights line = this->line(support::garden_of(warm), "Bulbine");
  EXPECT_EQ(line.open, Open::no);
  EXPECT_EQ(line.holds.never, 1.0);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::nights_never_cool));
  EXPECT_TRUE(gives(line.reasons, ReasonCode::cooling_could_help));
}

TEST_P(NightsOnBothHalves, AreOpenExactlyWhereThePlanDoesNotWait) {
  for (const int day : {45, 80, 95, 105, 115, 140}) {
    const LoadedGarden here = garden(day, {"Bulbine alooides, 9 seeds, harvested 300 days ago"});
    const bool open = line(here, "Bulbine").open == Open::yes;
    const bool waters = plan(here, {}).sowings.at(0).verdict == Verdict::water_now;
    EXPECT_EQ(open, waters) << day;
  }
}

TEST_P(NightsOnBothHalves, AreTheSameForTheSameCall) {
  const LoadedGarden here =
      garden(80, {"Bulbine alooides, 9 seeds", "Lachenalia mutabilis, 9 seeds"});
  EXPECT_EQ(to_json(nights(here, {})), to_json(nights(here, {})));
}

TEST_P(NightsOnBothHalves, OfAGenusAreThoseOfItsKindsInHand) {
  const auto of = [&](std::vector<std::string> packets) {
    std::vector<std::string> names;
    for (const GenusNights& line :
         nights(garden(50, std::move(packets)), {.genera = {"Moraea"}}).genera) {
      names.push_back(line.genus);
    }
    return names;
  };
  EXPECT_EQ(of({}), std::vector<std::string>{"Moraea"});
  EXPECT_EQ(of({"Albuca, 20 seeds"}), std::vector<std::string>{"Moraea"});
  EXPECT_EQ(of({"Moraea villosa, 20 seeds", "Moraea polystachya, 20 seeds"}),
            (std::vector<std::string>{"Moraea polystachya", "Moraea villosa"}));
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         NightsOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

} // namespace
} // namespace nightsow::planner
