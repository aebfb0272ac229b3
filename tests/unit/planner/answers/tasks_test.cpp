#include "planner/answers/tasks.hpp"

#include "planner/answers/lots.hpp"
#include "planner/model/usual_looks.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {
namespace {

using support::day;

const Date today = day("2026-02-20");

Sowing sowing_named(const std::string& packet) {
  Sowing line = waiting_sowing();
  line.packet = packet;
  line.how.main_look_days = 30;
  line.how.last_look_days = 90;
  line.work.rests = day("2026-11-10");
  line.work.wakes = day("2027-04-20");
  return line;
}

std::vector<Task> tasks_of_all(const std::vector<Sowing>& sowings,
                               const std::vector<AwayPeriod>& away = {}) {
  return tasks_of(lots_of(sowings, {today, away}), sowings, {today, away});
}

std::vector<Task> of_kind(const std::vector<Task>& tasks, TaskKind kind) {
  std::vector<Task> found;
  std::copy_if(tasks.begin(), tasks.end(), std::back_inserter(found), [kind](const Task& task) {
    return task.kind == kind;
  });
  return found;
}

TEST(Tasks, GoFromGettingReadyToPottingOn) {
  const std::vector<Task> tasks = tasks_of_all({sowing_named("A")});
  for (const TaskKind kind : {TaskKind::get_ready,
                              TaskKind::sow_dry,
                              TaskKind::first_water,
                              TaskKind::water_by_need,
                              TaskKind::first_look,
                              TaskKind::main_look,
                              TaskKind::rest,
                              TaskKind::wake,
                              TaskKind::pot_on}) {
    EXPECT_FALSE(of_kind(tasks, kind).empty()) << name_of(kind);
  }
  EXPECT_TRUE(std::is_sorted(
      tasks.begin(), tasks.end(), [](const Task& a, const Task& b) { return a.on < b.on; }));
}

TEST(Tasks, AreNeverDatedBeforeToday) {
  for (const Task& task : tasks_of_all({sowing_named("A")})) {
    EXPECT_GE(task.on, today) << name_of(task.kind);
  }
}

TEST(Tasks, MoveOutOfDaysAwayAndSayFromWhich) {
  const Date look = of_kind(tasks_of_all({sowing_named("A")}), TaskKind::main_look).at(0).on;
  const AwayPeriod away{look - Days{3}, look + Days{3}};
  const std::vector<Task> tasks = tasks_of_all({sowing_named("A")}, {away});
  for (const Task& task : tasks) {
    EXPECT_FALSE(task.on >= away.from && task.on <= away.to) << name_of(task.kind);
  }
  const Task moved = of_kind(tasks, TaskKind::main_look).at(0);
  EXPECT_EQ(moved.on, look - Days{4});
  EXPECT_EQ(moved.moved_from, look);
}

TEST(Tasks, OfATraySownOnTwoDaysTellWhichPacketsAndPotsOnEach) {
  Sowing late = sowing_named("B");
  late.sow_on = day("2026-04-18");
  late.how.pots = 2;
  late.work.treatments = {"smoke"};
  const std::vector<Task> tasks = tasks_of_all({sowing_named("A"), late});
  const std::vector<Task> sow = of_kind(tasks, TaskKind::sow_dry);
  ASSERT_EQ(sow.size(), 2U);
  EXPECT_EQ(sow[0].on, day("2026-04-11"));
  EXPECT_EQ(sow[0].packets, std::vector<std::string>{"A"});
  EXPECT_EQ(sow[1].on, day("2026-04-18"));
  EXPECT_EQ(sow[1].packets, std::vector<std::string>{"B"});
  const std::vector<Task> ready = of_kind(tasks, TaskKind::get_ready);
  ASSERT_EQ(ready.size(), 2U);
  EXPECT_EQ(ready[0].pots, 5);
  EXPECT_TRUE(ready[0].treated.empty());
  EXPECT_EQ(ready[1].pots, 2);
  EXPECT_EQ(ready[1].treated.size(), 1U);
  EXPECT_EQ(of_kind(tasks, TaskKind::first_water).size(), 1U);
}

TEST(Tasks, TakeBagAndMatOffWhereNoRuleSaysWhenToLook) {
  Sowing line = sowing_named("A");
  line.how.first_look_days.reset();
  line.how.main_look_days.reset();
  line.how.humidity_cover = "useful";
  line.work.on_mat = true;
  const std::vector<Task> tasks = tasks_of_all({line});
  const Date water = of_kind(tasks, TaskKind::first_water).at(0).on;
  EXPECT_EQ(of_kind(tasks, TaskKind::bag_off).at(0).on,
            water + Days{usual_first_look_days + bag_off_days});
  EXPECT_EQ(of_kind(tasks, TaskKind::mat_off).at(0).on, water + Days{usual_main_look_days});
}

TEST(Tasks, TellHowOftenATrayUsuallyWantsWater) {
  Sowing thirsty = sowing_named("A");
  thirsty.work.water_every_days = 4;
  thirsty.work.waters_later_days = 3;
  Sowing frugal = sowing_named("B");
  frugal.work.water_every_days = 9;
  const std::vector<Task> by_need =
      of_kind(tasks_of_all({thirsty, frugal}), TaskKind::water_by_need);
  ASSERT_EQ(by_need.size(), 2U);
  EXPECT_EQ(by_need[0].every_days, 4);
  EXPECT_EQ(by_need[1].every_days, 3);
}

TEST(Tasks, LeaveInTheirPotsWhatIsNotPrickedOut) {
  Sowing easy = sowing_named("A");
  easy.how.transplant = "easy";
  Sowing late = sowing_named("B");
  late.how.transplant = "late";
  Sowing never = sowing_named("C");
  never.how.transplant = "never";
  const std::vector<Task> tasks = tasks_of_all({easy, late, never});
  EXPECT_EQ(of_kind(tasks, TaskKind::prick_out).at(0).packets, std::vector<std::string>{"A"});
  EXPECT_EQ(of_kind(tasks, TaskKind::leave).at(0).packets, (std::vector<std::string>{"B", "C"}));
  EXPECT_EQ(of_kind(tasks, TaskKind::pot_on).at(0).packets, (std::vector<std::string>{"A", "B"}));
}

TEST(Tasks, ShadeByAge) {
  Sowing line = sowing_named("A");
  line.work.shade_first_year = 0.6;
  line.work.shade_second_year = 0.4;
  line.work.shade_third_year = 0.2;
  const std::vector<Task> shade = of_kind(tasks_of_all({line}), TaskKind::shade);
  ASSERT_EQ(shade.size(), 3U);
  for (std::size_t year = 0; year < shade.size(); ++year) {
    EXPECT_EQ(shade[year].number, static_cast<int>(year) + 1);
  }
  EXPECT_EQ(shade[0].share, 0.6);
  EXPECT_EQ(shade[1].on, day("2027-04-20"));
  EXPECT_EQ(shade[2].on, day("2028-04-19"));
}

TEST(Tasks, LetPotsInWhichNothingCameGoDryAndKeepThemOnlyWhereSeedDefers) {
  Sowing defers = sowing_named("A");
  defers.work.defers = true;
  defers.work.keep_seasons = 2;
  const std::vector<Task> tasks = tasks_of_all({defers, sowing_named("B")});
  const Task dry = of_kind(tasks, TaskKind::dry_rest).at(0);
  const Task wet = of_kind(tasks, TaskKind::re_wet).at(0);
  EXPECT_EQ(dry.packets, std::vector<std::string>{"A"});
  EXPECT_EQ(wet.on, dry.on + Days{dry_rest_days});
  const Task kept = of_kind(tasks, TaskKind::carry_over).at(0);
  EXPECT_EQ(kept.packets, std::vector<std::string>{"A"});
  EXPECT_EQ(kept.seasons, 2);
}

std::vector<std::string> packets_of(const std::vector<Task>& tasks, TaskKind kind) {
  std::vector<std::string> packets;
  for (const Task& task : of_kind(tasks, kind)) {
    packets.insert(packets.end(), task.packets.begin(), task.packets.end());
  }
  return packets;
}

// "dry rest", "barely moist", "evergreen", "annual" in one tray, each with easy pricking out.
std::vector<Task> tasks_of_four_ways(const std::function<void(Sowing&)>& change = {}) {
  std::vector<Sowing> sowings;
  for (const auto* way : {"dry", "barely_moist", "none", "dies"}) {
    Sowing line = sowing_named(way);
    line.how.first_rest = way;
    line.how.transplant = "easy";
    line.work.shade_second_year =
        std::string_view{way} == "dies" ? std::nullopt : std::optional{0.3};
    line.work.may_go_dry = std::string_view{way} == "dry" || std::string_view{way} == "dies";
    if (change) {
      change(line);
    }
    sowings.push_back(line);
  }
  return tasks_of_all(sowings);
}

TEST(Tasks, OfTheRestingSeasonGoByHowAKindPassesIt) {
  const std::vector<Task> tasks = tasks_of_four_ways();
  using Packets = std::vector<std::string>;
  EXPECT_EQ(packets_of(tasks, TaskKind::rest), Packets{"dry"});
  EXPECT_EQ(packets_of(tasks, TaskKind::rest_moist), Packets{"barely_moist"});
  EXPECT_EQ(packets_of(tasks, TaskKind::keep_watering), Packets{"none"});
  EXPECT_EQ(packets_of(tasks, TaskKind::gather_seed), Packets{"dies"});
  EXPECT_EQ(of_kind(tasks, TaskKind::keep_watering).at(0).on, day("2026-11-10"));
}

TEST(Tasks, WakeOnlyWhatRests) {
  const std::vector<std::string> woken = packets_of(tasks_of_four_ways(), TaskKind::wake);
  EXPECT_EQ(woken, (std::vector<std::string>{"barely_moist", "dry"}));
}

TEST(Tasks, CarryOnOnlyWhatIsTooSmallForARest) {
  const std::vector<Task> tasks =
      tasks_of_four_ways([](Sowing& line) { line.work.too_small_to_rest = true; });
  EXPECT_EQ(packets_of(tasks, TaskKind::carry_on),
            (std::vector<std::string>{"barely_moist", "dry"}));
  EXPECT_EQ(packets_of(tasks, TaskKind::keep_watering), std::vector<std::string>{"none"});
  EXPECT_EQ(packets_of(tasks, TaskKind::gather_seed), std::vector<std::string>{"dies"});
}

TEST(Tasks, PrickOutAnnualsWhileTheyAreYoungAndAskNothingOfThemLater) {
  const std::vector<Task> tasks = tasks_of_four_ways();
  const std::vector<Task> prick = of_kind(tasks, TaskKind::prick_out);
  ASSERT_EQ(prick.size(), 2U);
  EXPECT_EQ(prick[0].packets, std::vector<std::string>{"dies"});
  EXPECT_EQ(prick[0].on, of_kind(tasks, TaskKind::main_look).at(0).on);
  EXPECT_EQ(prick[0].number, 1);
  EXPECT_EQ(prick[1].number, 2);
  for (const Task& task : tasks) {
    if (task.on > day("2026-11-10")) {
      EXPECT_EQ(std::count(task.packets.begin(), task.packets.end(), "dies"), 0)
          << name_of(task.kind);
    }
  }
}

TEST(Tasks, LetOnlyPotsGoDryThatMayAndKeepTheOthersBarelyMoist) {
  const std::vector<Task> tasks = tasks_of_four_ways([](Sowing& line) { line.work.defers = true; });
  using Packets = std::vector<std::string>;
  EXPECT_EQ(packets_of(tasks, TaskKind::dry_rest), (Packets{"dies", "dry"}));
  EXPECT_EQ(packets_of(tasks, TaskKind::re_wet), (Packets{"dies", "dry"}));
  const std::vector<Task> kept = of_kind(tasks, TaskKind::carry_over);
  ASSERT_EQ(kept.size(), 2U);
  EXPECT_EQ(kept[0].packets, (Packets{"dies", "dry"}));
  EXPECT_EQ(kept[0].moist, false);
  EXPECT_EQ(kept[1].packets, (Packets{"barely_moist", "none"}));
  EXPECT_EQ(kept[1].moist, true);
}

TEST(Tasks, SowAndWaterSeedThatDiesDryOnTheSameDayEachDayInItsOwnTray) {
  Sowing first = sowing_named("A");
  first.start = "at_once";
  first.verdict = Verdict::water_now;
  first.first_water = {};
  first.first_water.expected = {today, today, today, 0.0};
  first.sow_on = day("2026-02-21");
  Sowing second = first;
  second.packet = "B";
  second.sow_on = day("2026-02-28");
  const std::vector<Task> tasks = tasks_of_all({first, second});
  EXPECT_TRUE(of_kind(tasks, TaskKind::sow_dry).empty());
  const std::vector<Task> sow = of_kind(tasks, TaskKind::sow_wet);
  const std::vector<Task> water = of_kind(tasks, TaskKind::first_water);
  ASSERT_EQ(sow.size(), 2U);
  ASSERT_EQ(water.size(), 2U);
  for (std::size_t i = 0; i < sow.size(); ++i) {
    EXPECT_EQ(sow[i].on, water[i].on);
    EXPECT_EQ(sow[i].packets, water[i].packets);
  }
  EXPECT_EQ(sow[0].on, day("2026-02-21"));
  EXPECT_EQ(sow[1].on, day("2026-02-28"));
}

} // namespace
} // namespace nightsow::planner
