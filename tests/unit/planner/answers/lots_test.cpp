#include "planner/answers/lots.hpp"

#include "planner/answers/tasks.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace nightsow::planner {
namespace {

using support::day;

Sowing sowing_named(const std::string& packet, const std::string& cover = "thin") {
  Sowing line = waiting_sowing();
  line.packet = packet;
  line.how.cover = cover;
  line.how.main_look_days = 30;
  line.how.last_look_days = 90;
  line.work.rests = day("2026-11-10");
  line.work.wakes = day("2027-04-20");
  return line;
}

std::vector<std::string> ids_of(const std::vector<Lot>& lots) {
  std::vector<std::string> ids;
  for (const Lot& lot : lots) {
    ids.push_back(lot.id);
  }
  return ids;
}

const Date today = day("2026-02-20");

TEST(Lots, HoldEverySowingOnce) {
  const std::vector<Lot> lots =
      lots_of({sowing_named("A"), sowing_named("B"), sowing_named("C", "none")}, today);
  ASSERT_EQ(lots.size(), 2U);
  EXPECT_EQ(lots[0].packets.size() + lots[1].packets.size(), 3U);
}

TEST(Lots, AreTheSameWhateverTheOrderOfTheSowings) {
  std::vector<Sowing> sowings{sowing_named("A"), sowing_named("B", "none"), hot_sowing()};
  const std::vector<std::string> ids = ids_of(lots_of(sowings, today));
  std::reverse(sowings.begin(), sowings.end());
  EXPECT_EQ(ids_of(lots_of(sowings, today)), ids);
}

TEST(Lots, KeepTheirIdWhenAPacketComesThatSharesNothingWithThem) {
  const std::vector<std::string> before = ids_of(lots_of({sowing_named("A")}, today));
  const std::vector<std::string> after = ids_of(lots_of({sowing_named("A"), hot_sowing()}, today));
  EXPECT_NE(std::find(after.begin(), after.end(), before.front()), after.end());
}

TEST(Lots, DoNotMixBenches) {
  Sowing other = sowing_named("B");
  other.bench = "open bench";
  EXPECT_EQ(lots_of({sowing_named("A"), other}, today).size(), 2U);
}

std::vector<Task> tasks_with(const std::vector<AwayPeriod>& away) {
  const std::vector<Sowing> sowings{sowing_named("A")};
  return tasks_of(lots_of(sowings, today), sowings, {today, away});
}

const Task* task_in(const std::vector<Task>& tasks, TaskKind kind) {
  const auto found = std::find_if(
      tasks.begin(), tasks.end(), [kind](const Task& task) { return task.kind == kind; });
  return found == tasks.end() ? nullptr : &*found;
}

TEST(Tasks, GoFromGettingReadyToWaking) {
  const std::vector<Task> tasks = tasks_with({});
  for (const TaskKind kind : {TaskKind::get_ready,
                              TaskKind::sow_dry,
                              TaskKind::first_water,
                              TaskKind::first_look,
                              TaskKind::main_look,
                              TaskKind::rest,
                              TaskKind::wake}) {
    EXPECT_NE(task_in(tasks, kind), nullptr) << name_of(kind);
  }
  EXPECT_TRUE(std::is_sorted(
      tasks.begin(), tasks.end(), [](const Task& a, const Task& b) { return a.on < b.on; }));
}

TEST(Tasks, AreNeverDatedBeforeToday) {
  for (const Task& task : tasks_with({})) {
    EXPECT_GE(task.on, today) << name_of(task.kind);
  }
}

TEST(Tasks, MoveOutOfDaysAwayAndSayFromWhich) {
  const std::vector<Task> here = tasks_with({});
  const Date look = task_in(here, TaskKind::main_look)->on;
  const std::vector<AwayPeriod> away{{look - Days{3}, look + Days{3}}};
  const std::vector<Task> tasks = tasks_with(away);
  for (const Task& task : tasks) {
    EXPECT_FALSE(task.on >= away.front().from && task.on <= away.front().to) << name_of(task.kind);
  }
  const Task* moved = task_in(tasks, TaskKind::main_look);
  EXPECT_EQ(moved->on, look - Days{4});
  EXPECT_EQ(moved->moved_from, look);
}

TEST(Diary, HoldsEveryTaskOnce) {
  const std::vector<Sowing> sowings{sowing_named("A"), sowing_named("B", "none"), hot_sowing()};
  const std::vector<Lot> lots = lots_of(sowings, today);
  const std::vector<Task> tasks = tasks_of(lots, sowings, {today, {}});
  std::size_t held = 0;
  for (const DiaryEntry& entry : diary_of(lots, tasks)) {
    held += entry.tasks.size();
  }
  EXPECT_EQ(held, tasks.size());
}

} // namespace
} // namespace nightsow::planner
