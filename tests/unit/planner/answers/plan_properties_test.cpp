#include "planner/answers/plan.hpp"
#include "planner/garden/change.hpp"
#include "planner/render/to_json.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <tuple>

namespace nightsow::planner {
namespace {

using support::InventedGarden;

// What must hold of a plan whatever it says, on several days of the year and both halves of the
// Earth.

InventedGarden mixed_garden(int hottest_day_of_year, int days_after_hottest) {
  InventedGarden garden;
  garden.climate.hottest_day_of_year = hottest_day_of_year;
  garden.days_after_hottest = days_after_hottest;
  garden.benches = {support::open_bench(), support::bench_with("frame", 2.0, 4.0)};
  garden.mats = {support::mat_with(8.0, 28.0)};
  garden.sowing_days = {"sat", "sun"};
  garden.packets = {"Bulbine annua, 40 seeds, harvested 300 days ago",
                    "Lachenalia mutabilis, 30-60 seeds, received 100 days ago, on frame",
                    "Albuca spiralis, 30 seeds, harvested 400 days ago",
                    "Conophytum bilobum, ~80 seeds, harvested 1100 days ago, stored fridge",
                    "Haworthia truncata, 10 seeds",
                    "Pachypodium namaquanum, 8 seeds, harvested 60 days ago, on frame",
                    "Aloidendron pillansii, 5 seeds, harvested 60 days ago",
                    "Brunsvigia josephinae, 6 seeds, harvested 3 days ago",
                    "Sarcocaulon vanderietiae, 9 seeds, harvested 200 days ago",
                    "Zzyzx, 3 seeds"};
  return garden;
}

class AnyPlan : public testing::TestWithParam<std::tuple<int, int>> {
protected:
  [[nodiscard]] static InventedGarden invented() {
    return mixed_garden(std::get<0>(GetParam()), std::get<1>(GetParam()));
  }
};

TEST_P(AnyPlan, IsTheSameForTheSameCall) {
  const LoadedGarden garden = support::garden_of(invented());
  EXPECT_EQ(to_json(plan(garden, {})), to_json(plan(garden, {})));
}

TEST_P(AnyPlan, IsTheSameWhetherOrNotReadingsAfterTodayAreThere) {
  const InventedGarden whole = invented();
  const GardenFolder folder = support::folder_of(whole);
  const Date today = support::today_of(whole);
  const climate::DailySeries& series = folder.station.series;
  climate::DailySeries past{series.first(), *series.index_of(today) + 1};
  for (std::size_t i = 0; i < past.size(); ++i) {
    past.set_night(i, series.night_c()[i]);
    past.set_day(i, series.day_c()[i]);
  }
  const GardenFolder cut = support::folder_of(whole, support::merged(past), today);
  ASSERT_GT(series.last(), today);
  EXPECT_EQ(to_json(plan(as_of(folder, today), {})), to_json(plan(as_of(cut, today), {})));
}

TEST_P(AnyPlan, IsTheSameWhateverTheOrderOfThePackets) {
  LoadedGarden garden = support::garden_of(invented());
  const std::string before = to_json(plan(garden, {}));
  std::reverse(garden.packets.begin(), garden.packets.end());
  EXPECT_EQ(to_json(plan(garden, {})), before);
  std::rotate(garden.packets.begin(), garden.packets.begin() + 3, garden.packets.end());
  EXPECT_EQ(to_json(plan(garden, {})), before);
}

TEST_P(AnyPlan, HoldsEveryPacketOnce) {
  const LoadedGarden garden = support::garden_of(invented());
  const PlanAnswer answer = plan(garden, {});
  std::vector<std::string> planned;
  for (const Sowing& line : answer.sowings) {
    planned.push_back(line.packet);
  }
  for (const NotNow& line : answer.not_now) {
    planned.push_back(line.packet);
  }
  std::vector<std::string> in_hand;
  for (const Packet& packet : garden.packets) {
    in_hand.push_back(packet.id);
  }
  std::sort(planned.begin(), planned.end());
  std::sort(in_hand.begin(), in_hand.end());
  EXPECT_EQ(planned, in_hand);
}

TEST_P(AnyPlan, GivesEveryLineAReason) {
  const PlanAnswer answer = plan(support::garden_of(invented()), {});
  for (const Sowing& line : answer.sowings) {
    EXPECT_FALSE(line.reasons.empty()) << line.taxon;
  }
  for (const NotNow& line : answer.not_now) {
    EXPECT_FALSE(line.reasons.empty()) << line.taxon;
  }
}

TEST_P(AnyPlan, WatersNowOnlyWithinItsWindow) {
  const PlanAnswer answer = plan(support::garden_of(invented()), {});
  for (const Sowing& line : answer.sowings) {
    if (line.verdict == Verdict::water_now) {
      EXPECT_LE(*line.first_water.not_before, answer.today) << line.taxon;
      EXPECT_GE(line.first_water.no_later_than.value_or(answer.today), answer.today) << line.taxon;
    }
  }
}

TEST_P(AnyPlan, ExpectsFirstWaterWithinItsWindow) {
  const PlanAnswer answer = plan(support::garden_of(invented()), {});
  for (const Sowing& line : answer.sowings) {
    if (line.first_water.expected.p50 && line.first_water.not_before) {
      EXPECT_GE(*line.first_water.expected.p50, *line.first_water.not_before) << line.taxon;
    }
  }
}

bool within_days_of_half_a_year(std::optional<Date> before, std::optional<Date> after, int days) {
  return before.has_value() == after.has_value() &&
         (!before || std::abs(days_between(*before, *after) - mirror_days) <= days);
}

bool within_a_day_of_half_a_year(std::optional<Date> before, std::optional<Date> after) {
  return within_days_of_half_a_year(before, after, 1);
}

// The sun of the other half is nearer or farther by the Earth's orbit, and plants fall off slowly:
// where a twentieth of them is lost is told to about a week.
constexpr int window_end_days = 7;

void expect_mirrored(const Sowing& before, const Sowing& after) {
  SCOPED_TRACE(before.taxon);
  EXPECT_EQ(before.packet, after.packet);
  EXPECT_EQ(before.verdict, after.verdict);
  EXPECT_TRUE(
      within_a_day_of_half_a_year(before.first_water.not_before, after.first_water.not_before));
  EXPECT_TRUE(
      within_a_day_of_half_a_year(before.first_water.expected.p10, after.first_water.expected.p10));
  EXPECT_TRUE(
      within_a_day_of_half_a_year(before.first_water.expected.p50, after.first_water.expected.p50));
  EXPECT_TRUE(
      within_a_day_of_half_a_year(before.first_water.expected.p90, after.first_water.expected.p90));
  EXPECT_TRUE(within_days_of_half_a_year(
      before.first_water.no_later_than, after.first_water.no_later_than, window_end_days));
  EXPECT_EQ(before.seed.alive->mean, after.seed.alive->mean);
}

TEST_P(AnyPlan, IsItsOwnMirrorHalfAYearLaterOnTheOtherHalf) {
  InventedGarden invented = AnyPlan::invented();
  // Weekdays do not mirror, and without an age there is nothing to compare.
  invented.sowing_days.clear();
  std::erase(invented.packets, "Haworthia truncata, 10 seeds");
  const LoadedGarden garden = support::garden_of(invented);
  const PlanAnswer here = plan(garden, {});
  const PlanAnswer there = plan(apply(Mirror{}, garden), {});
  ASSERT_EQ(support::taxa_of(here.sowings), support::taxa_of(there.sowings));
  for (std::size_t i = 0; i < here.sowings.size(); ++i) {
    expect_mirrored(here.sowings[i], there.sowings[i]);
  }
  ASSERT_EQ(here.not_now.size(), there.not_now.size());
  for (std::size_t i = 0; i < here.not_now.size(); ++i) {
    EXPECT_EQ(here.not_now[i].packet, there.not_now[i].packet);
    EXPECT_TRUE(within_a_day_of_half_a_year(here.not_now[i].when, there.not_now[i].when));
  }
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorthThroughTheYear,
                         AnyPlan,
                         testing::Combine(testing::Values(support::hottest_in_the_south,
                                                          support::hottest_in_the_north),
                                          testing::Values(-75, -20, 30, 75, 120, 170, 230)));

} // namespace
} // namespace nightsow::planner
