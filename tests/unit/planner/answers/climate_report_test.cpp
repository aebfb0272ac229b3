#include "planner/answers/climate_report.hpp"

#include "planner/answers/figures.hpp"
#include "planner/render/to_json.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

using climate::FindingKind;

climate::Finding finding(FindingKind kind, climate::Verdict verdict, Date date) {
  climate::Finding result;
  result.kind = kind;
  result.verdict = verdict;
  result.date = date;
  result.file = "readings/invented.csv";
  return result;
}

/// Nights from 7 to 17 °C, days 10 K above them; single nights depart by 2 K.
class ClimateReportOnBothHalves : public testing::TestWithParam<int> {
protected:
  [[nodiscard]] static support::InventedGarden invented() {
    support::InventedGarden garden;
    garden.climate.hottest_day_of_year = GetParam();
    return garden;
  }

  LoadedGarden garden_ = support::garden_of(invented());
};

TEST_P(ClimateReportOnBothHalves, TellsThePhasesOfTheSeasonInTheirOrder) {
  const PhasesLine phases = *climate_report(garden_, {}).phases;
  EXPECT_NEAR(days_between(phases.hottest_night, support::hottest_night_of(invented())), 0, 5);
  EXPECT_LT(phases.planning_begins, phases.hot_season_begins);
  EXPECT_LT(phases.hot_season_begins, phases.hottest_night);
  EXPECT_LT(phases.hottest_night, phases.hot_season_ends);
  EXPECT_EQ(phases.hot_season_ends + Days{1}, phases.cooling_limb_begins);
  EXPECT_LT(phases.cooling_limb_begins, phases.coldest_night);
  EXPECT_NEAR(phases.hottest_c, 17.0, 0.5);
  EXPECT_NEAR(phases.coldest_c, 7.0, 0.5);
}

TEST_P(ClimateReportOnBothHalves, TellsWhatAKelvinOnTheBenchIsWorth) {
  support::InventedGarden invented = ClimateReportOnBothHalves::invented();
  invented.packets = {"Bulbine annua, 40 seeds, harvested 2025-01"};
  const ClimateAnswer answer = climate_report(support::garden_of(invented), {});
  ASSERT_EQ(answer.kelvin.size(), 1U);
  const KelvinLine& line = answer.kelvin.front();
  ASSERT_TRUE(line.cooler && line.as_reckoned && line.warmer);
  // 4 to 19 days on measured series; the invented year is as steep as those.
  EXPECT_GE(days_between(*line.cooler, *line.warmer), 6);
  EXPECT_LE(days_between(*line.cooler, *line.warmer), 40);
  EXPECT_EQ(*line.days_later, days_between(*line.as_reckoned, *line.warmer));
}

TEST_P(ClimateReportOnBothHalves, PutsEveryBenchBesideTheStation) {
  support::InventedGarden invented = ClimateReportOnBothHalves::invented();
  planner::Bench sheltered = support::open_bench();
  sheltered.name = "tunnel";
  sheltered.shelter = "plastic tunnel";
  invented.benches = {support::bench_with("frame", 2.0, 4.0), sheltered};
  const ClimateAnswer answer = climate_report(support::garden_of(invented), {});
  ASSERT_EQ(answer.benches.size(), 3U);
  const BenchLine& frame = answer.benches[1];
  EXPECT_EQ(frame.source, "written_offset");
  EXPECT_EQ(frame.next_source, "station_as_is");
  EXPECT_NEAR(frame.nights.lowest_c, answer.benches[0].nights.lowest_c + 2.0, 0.11);
  EXPECT_EQ(answer.benches[2].source, "shelter_default");
  EXPECT_NEAR(answer.benches[2].night_k, 1.3, 0.01);
  EXPECT_GT(answer.benches[2].night_doubt_k, 0.0);
  EXPECT_LT(answer.benches[1].seed.value().lowest_c, answer.benches[1].nights.highest_c);
}

TEST_P(ClimateReportOnBothHalves, TellsTheSpreadOfSingleNights) {
  EXPECT_NEAR(climate_report(garden_, {}).night_sd_c, 2.0, 0.15);
}

TEST_P(ClimateReportOnBothHalves, TellsMonthsThatAreWarmAndHaveLongDaysTogether) {
  const ClimateAnswer answer = climate_report(garden_, {});
  ASSERT_EQ(answer.months.size(), 12U);
  const bool south = GetParam() == support::hottest_in_the_south;
  const MonthLine& summer = answer.months[south ? 0 : 6];
  const MonthLine& winter = answer.months[south ? 6 : 0];
  EXPECT_GT(*summer.night_c, *winter.night_c + 8.0);
  EXPECT_NEAR(*summer.smooth_night_c, *summer.night_c, 0.5);
  EXPECT_NEAR(*summer.day_c - *summer.night_c, 10.0, 0.3);
  EXPECT_GT(summer.day_length_hours, 13.5);
  EXPECT_LT(winter.day_length_hours, 10.2);
}

TEST_P(ClimateReportOnBothHalves, CountsHolesInTheNights) {
  for (const std::size_t i : {100U, 101U, 102U, 103U, 200U}) {
    garden_.station.set_night(i, climate::missing_c);
  }
  const ClimateAnswer answer = climate_report(garden_, {});
  EXPECT_EQ(answer.days_without_night, 5);
  EXPECT_EQ(answer.longest_hole_days, 4);
}

TEST_P(ClimateReportOnBothHalves, ListsTenFindingsIgnoredOnesFirstOrAllOfThem) {
  using enum climate::Verdict;
  for (int i = 0; i < 12; ++i) {
    garden_.findings.push_back(
        finding(FindingKind::files_differ, used, garden_.today - Days{1000 + i}));
  }
  garden_.findings.push_back(
      finding(FindingKind::night_above_day, ignored, garden_.today - Days{900}));
  const ClimateAnswer ten = climate_report(garden_, {});
  EXPECT_EQ(ten.findings.size(), 10U);
  EXPECT_EQ(ten.findings.front().kind, "night_above_day");
  EXPECT_EQ(ten.findings.at(1).date, garden_.today - Days{1000});
  EXPECT_EQ(climate_report(garden_, {.all_findings = true}).findings.size(), 13U);
}

TEST_P(ClimateReportOnBothHalves, CountsFindingsByKindAndVerdict) {
  using enum climate::Verdict;
  garden_.findings = {finding(FindingKind::impossible, ignored, garden_.today - Days{900}),
                      finding(FindingKind::impossible, ignored, garden_.today - Days{800}),
                      finding(FindingKind::files_differ, used, garden_.today - Days{700})};
  const ClimateAnswer answer = climate_report(garden_, {});
  ASSERT_EQ(answer.counts.size(), 2U);
  EXPECT_EQ(answer.counts[0].kind, "impossible");
  EXPECT_EQ(answer.counts[0].ignored, 2);
  EXPECT_EQ(answer.counts[1].used, 1);
}

TEST_P(ClimateReportOnBothHalves, SaysWhyThereAreNoPhases) {
  support::InventedGarden warm = invented();
  warm.climate = support::tropics();
  warm.climate.hottest_day_of_year = GetParam();
  const ClimateAnswer answer = climate_report(support::garden_of(warm), {});
  EXPECT_FALSE(answer.phases);
  EXPECT_EQ(support::value_in<std::string>(answer.no_phases, ReasonCode::no_cooling_limb, "why"),
            "swing_too_small");
}

TEST_P(ClimateReportOnBothHalves, TellsTheTrendAndHowMuchOfItIsUsed) {
  support::InventedGarden warming = invented();
  warming.climate.trend_k_per_year = 0.05;
  const TrendLine trend = *climate_report(support::garden_of(warming), {}).trend;
  EXPECT_NEAR(trend.night_k_per_decade, 0.5, 3.0 * trend.standard_error);
  EXPECT_GT(trend.used_k_per_decade, 0.0);
  EXPECT_LE(trend.used_k_per_decade, trend.night_k_per_decade);
}

TEST_P(ClimateReportOnBothHalves, TellsHowFarSingleNightsGo) {
  const std::vector<BandLine> bands = climate_report(garden_, {}).usual.bands;
  ASSERT_EQ(bands.size(), 12U);
  for (const BandLine& line : bands) {
    // 2 K of deviation: a tenth lies 2.6 K below the middle, a tenth as far above. The season
    // itself moves a little within a month.
    EXPECT_NEAR(line.night->p50_c - line.night->p10_c, 2.6, 0.7) << line.month;
    EXPECT_NEAR(line.night->p90_c - line.night->p50_c, 2.6, 0.7) << line.month;
    EXPECT_GT(line.day->p50_c, line.night->p50_c + 8.0);
  }
}

TEST_P(ClimateReportOnBothHalves, TellsTheQuartersOfTheSitesOwnYear) {
  const std::vector<QuarterLine> quarters = climate_report(garden_, {}).usual.quarters;
  ASSERT_EQ(quarters.size(), 4U);
  EXPECT_EQ(quarters[0].quarter, "hottest");
  EXPECT_EQ(quarters[3].quarter, "warming");
  for (const QuarterLine& line : quarters) {
    EXPECT_NEAR(line.night_sd_c, 2.0, 0.3) << line.quarter;
    EXPECT_NEAR(line.skewness, 0.0, 0.3) << line.quarter;
    EXPECT_LE(line.trend->low, line.trend->a_decade);
    EXPECT_GE(line.trend->high, line.trend->a_decade);
  }
}

TEST_P(ClimateReportOnBothHalves, TellsThatWarmingMakesCoolNightsLater) {
  support::InventedGarden warming = invented();
  warming.climate.trend_k_per_year = 0.1;
  const std::vector<GateTrendLine> gates =
      climate_report(support::garden_of(warming), {}).usual.gates;
  ASSERT_EQ(gates.size(), 1U); // no packets: 13 °C
  EXPECT_EQ(gates[0].limit_c, 13.0);
  EXPECT_TRUE(gates[0].genera.empty());
  EXPECT_GT(gates[0].holds->a_decade, 0.0);
  EXPECT_GT(gates[0].holds->low, 0.0);
}

TEST_P(ClimateReportOnBothHalves, TellsTheGatesOfTheKindsInHandOnceEach) {
  support::InventedGarden with_packets = invented();
  with_packets.packets = {"Bulbine annua, 40 seeds, harvested 2025-11",
                          "Bulbine mesembryanthoides, 20 seeds, harvested 2025-11"};
  const std::vector<GateTrendLine> gates =
      climate_report(support::garden_of(with_packets), {}).usual.gates;
  ASSERT_EQ(gates.size(), 1U);
  EXPECT_FALSE(gates[0].genera.empty());
}

TEST_P(ClimateReportOnBothHalves, DatesFrostInTheSeasonShown) {
  support::InventedGarden mild = invented();
  mild.climate.night_mean_c = 18.0;
  EXPECT_FALSE(climate_report(support::garden_of(mild), {}).usual.frost.first);
  support::InventedGarden cold = invented();
  cold.climate.night_mean_c = 6.0;
  const ClimateAnswer answer = climate_report(support::garden_of(cold), {});
  const FrostLine& frost = answer.usual.frost;
  EXPECT_EQ(frost.without, 0);
  EXPECT_GT(frost.first->p50, answer.phases->cooling_limb_begins);
  EXPECT_LT(frost.first->p50, answer.phases->coldest_night);
  EXPECT_GT(frost.last->p50, answer.phases->coldest_night);
  EXPECT_LE(frost.first->p10, frost.first->p90);
}

TEST_P(ClimateReportOnBothHalves, TellsHolesOfAMonthByTheirDates) {
  for (std::size_t i = 1000; i < 1045; ++i) {
    garden_.station.set_night(i, climate::missing_c);
  }
  const RecordDetail record = climate_report(garden_, {}).record;
  ASSERT_EQ(record.completeness.size(), 2U);
  ASSERT_EQ(record.completeness[0].long_holes.size(), 1U);
  EXPECT_EQ(record.completeness[0].long_holes[0].from, garden_.station.date_of(1000));
  EXPECT_EQ(record.completeness[0].long_holes[0].days, 45);
  EXPECT_TRUE(record.completeness[1].long_holes.empty());
}

TEST_P(ClimateReportOnBothHalves, TellsWeekendsThatAreMissing) {
  for (std::size_t i = 0; i < garden_.station.size(); ++i) {
    const date::weekday weekday{garden_.station.date_of(i)};
    if (weekday == date::Saturday || weekday == date::Sunday) {
      garden_.station.set_day(i, climate::missing_c);
    }
  }
  const RecordDetail record = climate_report(garden_, {}).record;
  EXPECT_FALSE(record.completeness[0].weekdays);
  EXPECT_EQ(record.completeness[1].weekdays->on, (std::vector<std::string>{"sat", "sun"}));
}

TEST_P(ClimateReportOnBothHalves, TellsSuspicionsOfTheWholeRecord) {
  garden_.suspicions = {{climate::SuspicionKind::whole_fahrenheit, 0.97}};
  const RecordDetail record = climate_report(garden_, {}).record;
  ASSERT_EQ(record.suspicions.size(), 1U);
  EXPECT_EQ(record.suspicions[0].kind, "whole_fahrenheit");
  EXPECT_EQ(record.suspicions[0].text, "Read in whole or half °F, so true to about 0.3 K");
}

TEST_P(ClimateReportOnBothHalves, TellsWhatIsInDoubtAboutEachLogger) {
  using enum climate::Verdict;
  climate::DailySeries logger{garden_.today - Days{9}, 10};
  logger.set_night(0, 12.0F);
  logger.set_night(9, 13.0F);
  garden_.bench_loggers["open bench"] = logger;
  for (int i = 0; i < 12; ++i) {
    garden_.logger_doubts["open bench"].findings.push_back(
        finding(FindingKind::spike, ignored, garden_.today - Days{100 + i}));
  }
  garden_.logger_doubts["open bench"].suspicions = {{climate::SuspicionKind::swapped, 0.8}};
  const ClimateAnswer answer = climate_report(garden_, {});
  EXPECT_TRUE(answer.findings.empty());
  ASSERT_EQ(answer.loggers.size(), 1U);
  const LoggerRecord& record = answer.loggers[0];
  EXPECT_EQ(record.bench, "open bench");
  EXPECT_EQ(record.from, garden_.today - Days{9});
  EXPECT_EQ(record.to, garden_.today);
  EXPECT_EQ(record.nights, 2);
  EXPECT_EQ(record.counts.at(0).ignored, 12);
  EXPECT_EQ(record.findings.size(), 10U);
  EXPECT_EQ(record.findings[0].kind, "spike");
  EXPECT_EQ(record.suspicions.at(0).kind, "swapped");
  EXPECT_EQ(climate_report(garden_, {.all_findings = true}).loggers.at(0).findings.size(), 12U);
}

TEST_P(ClimateReportOnBothHalves, OfNormalsAloneTellsNothingThatWasNotPutIn) {
  support::InventedGarden normals_only = invented();
  GardenFolder folder = support::folder_of(normals_only);
  const bool south = GetParam() == support::hottest_in_the_south;
  MonthlyNormals normals;
  for (int month = 0; month < 12; ++month) {
    const double summer = std::cos(2.0 * std::numbers::pi * (month - (south ? 0.5 : 6.5)) / 12.0);
    normals.night_c.push_back(12.0 + 5.0 * summer);
    normals.day_c.push_back(22.0 + 6.0 * summer);
  }
  folder.garden.monthly_normals = normals;
  folder.garden.readings.clear();
  folder.station = {};
  const ClimateAnswer answer = climate_report(as_of(folder, garden_.today), {});
  EXPECT_FALSE(answer.readings.from);
  EXPECT_EQ(answer.readings.seasons, 0);
  EXPECT_FALSE(answer.trend);
  EXPECT_TRUE(answer.usual.gates.empty());
  EXPECT_EQ(answer.months[3].night_c, rounded_tenth(normals.night_c[3]));
  EXPECT_EQ(answer.months[3].nights, 0);
  EXPECT_NEAR(days_between(answer.phases->hottest_night, hottest_night_of(invented())), 0, 40);
}

TEST_P(ClimateReportOnBothHalves, TellsWhatWasRead) {
  const ClimateAnswer answer = climate_report(garden_, {});
  EXPECT_EQ(answer.readings.to, garden_.today);
  EXPECT_EQ(answer.readings.complete, 1.0);
  EXPECT_EQ(answer.files.at(0).file, "readings/invented.csv");
}

TEST_P(ClimateReportOnBothHalves, ListsAForecastAsOne) {
  garden_.files.push_back({"coming.json", "JSON", {}, "°C", "", true});
  const ClimateAnswer answer = climate_report(garden_, {});
  EXPECT_FALSE(answer.files.at(0).forecast);
  EXPECT_TRUE(answer.files.at(1).forecast);
}

TEST_P(ClimateReportOnBothHalves, TellsAnotherSeasonWhenAsked) {
  const int season = climate_report(garden_, {}).season;
  const ClimateAnswer next = climate_report(garden_, {.all_findings = false, .season = season + 1});
  EXPECT_EQ(next.season, season + 1);
  EXPECT_GT(next.phases->hottest_night, garden_.today);
}

TEST_P(ClimateReportOnBothHalves, IsTheSameForTheSameCall) {
  EXPECT_EQ(to_json(climate_report(garden_, {})), to_json(climate_report(garden_, {})));
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         ClimateReportOnBothHalves,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

} // namespace
} // namespace nightsow::planner
