#include "planner/answers/hold_saved.hpp"
#include "planner/answers/plan.hpp"
#include "planner/answers/plan_marks.hpp"
#include "planner/render/saved.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <string>
#include <tuple>

namespace nightsow::planner {
namespace {

using support::InventedGarden;

InventedGarden autumn(int hottest_day_of_year, int days_after_hottest) {
  InventedGarden garden;
  garden.climate.hottest_day_of_year = hottest_day_of_year;
  garden.days_after_hottest = days_after_hottest;
  garden.packets = {"Bulbine annua, 40 seeds, harvested 300 days ago",
                    "Lachenalia mutabilis, 60 seeds, harvested 400 days ago",
                    "Albuca spiralis, 30 seeds, harvested 400 days ago",
                    "Conophytum bilobum, 80 seeds, harvested 1100 days ago, stored fridge",
                    "Romulea tabularis, 30 seeds, harvested 200 days ago",
                    "Pachypodium namaquanum, 8 seeds, harvested 200 days ago"};
  return garden;
}

SavedPlan saved_of(PlanAnswer answer, const LoadedGarden& garden, int saves = 1) {
  answer.saves = saves;
  return read_saved_plan(saved_plan_text(answer, plan_marks(garden)), "plans/2026.json");
}

const Sowing& line_of(const PlanAnswer& answer, const std::string& packet) {
  const auto line = std::find_if(answer.sowings.begin(),
                                 answer.sowings.end(),
                                 [&](const auto& one) { return one.packet == packet; });
  if (line == answer.sowings.end()) {
    throw std::out_of_range(packet);
  }
  return *line;
}

class AnyDay : public testing::TestWithParam<std::tuple<int, int>> {
protected:
  [[nodiscard]] static InventedGarden invented() {
    return autumn(std::get<0>(GetParam()), std::get<1>(GetParam()));
  }
};

// Nothing was read in between, so no nights speak for another date.
TEST_P(AnyDay, TwoPlansADayApartMoveNoDateWithoutAReading) {
  InventedGarden garden = invented();
  garden.readings_end_before_today = 1;
  const GardenFolder folder = support::folder_of(garden);
  const Date today = support::today_of(garden);
  const PlanAnswer first = plan(as_of(folder, today), {});
  const PlanAnswer second = plan(as_of(folder, today + Days{1}), {});
  if (first.season != second.season) {
    return; // the planning year turned in between
  }
  for (const Sowing& before : first.sowings) {
    if (before.verdict == Verdict::water_now) {
      continue;
    }
    SCOPED_TRACE(before.taxon);
    const Sowing& after = line_of(second, before.packet);
    EXPECT_EQ(before.route, after.route);
    EXPECT_EQ(before.keep.then, after.keep.then);
    const auto moved = [&](std::optional<Date> a, std::optional<Date> b) {
      return a && b && *a > today + Days{1} ? std::abs(days_between(*a, *b)) : 0;
    };
    // A window may begin a day later as the seed grows a day older.
    EXPECT_LE(moved(before.first_water.expected.p50, after.first_water.expected.p50), 1);
    EXPECT_LE(moved(before.first_water.no_later_than, after.first_water.no_later_than), 1);
    EXPECT_LE(moved(before.sow_on, after.sow_on), 1);
  }
}

TEST_P(AnyDay, APlanOfTheSameDaySaysThatNothingIsDifferent) {
  const LoadedGarden garden = support::garden_of(invented());
  const PlanAnswer first = plan(garden, {});
  PlanRequest again;
  again.saved = {saved_of(first, garden)};
  const PlanAnswer second = plan(garden, again);
  ASSERT_TRUE(second.since_saved);
  EXPECT_EQ(second.since_saved->changes.size(), 0U);
  EXPECT_EQ(second.since_saved->unchanged,
            static_cast<int>(first.sowings.size() + first.not_now.size()));
  EXPECT_EQ(second.saves, 1);
}

// A week of readings later: what is planned moved only where it gains, or had to.
TEST_P(AnyDay, ASavedDayMovesOnlyWhereThatGainsPlantsOrItIsNoLongerLikely) {
  const InventedGarden invented = AnyDay::invented();
  const GardenFolder folder = support::folder_of(invented);
  const Date today = support::today_of(invented);
  const LoadedGarden garden = as_of(folder, today);
  const PlanAnswer first = plan(garden, {});
  const LoadedGarden later = as_of(folder, today + Days{7});
  PlanRequest request;
  request.saved = {saved_of(first, garden)};
  const PlanAnswer held = plan(later, request);
  const PlanAnswer free = plan(later, {});
  for (const Sowing& line : held.sowings) {
    SCOPED_TRACE(line.taxon);
    if (!line.first_water.held) {
      continue;
    }
    const auto saved = day_of_water(Verdict::wait, line_of(first, line.packet).first_water, today);
    EXPECT_EQ(line.first_water.held, saved);
    EXPECT_GT(*line.first_water.held, later.today);
    const Sowing& moved = line_of(free, line.packet);
    if (line.expected && moved.expected) {
      EXPECT_LE(moved.expected->plants.mean,
                line.expected->plants.mean + std::max(0.6, 0.06 * line.expected->plants.mean));
    }
    EXPECT_TRUE(std::any_of(line.reasons.begin(), line.reasons.end(), [](const Reason& reason) {
      return reason.code == ReasonCode::day_held;
    }));
  }
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorthThroughTheYear,
                         AnyDay,
                         testing::Combine(testing::Values(support::hottest_in_the_south,
                                                          support::hottest_in_the_north),
                                          testing::Values(-60, -20, 30, 45, 75)));

// So that the property above is not about nothing.
TEST(Replan, HoldsSomeDayThroughAWeekOfReadings) {
  int held = 0;
  for (const int day : {10, 30, 45}) {
    const InventedGarden invented = autumn(support::hottest_in_the_south, day);
    const GardenFolder folder = support::folder_of(invented);
    const LoadedGarden garden = support::garden_of(invented);
    PlanRequest request;
    request.saved = {saved_of(plan(garden, {}), garden)};
    const PlanAnswer later = plan(as_of(folder, garden.today + Days{7}), request);
    held += static_cast<int>(
        std::count_if(later.sowings.begin(), later.sowings.end(), [](const Sowing& line) {
          return line.first_water.held.has_value();
        }));
  }
  EXPECT_GT(held, 0);
}

TEST(Replan, TellsWhatIsNewGoneAndSown) {
  InventedGarden invented = autumn(support::hottest_in_the_south, 30);
  const LoadedGarden garden = support::garden_of(invented);
  SavedPlan saved = saved_of(plan(garden, {}), garden);
  LoadedGarden later = garden;
  std::erase_if(later.packets, [](const Packet& packet) {
    return packet.taxon == "Bulbine annua" || packet.taxon == "Albuca spiralis";
  });
  RecordedSowing sowing;
  sowing.id = 1;
  sowing.packet_id = "bulbine-annua";
  sowing.taxon = "Bulbine annua";
  sowing.on = garden.today;
  sowing.seeds = 40;
  later.records.sowings = {sowing};
  later.packets.push_back(
      support::packet_from("Moraea ciliata, 12 seeds, harvested 300 days ago", garden.today));
  PlanRequest request;
  request.saved = {saved};
  const PlanAnswer answer = plan(later, request);
  std::map<std::string, ChangeKind> kinds;
  for (const PlanChange& change : answer.since_saved->changes) {
    kinds[change.packet] = change.kind;
  }
  EXPECT_EQ(kinds.at("bulbine-annua"), ChangeKind::sown);
  EXPECT_EQ(kinds.at("albuca-spiralis"), ChangeKind::gone);
  EXPECT_EQ(kinds.at("moraea-ciliata"), ChangeKind::added);
}

TEST(Replan, TellsWhatMayBeBehindAChange) {
  const InventedGarden invented = autumn(support::hottest_in_the_south, 30);
  const LoadedGarden garden = support::garden_of(invented);
  SavedPlan saved = saved_of(plan(garden, {}), garden);
  for (SavedLine& line : saved.lines) {
    line.verdict = line.verdict == "wait" ? "unknown" : line.verdict; // any change will do
    if (line.packet == "albuca-spiralis") {
      line.rule_mark = "another";
    }
    if (line.packet == "romulea-tabularis") {
      line.row_mark = "another";
    }
  }
  PlanRequest request;
  request.saved = {saved};
  const PlanAnswer answer = plan(garden, request);
  std::map<std::string, std::vector<ChangeCause>> causes;
  for (const PlanChange& change : answer.since_saved->changes) {
    causes[change.packet] = change.causes;
  }
  EXPECT_EQ(causes.at("albuca-spiralis"), std::vector{ChangeCause::rule_changed});
  EXPECT_EQ(causes.at("romulea-tabularis"), std::vector{ChangeCause::packet_changed});
  EXPECT_EQ(causes.at("lachenalia-mutabilis"), std::vector{ChangeCause::days_passed});
}

TEST(Replan, LeavesASavedRouteOnlyForMoreThanThreePerCentAndHalfASeedling) {
  EXPECT_FALSE(worth_moving(0.514, 0.50, 100.0)); // 3 %
  EXPECT_TRUE(worth_moving(0.52, 0.50, 100.0));
  EXPECT_FALSE(worth_moving(0.54, 0.50, 10.0)); // half a seedling
  EXPECT_TRUE(worth_moving(0.56, 0.50, 10.0));
  EXPECT_TRUE(worth_moving(0.52, 0.50, std::nullopt));
}

TEST(Replan, KeepsTheSavedWayOfKeepingWhereAnotherIsHardlyBetter) {
  const Packet packet;
  std::vector<KeptWay> ways(3);
  ways[0].most = 0.40;
  ways[1].keeping.way = Keeping::Way::warm_then_cool;
  ways[1].most = 0.51;
  ways[2].keeping.way = Keeping::Way::cool;
  ways[2].most = 0.50;
  SavedLine saved;
  saved.route = "fridge";
  EXPECT_EQ(&best_or_saved_way(ways, packet, 100.0, nullptr), &ways[1]);
  EXPECT_EQ(&best_or_saved_way(ways, packet, 100.0, &saved), &ways[2]);
  ways[1].most = 0.54;
  EXPECT_EQ(&best_or_saved_way(ways, packet, 100.0, &saved), &ways[1]);
}

TEST(Replan, OfPartOfTheGardenComparesNothing) {
  const LoadedGarden garden = support::garden_of(autumn(support::hottest_in_the_south, 30));
  PlanRequest request;
  request.saved = {saved_of(plan(garden, {}), garden, 4)};
  request.only = PlanRequest::Only::cool;
  const PlanAnswer answer = plan(garden, request);
  EXPECT_FALSE(answer.since_saved);
  EXPECT_EQ(answer.saves, 4);
}

TEST(Replan, ASeasonBeyondTheReadingsIsRefused) {
  const LoadedGarden garden = support::garden_of(autumn(support::hottest_in_the_south, 30));
  for (const int season : {1950, 2040}) {
    PlanRequest request;
    request.season = season;
    EXPECT_NE(support::fault<UsageError>([&] {
                return plan(garden, request);
              }).find("lies outside of what the readings tell"),
              std::string::npos)
        << season;
  }
  PlanRequest next;
  next.season = 2027;
  EXPECT_NO_THROW(static_cast<void>(plan(garden, next)));
}

TEST(Replan, SeedThatIsNotInHandYetIsNotSownBefore) {
  InventedGarden invented = autumn(support::hottest_in_the_south, 30);
  invented.packets = {"Brunsvigia josephinae, 6 seeds, harvested -20 days ago",
                      "Pachypodium namaquanum, 8 seeds, received -9 days ago"};
  const LoadedGarden garden = support::garden_of(invented);
  const PlanAnswer answer = plan(garden, {});
  ASSERT_FALSE(answer.sowings.empty());
  for (const Sowing& line : answer.sowings) {
    ASSERT_TRUE(line.in_hand_from) << line.taxon;
    EXPECT_NE(line.verdict, Verdict::water_now) << line.taxon;
    EXPECT_GE(line.first_water.expected.p50.value_or(*line.in_hand_from), *line.in_hand_from);
    EXPECT_GE(line.sow_on.value_or(*line.in_hand_from), *line.in_hand_from);
    EXPECT_EQ(line.reasons.front().code, ReasonCode::not_yet_in_hand);
  }
}

TEST(Replan, MoreSeedsNeverLowerWhatIsExpected) {
  for (const char* taxon : {"Bulbine annua", "Lachenalia mutabilis", "Albuca spiralis"}) {
    double before = 0.0;
    for (const int seeds : {1, 5, 12, 40, 41, 200}) {
      InventedGarden invented = autumn(support::hottest_in_the_south, 30);
      invented.packets = {std::string(taxon) + ", " + std::to_string(seeds) +
                          " seeds, harvested 300 days ago"};
      const PlanAnswer answer = plan(support::garden_of(invented), {});
      ASSERT_EQ(answer.sowings.size(), 1U) << taxon;
      ASSERT_TRUE(answer.sowings.front().expected) << taxon;
      EXPECT_GE(answer.sowings.front().expected->plants.mean, before) << taxon << seeds;
      before = answer.sowings.front().expected->plants.mean;
    }
  }
}

} // namespace
} // namespace nightsow::planner
