#include "planner/answers/plan.hpp"
#include "planner/garden/change.hpp"
#include "planner/model/bench_climate.hpp"
#include "planner/render/to_json.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

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

void expect_every_packet_once(const LoadedGarden& garden, const PlanAnswer& answer) {
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

void expect_a_reason_of_every_line(const PlanAnswer& answer) {
  for (const Sowing& line : answer.sowings) {
    EXPECT_FALSE(line.reasons.empty()) << line.taxon;
  }
  for (const NotNow& line : answer.not_now) {
    EXPECT_FALSE(line.reasons.empty()) << line.taxon;
  }
}

void expect_first_water_in_its_window(const PlanAnswer& answer) {
  for (const Sowing& line : answer.sowings) {
    const FirstWater& water = line.first_water;
    if (line.verdict == Verdict::water_now) {
      EXPECT_LE(*water.not_before, answer.today) << line.taxon;
      EXPECT_GE(water.no_later_than.value_or(answer.today), answer.today) << line.taxon;
    }
    if (water.expected.p50 && water.not_before) {
      EXPECT_GE(*water.expected.p50, *water.not_before) << line.taxon;
    }
  }
}

/// Days from `first` to `last`, both included.
struct Between {
  Date first;
  Date last;

  void expect(const std::optional<Date>& day, const std::string& what) const {
    if (day) {
      EXPECT_GE(*day, first) << what;
      EXPECT_LE(*day, last) << what;
    }
  }

  void expect(const Spread& spread, const std::string& what) const {
    expect(spread.p10, what + " p10");
    expect(spread.p50, what + " p50");
    expect(spread.p90, what + " p90");
  }
};

// What is still to be done with a packet lies between today and the season's end, and what nights
// do within the season itself.
void expect_sowings_in_season(const PlanAnswer& answer, const climate::Season& season) {
  const Between to_come{answer.today, season.next_hottest};
  const Between all_season{season.hottest, season.next_hottest};
  for (const Sowing& line : answer.sowings) {
    to_come.expect(line.first_water.not_before, line.taxon + ": not before");
    to_come.expect(line.first_water.expected, line.taxon + ": first water");
    to_come.expect(line.first_water.no_later_than, line.taxon + ": no later than");
    to_come.expect(line.sow_on, line.taxon + ": sow on");
    to_come.expect(line.keep.until, line.taxon + ": keep until");
    to_come.expect(line.work.rests, line.taxon + ": rests");
    if (line.gate) {
      all_season.expect(line.gate->stirs, line.taxon + ": stirs");
      all_season.expect(line.gate->holds, line.taxon + ": holds");
      all_season.expect(line.gate->settles, line.taxon + ": settles");
    }
    if (line.expected) {
      to_come.expect(line.expected->first_water, line.taxon + ": expected with water on");
      to_come.expect(line.expected->first, line.taxon + ": first seedling");
      to_come.expect(line.expected->half, line.taxon + ": half the seedlings");
    }
    for (const RouteAnswer& route : line.routes) {
      const bool next = route.route == "next_season";
      const Between days =
          next ? Between{season.hottest, season.next_hottest + Days{366}} : to_come;
      days.expect(route.first_water, line.taxon + ": " + route.route);
      to_come.expect(route.warm_until, line.taxon + ": warm until");
    }
    if (line.work.wakes && line.work.rests) {
      EXPECT_GT(*line.work.wakes, *line.work.rests) << line.taxon;
    }
  }
}

// Once it wakes after its first rest, and later.
bool is_of_later_years(const Task& task) {
  return task.kind == TaskKind::wake || task.kind == TaskKind::prick_out ||
         task.kind == TaskKind::leave || task.kind == TaskKind::pot_on ||
         task.kind == TaskKind::carry_over || (task.kind == TaskKind::shade && task.number > 1);
}

void expect_work_in_season(const PlanAnswer& answer, const climate::Season& season) {
  const Between this_season{answer.today, season.next_hottest};
  const Between years{answer.today, season.next_hottest + Days{3 * 366}};
  for (const Task& task : answer.tasks) {
    const Between days = is_of_later_years(task) ? years : this_season;
    days.expect(task.on, task.lot + ": " + std::string(name_of(task.kind)));
  }
  for (const NotNow& line : answer.not_now) {
    years.expect(line.when, line.taxon + ": not now, but then");
  }
}

// Told to a tenth of a plant each.
void expect_every_seed_accounted_for(const PlanAnswer& answer) {
  for (const Sowing& line : answer.sowings) {
    if (!line.expected) {
      continue;
    }
    const LostSeeds& lost = line.expected->losses;
    const double sum = lost.dead + lost.not_ripe + lost.nights_too_warm + lost.deferred +
                       lost.lost_wet + lost.dried + lost.heat + lost.frost + lost.too_late +
                       lost.rest + line.expected->plants.mean;
    const int sown = static_cast<int>(std::lround(*line.seeds)) - line.keep_back.value_or(0);
    EXPECT_NEAR(sum, sown, 11 * 0.05) << line.taxon;
    EXPECT_LE(line.expected->plants.mean, line.expected->seedlings.mean + 0.1) << line.taxon;
  }
}

void expect_sound(const LoadedGarden& garden) {
  const PlanAnswer answer = plan(garden, {});
  const StationClimate station = station_climate(garden);
  const climate::Season season = climate::season_named(*station.turning.phases, answer.season);
  expect_every_packet_once(garden, answer);
  expect_a_reason_of_every_line(answer);
  expect_first_water_in_its_window(answer);
  expect_sowings_in_season(answer, season);
  expect_work_in_season(answer, season);
  expect_every_seed_accounted_for(answer);
}

// One plan, since making it is what takes time.
TEST_P(AnyPlan, HoldsEveryPacketOnceWithReasonsDatesOfItsSeasonAndEverySeedAccountedFor) {
  expect_sound(support::garden_of(invented()));
}

TEST(PlanElsewhere, HoldsEveryPacketOnceWithReasonsDatesOfItsSeasonAndEverySeedAccountedFor) {
  for (const support::InventedClimate& climate :
       {support::mild_coast(), support::cool_summers(), support::warm_summers()}) {
    for (const int day : {-60, 50, 150}) {
      InventedGarden invented = mixed_garden(support::hottest_in_the_south, day);
      invented.climate = climate;
      SCOPED_TRACE(climate.night_mean_c);
      SCOPED_TRACE(day);
      expect_sound(support::garden_of(invented));
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
