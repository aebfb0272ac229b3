#include "planner/answers/climate_report.hpp"

#include "planner/render/to_json.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <string>

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

TEST_P(ClimateReportOnBothHalves, TellsWhatWasRead) {
  const ClimateAnswer answer = climate_report(garden_, {});
  EXPECT_EQ(answer.readings.to, garden_.today);
  EXPECT_EQ(answer.readings.complete, 1.0);
  EXPECT_EQ(answer.files.at(0).file, "readings/invented.csv");
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
