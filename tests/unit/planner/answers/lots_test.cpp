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

Sowing hot_in_tray() {
  Sowing line = hot_sowing();
  line.sow_on = day("2026-11-01");
  return line;
}

std::vector<Lot> lots_in(const std::vector<Sowing>& sowings) {
  return lots_of(sowings, {today, {}});
}

TEST(Lots, HoldEverySowingOnce) {
  const std::vector<Lot> lots =
      lots_in({sowing_named("A"), sowing_named("B"), sowing_named("C", "none")});
  ASSERT_EQ(lots.size(), 2U);
  EXPECT_EQ(lots[0].packets.size() + lots[1].packets.size(), 3U);
}

TEST(Lots, AreTheSameWhateverTheOrderOfTheSowings) {
  std::vector<Sowing> sowings{sowing_named("A"), sowing_named("B", "none"), hot_in_tray()};
  const std::vector<std::string> ids = ids_of(lots_in(sowings));
  std::reverse(sowings.begin(), sowings.end());
  EXPECT_EQ(ids_of(lots_in(sowings)), ids);
}

TEST(Lots, KeepTheirIdWhenAPacketComesThatSharesNothingWithThem) {
  const std::vector<std::string> before = ids_of(lots_in({sowing_named("A")}));
  const std::vector<std::string> after = ids_of(lots_in({sowing_named("A"), hot_in_tray()}));
  EXPECT_NE(std::find(after.begin(), after.end(), before.front()), after.end());
}

// One that is watered two months earlier, and so is a group of its own of the same kind.
TEST(Lots, KeepTheirIdWhenAnotherGroupOfTheirKindComesBeforeThem) {
  Sowing early = sowing_named("B");
  early.sow_on = day("2026-02-21");
  early.first_water.expected = spread("2026-02-21", "2026-02-21", "2026-02-21");
  early.first_water.not_before = day("2026-02-21");
  const std::vector<std::string> before = ids_of(lots_in({sowing_named("A")}));
  const std::vector<std::string> after = ids_of(lots_in({sowing_named("A"), early}));
  ASSERT_EQ(after.size(), 2U);
  EXPECT_EQ(after.back(), before.front());
}

TEST(Lots, DoNotMixBenches) {
  Sowing other = sowing_named("B");
  other.bench = "open bench";
  EXPECT_EQ(lots_in({sowing_named("A"), other}).size(), 2U);
}

TEST(Lots, KeepEachPacketsOwnDayOfSowingAndWaterWhenTheLastIsIn) {
  Sowing late = sowing_named("B");
  late.sow_on = day("2026-04-18");
  const std::vector<Lot> lots = lots_in({sowing_named("A"), late});
  ASSERT_EQ(lots.size(), 1U);
  EXPECT_EQ(lots[0].sow_on, day("2026-04-11"));
  EXPECT_EQ(lots[0].sown_by, day("2026-04-18"));
  EXPECT_EQ(lots[0].waters, day("2026-04-18"));
  EXPECT_EQ(lots[0].packets.at(0).sow_on, day("2026-04-11"));
  EXPECT_EQ(lots[0].packets.at(1).sow_on, day("2026-04-18"));
}

TEST(Lots, DoNotWaitForAPacketPastTheLastDayOfAnother) {
  Sowing urgent = sowing_named("A");
  urgent.first_water.no_later_than = day("2026-04-15");
  Sowing late = sowing_named("B");
  late.sow_on = day("2026-04-18");
  const std::vector<Lot> lots = lots_in({urgent, late});
  ASSERT_EQ(lots.size(), 2U);
  EXPECT_EQ(lots[0].waters, day("2026-04-12"));
}

TEST(Lots, LeaveOutWhatHasNoDayAndListIt) {
  Sowing left_over = sowing_named("B");
  left_over.sow_on.reset();
  const std::vector<Sowing> sowings{sowing_named("A"), left_over};
  const std::vector<Lot> lots = lots_in(sowings);
  ASSERT_EQ(lots.size(), 1U);
  EXPECT_EQ(lots[0].packets.size(), 1U);
  const std::vector<LotPacket> without = without_day(sowings, today);
  ASSERT_EQ(without.size(), 1U);
  EXPECT_EQ(without[0].packet, "B");
  EXPECT_FALSE(without[0].sow_on);
}

TEST(Lots, AreWateredBeforeDaysAwayAndSayWhenItWouldHaveBeen) {
  const std::vector<Lot> lots =
      lots_of({sowing_named("A")}, {today, {{day("2026-04-12"), day("2026-04-20")}}});
  EXPECT_EQ(lots.at(0).waters, day("2026-04-11"));
  EXPECT_EQ(lots.at(0).waters_if_there, day("2026-04-12"));
}

TEST(Diary, HoldsEveryTaskOnce) {
  const std::vector<Sowing> sowings{sowing_named("A"), sowing_named("B", "none"), hot_in_tray()};
  const std::vector<Lot> lots = lots_in(sowings);
  const std::vector<Task> tasks = tasks_of(lots, sowings, {today, {}});
  std::size_t held = 0;
  for (const DiaryEntry& entry : diary_of(lots, tasks)) {
    held += entry.tasks.size();
  }
  EXPECT_EQ(held, tasks.size());
}

// Its number is the day, so that an entry stays what it is when other days come or go.
TEST(Diary, HasOneEntryForEachDayOfSowingWhateverTheTrays) {
  Sowing late = sowing_named("B", "none");
  late.sow_on = day("2026-04-18");
  Sowing elsewhere = sowing_named("C");
  elsewhere.bench = "open bench";
  const std::vector<Sowing> sowings{sowing_named("A"), late, elsewhere};
  const std::vector<Lot> lots = lots_in(sowings);
  std::vector<std::pair<Date, int>> sown;
  for (const DiaryEntry& entry : diary_of(lots, tasks_of(lots, sowings, {today, {}}))) {
    if (entry.kind == TaskKind::sow_dry) {
      sown.emplace_back(entry.on, entry.number);
    }
  }
  EXPECT_EQ(sown,
            (std::vector<std::pair<Date, int>>{{day("2026-04-11"), 20260411},
                                               {day("2026-04-18"), 20260418}}));
}

TEST(Diary, HasOneEntryOfRestForTheTraysOfABenchWithTheSameStart) {
  Sowing later = sowing_named("B");
  later.sow_on = day("2026-06-06");
  later.first_water.expected = spread("2026-06-01", "2026-06-07", "2026-06-14");
  const std::vector<Sowing> sowings{sowing_named("A"), later};
  const std::vector<Lot> lots = lots_in(sowings);
  ASSERT_NE(lots.at(0).group, lots.at(1).group);
  std::vector<std::string> rests;
  for (const DiaryEntry& entry : diary_of(lots, tasks_of(lots, sowings, {today, {}}))) {
    if (entry.kind == TaskKind::rest) {
      rests.push_back(entry.group);
    }
  }
  EXPECT_EQ(rests, std::vector<std::string>{"cold-frame-cool"});
}

} // namespace
} // namespace nightsow::planner
