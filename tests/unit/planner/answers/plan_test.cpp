#include "planner/answers/plan.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

using nightsow::support::fault;
using support::codes_of;
using support::garden_of;
using support::gives;
using support::InventedClimate;
using support::InventedGarden;
using support::not_now_of;
using support::sowing_of;
using support::value_in;

/// Nights fall from 17 to 7 °C, days lie 10 K above them, single nights depart by 2 K.
class PlanOnBothHalves : public testing::TestWithParam<int> {
protected:
  /// `packets` on a day so many after the hottest night.
  [[nodiscard]] static InventedGarden invented(int days_after_hottest,
                                               std::vector<std::string> packets) {
    InventedGarden garden;
    garden.climate.hottest_day_of_year = GetParam();
    garden.days_after_hottest = days_after_hottest;
    garden.packets = std::move(packets);
    return garden;
  }

  [[nodiscard]] static PlanAnswer plan_of(int days_after_hottest,
                                          std::vector<std::string> packets) {
    return plan(garden_of(invented(days_after_hottest, std::move(packets))), {});
  }

  [[nodiscard]] static PlanAnswer plan_in(InventedGarden garden, const InventedClimate& climate) {
    garden.climate = climate;
    garden.climate.hottest_day_of_year = GetParam();
    return plan(garden_of(garden), {});
  }

  using InventedClimate = support::InventedClimate;
};

const std::string bulbine = "Bulbine annua, 40 seeds, harvested 300 days ago";
const std::string lachenalia = "Lachenalia mutabilis, 40 seeds, harvested 300 days ago";
const std::string pachypodium = "Pachypodium bispinosum, 8 seeds, harvested 100 days ago";

// The list.

TEST_P(PlanOnBothHalves, PutsFirstWhatDiesIfItWaits) {
  const PlanAnswer answer = plan_of(50,
                                    {"Conophytum bilobum, 80 seeds, harvested 300 days ago",
                                     "Lachenalia mutabilis, 40 seeds, harvested 300 days ago",
                                     "Brunsvigia orientalis, 9 seeds, harvested 5 days ago",
                                     "Albuca spiralis, 30 seeds, harvested 300 days ago"});
  EXPECT_EQ(support::taxa_of(answer.sowings),
            (std::vector<std::string>{"Brunsvigia orientalis",
                                      "Albuca spiralis",
                                      "Lachenalia mutabilis",
                                      "Conophytum bilobum"}));
}

TEST_P(PlanOnBothHalves, ListsWhatItHasNoRuleForWithTheNearestName) {
  const PlanAnswer answer = plan_of(50, {"Canephytam bilobum, 9 seeds", "Zzyzx, 3 seeds", bulbine});
  const auto suggestion = [&](const char* taxon) {
    return value_in<std::string>(
        not_now_of(answer, taxon).reasons, ReasonCode::unknown_taxon, "suggestion");
  };
  EXPECT_EQ(suggestion("Canephytam bilobum"), "Conophytum");
  EXPECT_EQ(suggestion("Zzyzx"), "");
  EXPECT_EQ(answer.sowings.size(), 1U);
}

TEST_P(PlanOnBothHalves, SaysHowItReadAMisspeltName) {
  const Sowing line =
      sowing_of(plan_of(50, {"Lachenallia mutabilis, 20 seeds"}), "Lachenallia mutabilis");
  EXPECT_EQ(line.accepted, "Lachenalia mutabilis");
  EXPECT_EQ(value_in<std::string>(line.reasons, ReasonCode::spelling, "read_as"),
            "Lachenalia mutabilis");
}

TEST_P(PlanOnBothHalves, SaysWhichNameAnOlderOneHasNow) {
  const Sowing line =
      sowing_of(plan_of(50, {"Sarcocaulon vanderietiae, 9 seeds"}), "Sarcocaulon vanderietiae");
  EXPECT_EQ(line.rule, "Monsonia vanderietiae");
  EXPECT_EQ(value_in<std::string>(line.reasons, ReasonCode::synonym, "accepted"),
            "Monsonia vanderietiae");
}

TEST_P(PlanOnBothHalves, LeavesOutWhatWasNotAskedFor) {
  const LoadedGarden garden = garden_of(invented(-30, {bulbine, pachypodium}));
  const auto starts = [&](PlanRequest::Only only) {
    std::string text;
    for (const Sowing& line : plan(garden, {.only = only}).sowings) {
      text += line.start + ' ';
    }
    return text;
  };
  EXPECT_EQ(starts(PlanRequest::Only::cool), "cool ");
  EXPECT_EQ(starts(PlanRequest::Only::hot), "hot ");
  EXPECT_EQ(starts(PlanRequest::Only::all).size(), 9U);
}

TEST_P(PlanOnBothHalves, IsEmptyWithoutPackets) {
  const PlanAnswer answer = plan_of(50, {});
  EXPECT_TRUE(answer.sowings.empty());
  EXPECT_TRUE(answer.not_now.empty());
  EXPECT_FALSE(answer.preview);
  EXPECT_TRUE(gives(answer.warnings, ReasonCode::no_packets));
  EXPECT_FALSE(gives(plan_of(50, {bulbine}).warnings, ReasonCode::no_packets));
}

// Cool starters.

TEST_P(PlanOnBothHalves, WaitsForCoolNightsAndSaysHowManyThereWere) {
  const Sowing line = sowing_of(plan_of(60, {bulbine}), "Bulbine annua");
  EXPECT_EQ(line.verdict, Verdict::wait);
  EXPECT_TRUE(line.gate->binds);
  EXPECT_EQ(line.gate->needed, 10);
  EXPECT_EQ(value_in<int>(line.reasons, ReasonCode::gate_waits, "cool"), line.gate->counted);
  EXPECT_GT(*line.first_water.expected.p50, *line.gate->stirs.p50);
}

TEST_P(PlanOnBothHalves, GivesFirstWaterAsAConditionAndAWindow) {
  const PlanAnswer answer = plan_of(60, {"Conophytum bilobum, 40 seeds, harvested 300 days ago"});
  const FirstWater water = sowing_of(answer, "Conophytum bilobum").first_water;
  EXPECT_EQ(water.when->nights, 10);
  EXPECT_EQ(water.when->of, 14);
  EXPECT_EQ(water.when->at_or_under_c, 14.0);
  EXPECT_GE(*water.not_before, answer.today);
  EXPECT_LE(*water.expected.p10, *water.expected.p50);
  EXPECT_LE(*water.expected.p50, *water.expected.p90);
  EXPECT_GT(*water.no_later_than, *water.expected.p90);
}

TEST_P(PlanOnBothHalves, WatersOnceNightsHaveHeld) {
  const PlanAnswer answer = plan_of(140, {bulbine});
  const Sowing line = sowing_of(answer, "Bulbine annua");
  EXPECT_EQ(line.verdict, Verdict::water_now);
  EXPECT_EQ(line.sow_on, answer.today);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::gate_open));
}

TEST_P(PlanOnBothHalves, NeverExpectsFirstWaterBeforeToday) {
  const PlanAnswer answer =
      plan_of(140, {bulbine, lachenalia, "Haworthia truncata, 10 seeds, harvested 100 days ago"});
  for (const Sowing& line : answer.sowings) {
    EXPECT_GE(*line.first_water.expected.p50, answer.today) << line.taxon;
    EXPECT_GE(*line.first_water.expected.p50, *line.first_water.not_before) << line.taxon;
  }
}

TEST_P(PlanOnBothHalves, DoesNotWaterInAHotWeekHoweverCoolTheNights) {
  LoadedGarden garden = garden_of(invented(140, {bulbine}));
  for (std::size_t back = 1; back <= 7; ++back) {
    garden.station.set_day(garden.station.size() - back, 27.5F); // two over its limit of 25
  }
  const Sowing line = sowing_of(plan(garden, {}), "Bulbine annua");
  EXPECT_EQ(line.verdict, Verdict::wait);
  EXPECT_EQ(line.reasons.front().code, ReasonCode::hot_days);
  // The possible seasons know when it ends.
  ASSERT_TRUE(line.first_water.expected.p50);
  EXPECT_GT(*line.first_water.expected.p50, garden.today);
}

TEST_P(PlanOnBothHalves, LetsTheLimbAndMildDaysDecideWhereNightsDoNot) {
  const PlanAnswer answer =
      plan_in(invented(20, {"Conophytum bilobum, 80 seeds, harvested 300 days ago"}),
              support::cool_summers());
  const Sowing line = sowing_of(answer, "Conophytum bilobum");
  EXPECT_FALSE(line.gate->binds);
  EXPECT_FALSE(line.first_water.when);
  EXPECT_EQ(value_in<Date>(line.reasons, ReasonCode::start_without_gate, "limb_begins"),
            answer.phases->cooling_limb_begins);
  EXPECT_EQ(line.first_water.expected.p50, answer.phases->cooling_limb_begins);
}

TEST_P(PlanOnBothHalves, WaitsForRipeSeedWhereNightsDoNotDecide) {
  // 1200 °C d of warm dry storage ripen half of it in 80 days; more comes of a later day, when
  // more is ripe.
  const PlanAnswer answer =
      plan_in(invented(60, {"Lachenalia mutabilis, 40 seeds, harvested 10 days ago"}),
              support::cool_summers());
  const Sowing line = sowing_of(answer, "Lachenalia mutabilis");
  EXPECT_EQ(line.verdict, Verdict::wait);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::seed_not_ripe));
  EXPECT_TRUE(gives(line.reasons, ReasonCode::window_begins));
  EXPECT_GE(*line.first_water.expected.p50, answer.today + Days{60});
}

TEST_P(PlanOnBothHalves, TellsUnripeSeedInTheFridgeToBeKeptWarm) {
  for (const char* store : {"fridge 3C", "fridge 8C"}) {
    const PlanAnswer answer = plan_of(
        20,
        {std::string("Lachenalia mutabilis, 60 seeds, harvested 30 days ago, stored ") + store});
    const Sowing line = sowing_of(answer, "Lachenalia mutabilis");
    EXPECT_TRUE(gives(line.reasons, ReasonCode::keep_otherwise)) << store;
    EXPECT_EQ(line.keep.now, "warm_dry") << store;
  }
}

TEST_P(PlanOnBothHalves, ComparesTheWaysToKeepSeedMostPlantsFirst) {
  const Sowing line =
      sowing_of(plan_of(20, {"Lachenalia mutabilis, 60 seeds, harvested 200 days ago"}),
                "Lachenalia mutabilis");
  ASSERT_GE(line.routes.size(), 3U);
  EXPECT_EQ(line.route, line.routes.front().route);
  for (std::size_t i = 1; i < line.routes.size(); ++i) {
    EXPECT_GE(line.routes[i - 1].plants, line.routes[i].plants);
  }
}

TEST_P(PlanOnBothHalves, KeepsSomeOfAnIrreplaceablePacketForAnotherSeason) {
  InventedGarden garden = invented(60, {bulbine});
  LoadedGarden loaded = garden_of(garden);
  loaded.packets.front().irreplaceable = true;
  const Sowing line = sowing_of(plan(loaded, {}), "Bulbine annua");
  ASSERT_TRUE(line.keep_back);
  EXPECT_EQ(value_in<int>(line.reasons, ReasonCode::keep_some_back, "keep"), *line.keep_back);
  EXPECT_LT(*line.keep_back, *line.seeds / 2);
}

TEST_P(PlanOnBothHalves, WarnsOfColdThatSeedlingsDoNotStand) {
  InventedGarden garden = invented(60, {"Tylecodon paniculatus, 20 seeds, harvested 300 days ago"});
  garden.benches = {support::bench_with("open bench", -9.0, -9.0)};
  garden.benches.front().frost_care = "none";
  const PlanAnswer cold = plan(garden_of(garden), {});
  EXPECT_TRUE(gives(sowing_of(cold, "Tylecodon paniculatus").risks, ReasonCode::frost_ahead));
  EXPECT_TRUE(gives(cold.warnings, ReasonCode::frost_on_bench));
  garden.benches.front().frost_care = "in";
  EXPECT_FALSE(gives(plan(garden_of(garden), {}).warnings, ReasonCode::frost_on_bench));
}

TEST_P(PlanOnBothHalves, NamesNoSowingDayWhileTheGrowerIsAwayForTheWholeWindow) {
  InventedGarden garden = invented(60, {bulbine});
  const Date today = support::today_of(garden);
  garden.away = {{today, today + Days{300}}};
  const Sowing line = sowing_of(plan(garden_of(garden), {}), "Bulbine annua");
  EXPECT_FALSE(line.sow_on);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::last_chance));
}

TEST_P(PlanOnBothHalves, NeverComesToCoolNightsInTheTropicsAndSaysWhatCouldHelp) {
  const PlanAnswer answer = plan_in(invented(60, {bulbine}), support::tropics());
  const NotNow line = not_now_of(answer, "Bulbine annua");
  const auto seasons = value_in<int>(line.reasons, ReasonCode::nights_never_cool, "seasons");
  EXPECT_GE(seasons, 26);
  EXPECT_EQ(value_in<int>(line.reasons, ReasonCode::nights_never_cool, "never"), seasons);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::cooling_could_help));
  EXPECT_TRUE(gives(answer.warnings, ReasonCode::no_cooling_limb));
  EXPECT_FALSE(line.when);
}

TEST_P(PlanOnBothHalves, NeverComesToCoolNightsWhereWintersAreWarm) {
  const PlanAnswer answer =
      plan_in(invented(60, {bulbine}), {.night_mean_c = 22.0, .night_half_swing_k = 3.0});
  const NotNow line = not_now_of(answer, "Bulbine annua");
  const auto seasons = value_in<int>(line.reasons, ReasonCode::nights_never_cool, "seasons");
  EXPECT_EQ(value_in<int>(line.reasons, ReasonCode::nights_never_cool, "never"), seasons);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::cooling_could_help));
}

// Other starters.

TEST_P(PlanOnBothHalves, SowsFleshySeedTheDayItComes) {
  const PlanAnswer answer = plan_of(10, {"Brunsvigia josephinae, 6 seeds, harvested 3 days ago"});
  const Sowing line = sowing_of(answer, "Brunsvigia josephinae");
  EXPECT_EQ(line.verdict, Verdict::water_now);
  EXPECT_EQ(line.sow_on, answer.today);
  EXPECT_EQ(line.first_water.expected.p50, answer.today);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::fleshy_at_once));
  EXPECT_FALSE(line.keep.until);
}

TEST_P(PlanOnBothHalves, SowsHotStartersWithinTheHotSeason) {
  const PlanAnswer answer = plan_of(-80, {pachypodium});
  const Sowing line = sowing_of(answer, "Pachypodium bispinosum");
  EXPECT_EQ(line.verdict, Verdict::wait);
  EXPECT_LT(*line.first_water.expected.p50, answer.phases->cooling_limb_begins);
  EXPECT_LT(*line.first_water.no_later_than, answer.phases->cooling_limb_begins);
  EXPECT_EQ(line.reasons.front().code, ReasonCode::mat_needed);
}

TEST_P(PlanOnBothHalves, AsksForNoGateOfKindsThatStartInAnyMildSeason) {
  const Sowing line =
      sowing_of(plan_of(60, {"Haworthia truncata, 10 seeds"}), "Haworthia truncata");
  EXPECT_EQ(line.start, "any");
  EXPECT_FALSE(line.gate);
  EXPECT_EQ(line.verdict, Verdict::water_now);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::start_without_gate));
}

// Seed.

TEST_P(PlanOnBothHalves, SaysFirstThatSeedFadesAndHowManyMayCome) {
  const Sowing line = sowing_of(plan_of(60, {"Albuca spiralis, 30 seeds, harvested 400 days ago"}),
                                "Albuca spiralis");
  EXPECT_TRUE(line.seed.fading);
  EXPECT_EQ(line.reasons.front().code, ReasonCode::seed_fading);
  ASSERT_TRUE(line.expected);
  EXPECT_LT(line.expected->seedlings.mean, 15.0);
  EXPECT_LE(line.expected->plants.mean, line.expected->seedlings.mean);
}

TEST_P(PlanOnBothHalves, ExpectsNoNumberOfFadingSeedThatWasNotCounted) {
  const Sowing line =
      sowing_of(plan_of(60, {"Albuca spiralis, 0.2g, harvested 400 days ago"}), "Albuca spiralis");
  EXPECT_TRUE(gives(line.reasons, ReasonCode::seed_fading));
  EXPECT_FALSE(line.expected);
}

TEST_P(PlanOnBothHalves, WhatIsLostAndThePlantsSumToTheSeedsSown) {
  for (const Sowing& line : plan_of(60,
                                    {"Conophytum bilobum, 80 seeds, harvested 200 days ago",
                                     "Lachenalia mutabilis, 40 seeds, harvested 150 days ago",
                                     "Brunsvigia josephinae, 6 seeds, harvested 3 days ago",
                                     "Bulbine annua, 25 seeds"})
                                .sowings) {
    ASSERT_TRUE(line.expected) << line.taxon;
    const LostSeeds& lost = line.expected->losses;
    const double sum = lost.dead + lost.not_ripe + lost.nights_too_warm + lost.deferred +
                       lost.lost_wet + lost.dried + lost.heat + lost.frost + lost.too_late +
                       lost.rest + line.expected->plants.mean;
    EXPECT_NEAR(sum, *line.seeds, 0.6) << line.taxon; // each figure rounded to a tenth
    EXPECT_LE(line.expected->plants.p10, line.expected->plants.mean) << line.taxon;
    EXPECT_GE(line.expected->plants.p90, line.expected->plants.p10) << line.taxon;
  }
}

TEST_P(PlanOnBothHalves, AGerminationTestMovesWhatIsExpected) {
  const auto expected_after = [](std::optional<GerminationTest> test) {
    LoadedGarden garden =
        garden_of(invented(60, {"Lachenalia mutabilis, 40 seeds, harvested 150 days ago"}));
    garden.packets.front().tested = test;
    return plan(garden, {}).sowings.front().expected->seedlings.mean;
  };
  const GerminationTest none_of_forty{0, 40, {}, 14.0};
  const GerminationTest all_of_forty{40, 40, {}, 14.0};
  EXPECT_LT(expected_after(none_of_forty), 0.8 * expected_after({}));
  EXPECT_GT(expected_after(all_of_forty), expected_after({}));
}

TEST_P(PlanOnBothHalves, ATestInWarmthThatSuitsNoneOfTheSeedSaysNextToNothing) {
  const auto expected_after = [](std::optional<GerminationTest> test) {
    LoadedGarden garden =
        garden_of(invented(60, {"Lachenalia mutabilis, 40 seeds, harvested 150 days ago"}));
    garden.packets.front().tested = test;
    return plan(garden, {}).sowings.front().expected->seedlings.mean;
  };
  const GerminationTest warm{0, 40, {}, 30.0};
  EXPECT_NEAR(expected_after(warm), expected_after({}), 1.5);
}

TEST_P(PlanOnBothHalves, DoesNotSayThisSeasonOfFadingSeedThatHasMissedIt) {
  const PlanAnswer answer = plan_of(255,
                                    {"Albuca spiralis, 30 seeds, harvested 400 days ago",
                                     "Brunsvigia josephinae, 6 seeds, harvested 3 days ago"});
  const NotNow line = not_now_of(answer, "Albuca spiralis");
  EXPECT_TRUE(gives(line.reasons, ReasonCode::seed_fades_first));
  EXPECT_FALSE(gives(line.reasons, ReasonCode::seed_fading));
}

TEST_P(PlanOnBothHalves, SaysThatLongLivedSeedKeeps) {
  const PlanAnswer answer = plan_of(60, {"Conophytum bilobum, 80 seeds, harvested 1100 days ago"});
  const Sowing line = sowing_of(answer, "Conophytum bilobum");
  EXPECT_FALSE(line.seed.fading);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::seed_keeps));
}

TEST_P(PlanOnBothHalves, WarnsOfSeedWhoseAgeIsNotKnownOrGuessed) {
  const PlanAnswer answer = plan_of(
      60, {"Bulbine annua, 40 seeds", "Lachenalia mutabilis, 9 seeds, received 40 days ago"});
  EXPECT_TRUE(gives(sowing_of(answer, "Bulbine annua").risks, ReasonCode::seed_age_unknown));
  EXPECT_TRUE(gives(sowing_of(answer, "Lachenalia mutabilis").risks, ReasonCode::harvest_guessed));
}

TEST_P(PlanOnBothHalves, CountsPotsFromSeeds) {
  const How how = sowing_of(plan_of(60, {bulbine}), "Bulbine annua").how;
  EXPECT_EQ(how.seeds_per_pot, 8);
  EXPECT_EQ(how.pots, 5);
}

// The season.

TEST_P(PlanOnBothHalves, ShowsTheNextSeasonOfAPacketWhoseTimeHasPassed) {
  const PlanAnswer answer =
      plan_of(255, {bulbine, "Brunsvigia josephinae, 6 seeds, harvested 3 days ago"});
  const NotNow line = not_now_of(answer, "Bulbine annua");
  EXPECT_EQ(codes_of(line.reasons).substr(0, 25), "window_passed next_window");
  EXPECT_LT(*value_in<Date>(line.reasons, ReasonCode::window_passed, "no_later_than"),
            answer.today);
  EXPECT_GT(*line.when, answer.today + Days{100});
  EXPECT_FALSE(answer.preview);
}

TEST_P(PlanOnBothHalves, LooksAheadWhenEveryWindowHasPassed) {
  const PlanAnswer this_season = plan_of(60, {bulbine});
  const PlanAnswer ahead = plan_of(255, {bulbine});
  EXPECT_TRUE(ahead.preview);
  EXPECT_EQ(ahead.season, this_season.season + 1);
  EXPECT_EQ(value_in<int>(ahead.warnings, ReasonCode::season_over, "next"), ahead.season);
  EXPECT_GT(ahead.phases->hottest_night, ahead.today);
  EXPECT_EQ(sowing_of(ahead, "Bulbine annua").verdict, Verdict::wait);
}

TEST_P(PlanOnBothHalves, LooksAheadOnlyWhenItIsTheKindAskedForThatHasPassed) {
  const LoadedGarden garden = garden_of(invented(255, {bulbine}));
  EXPECT_TRUE(plan(garden, {.only = PlanRequest::Only::cool}).preview);
  EXPECT_FALSE(plan(garden, {.only = PlanRequest::Only::hot}).preview);
}

TEST_P(PlanOnBothHalves, LooksAheadFromTodayWhenASeasonLongPastIsAskedFor) {
  const LoadedGarden garden =
      garden_of(invented(60, {bulbine, "Brunsvigia josephinae, 6 seeds, harvested 3 days ago"}));
  const int present = plan(garden, {}).season;
  const PlanAnswer answer = plan(garden, {.season = present - 5});
  EXPECT_TRUE(answer.preview);
  EXPECT_EQ(answer.season, present);
  EXPECT_EQ(value_in<int>(answer.warnings, ReasonCode::season_over, "season"), present - 5);
  EXPECT_GT(*sowing_of(answer, "Bulbine annua").first_water.expected.p50, garden.today);
}

TEST_P(PlanOnBothHalves, PlansTheSeasonThatIsAskedFor) {
  const LoadedGarden garden = garden_of(invented(60, {bulbine}));
  const PlanAnswer next = plan(garden, {.season = plan(garden, {}).season + 1});
  EXPECT_GT(*sowing_of(next, "Bulbine annua").first_water.expected.p50, garden.today + Days{365});
}

// Readings.

TEST_P(PlanOnBothHalves, SaysStaleReadingsFirstAndGivesNoVerdictOnThem) {
  InventedGarden garden = invented(140, {bulbine});
  garden.readings_end_before_today = 11;
  const PlanAnswer answer = plan(garden_of(garden), {});
  const Sowing line = sowing_of(answer, "Bulbine annua");
  EXPECT_EQ(line.verdict, Verdict::unknown);
  EXPECT_EQ(line.reasons.front().code, ReasonCode::readings_stale);
  EXPECT_EQ(answer.warnings.front().code, ReasonCode::readings_stale);
}

TEST_P(PlanOnBothHalves, TrustsReadingsOfTenDaysAgo) {
  InventedGarden garden = invented(140, {bulbine});
  garden.readings_end_before_today = 10;
  const PlanAnswer answer = plan(garden_of(garden), {});
  EXPECT_EQ(sowing_of(answer, "Bulbine annua").verdict, Verdict::water_now);
  EXPECT_FALSE(gives(answer.warnings, ReasonCode::readings_stale));
}

TEST_P(PlanOnBothHalves, StillWaitsOnStaleReadingsBeforeTheLimbBegins) {
  InventedGarden garden = invented(10, {bulbine});
  garden.readings_end_before_today = 30;
  const PlanAnswer answer = plan(garden_of(garden), {});
  EXPECT_EQ(sowing_of(answer, "Bulbine annua").verdict, Verdict::wait);
}

TEST_P(PlanOnBothHalves, DoesNotWaterOnSuspectReadings) {
  LoadedGarden garden = garden_of(invented(140, {bulbine}));
  climate::Finding finding;
  finding.date = garden.today - Days{5};
  garden.findings.push_back(finding);
  const PlanAnswer answer = plan(garden, {});
  EXPECT_EQ(sowing_of(answer, "Bulbine annua").verdict, Verdict::unknown);
  EXPECT_TRUE(gives(sowing_of(answer, "Bulbine annua").reasons, ReasonCode::readings_suspect));
  EXPECT_TRUE(gives(answer.warnings, ReasonCode::readings_suspect));
}

/// The station's own readings as those of a logger on the garden's first bench, which go on to
/// today.
LoadedGarden with_logger_to_today(const InventedGarden& invented) {
  InventedGarden whole = invented;
  whole.readings_end_before_today = 0;
  LoadedGarden garden = garden_of(invented);
  garden.bench_loggers[garden.garden.benches.front().name] = garden_of(whole).station;
  return garden;
}

TEST_P(PlanOnBothHalves, TrustsTheBenchsOwnLoggerWhereTheStationEndedLongAgo) {
  InventedGarden garden = invented(140, {bulbine});
  garden.readings_end_before_today = 11;
  const PlanAnswer answer = plan(with_logger_to_today(garden), {});
  EXPECT_EQ(sowing_of(answer, "Bulbine annua").verdict, Verdict::water_now);
  EXPECT_FALSE(gives(answer.warnings, ReasonCode::readings_stale));
}

TEST_P(PlanOnBothHalves, StillSaysStaleWhereAnotherBenchHasNoLogger) {
  InventedGarden garden = invented(140, {bulbine, "Bulbine torta, 40 seeds, on frame"});
  garden.benches = {support::open_bench(), support::bench_with("frame", 0.0, 0.0)};
  garden.readings_end_before_today = 11;
  const PlanAnswer answer = plan(with_logger_to_today(garden), {});
  EXPECT_EQ(sowing_of(answer, "Bulbine annua").verdict, Verdict::water_now);
  EXPECT_EQ(sowing_of(answer, "Bulbine torta").verdict, Verdict::unknown);
  EXPECT_EQ(value_in<int>(answer.warnings, ReasonCode::readings_stale, "days"), 11);
}

TEST_P(PlanOnBothHalves, DoesNotWaterOnASuspectReadingOfTheBenchsLogger) {
  LoadedGarden garden = with_logger_to_today(invented(140, {bulbine}));
  EXPECT_EQ(sowing_of(plan(garden, {}), "Bulbine annua").verdict, Verdict::water_now);
  climate::Finding finding;
  finding.date = garden.today - Days{5};
  garden.logger_doubts["open bench"].findings = {finding};
  const PlanAnswer answer = plan(garden, {});
  const Sowing line = sowing_of(answer, "Bulbine annua");
  EXPECT_EQ(line.verdict, Verdict::unknown);
  EXPECT_EQ(value_in<int>(line.reasons, ReasonCode::readings_suspect, "logger"), 1);
  EXPECT_EQ(value_in<std::string>(answer.warnings, ReasonCode::readings_suspect, "bench"),
            "open bench");
}

TEST_P(PlanOnBothHalves, GivesNoVerdictWhereMissingNightsCouldHaveOpenedTheGate) {
  LoadedGarden garden = garden_of(invented(100, {lachenalia}));
  for (std::size_t back = 2; back <= 30; ++back) {
    garden.station.set_night(garden.station.size() - back, climate::missing_c);
  }
  const Sowing line = sowing_of(plan(garden, {}), "Lachenalia mutabilis");
  EXPECT_EQ(line.verdict, Verdict::unknown);
  EXPECT_TRUE(gives(line.reasons, ReasonCode::nights_unknown));
}

LoadedGarden with_last_days_only(const LoadedGarden& garden, int days) {
  LoadedGarden shorter = garden;
  const auto count = static_cast<std::size_t>(days);
  shorter.station = climate::DailySeries{garden.station.last() - Days{days - 1}, count};
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t from = garden.station.size() - count + i;
    shorter.station.set_night(i, garden.station.night_c()[from]);
    shorter.station.set_day(i, garden.station.day_c()[from]);
  }
  return shorter;
}

TEST_P(PlanOnBothHalves, WarnsWhenFewerThanFiveSeasonsStandBehindIt) {
  const LoadedGarden garden = garden_of(invented(60, {bulbine}));
  const PlanAnswer few = plan(with_last_days_only(garden, 4 * 366 + 61), {});
  const PlanAnswer enough = plan(with_last_days_only(garden, 5 * 366 + 70), {});
  EXPECT_EQ(value_in<int>(few.warnings, ReasonCode::few_seasons, "seasons"), 4);
  EXPECT_FALSE(gives(enough.warnings, ReasonCode::few_seasons));
  EXPECT_EQ(enough.readings.seasons, 5);
}

TEST_P(PlanOnBothHalves, SaysThatAShortRecordLeansOnMonthlyNormals) {
  LoadedGarden garden = with_last_days_only(garden_of(invented(60, {bulbine})), 4 * 366 + 61);
  EXPECT_FALSE(gives(plan(garden, {}).warnings, ReasonCode::leans_on_normals));
  garden.garden.monthly_normals = MonthlyNormals{std::vector(12, 10.0), std::vector(12, 20.0)};
  const PlanAnswer leans = plan(garden, {});
  EXPECT_EQ(value_in<double>(leans.warnings, ReasonCode::leans_on_normals, "years"), 4.2);
  // Four years of 10 K from end to end, and three of none.
  EXPECT_LT(leans.phases->nights_swing_c, 7.0);
}

TEST_P(PlanOnBothHalves, IsRefusedWithoutOneWholeSeason) {
  const LoadedGarden garden = garden_of(invented(60, {bulbine}));
  const LoadedGarden year = with_last_days_only(garden, 400);
  const std::string said = fault<InputError>([&] { return plan(year, {}); });
  EXPECT_NE(said.find("not one whole season"), std::string::npos) << said;
}

TEST_P(PlanOnBothHalves, IsMadeOnTheBenchOfThePacket) {
  InventedGarden garden =
      invented(60, {bulbine, "Bulbine torta, 40 seeds, harvested 300 days ago, on frame"});
  garden.benches = {support::open_bench(), support::bench_with("frame", 2.0, 2.0)};
  const PlanAnswer answer = plan(garden_of(garden), {});
  EXPECT_EQ(sowing_of(answer, "Bulbine annua").bench, "open bench");
  EXPECT_EQ(sowing_of(answer, "Bulbine torta").bench, "frame");
  EXPECT_GT(*sowing_of(answer, "Bulbine torta").first_water.expected.p50,
            *sowing_of(answer, "Bulbine annua").first_water.expected.p50 + Days{7});
}

TEST_P(PlanOnBothHalves, SowsDryOnADayTheGrowerHasFreeBeforeFirstWater) {
  InventedGarden garden = invented(60, {bulbine});
  garden.sowing_days = {"sat"};
  const Sowing line = sowing_of(plan(garden_of(garden), {}), "Bulbine annua");
  EXPECT_EQ(date::weekday{*line.sow_on}, date::Saturday);
  EXPECT_LE(*line.sow_on, *line.first_water.expected.p50);
  EXPECT_GT(*line.sow_on, *line.first_water.expected.p50 - Days{7});
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         PlanOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

} // namespace
} // namespace nightsow::planner
