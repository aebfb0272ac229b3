#include "planner/answers/recorded_work.hpp"

#include "planner/answers/plan.hpp"
#include "planner/answers/tasks.hpp"
#include "planner/answers/today.hpp"
#include "planner/render/plan_files.hpp"
#include "planner/render/task_words.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"
#include "tests/support/invented_journal.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>

namespace nightsow::planner {
namespace {

using support::InventedGarden;
using support::on;

const Date watered = on("2026-04-01");

/// A sowing of 25 seeds in March, watered on 1 April; looks after 14, 28 and 90 days.
struct Pot {
  Records records;
  RecordedSowing sowing = support::invented_sowing();
  PotNeeds needs{14, 28, 90, false, false, std::nullopt, false, on("2026-11-01")};

  Pot() { sowing.id = 1; }

  void count(std::string_view day, int seen) {
    records.counts.push_back(support::invented_count(1, day, seen));
  }

  void water(std::string_view day, WateringKind kind) {
    records.waterings.push_back({0, 1, on(day), kind});
  }

  void move(std::string_view day, MoveKind kind, const std::string& to) {
    records.moves.push_back({0, 1, on(day), kind, to});
  }

  /// "done 2026-04-12", "2026-04-15", or "none".
  [[nodiscard]] std::string told(TaskKind kind, std::string_view today) const {
    for (const PotTask& task : recorded_work(records, sowing, watered, needs, on(today))) {
      if (task.kind == kind) {
        return (task.done ? "done " : "") + format_iso_date(task.on);
      }
    }
    return "none";
  }
};

TEST(RecordedWork, TellsSowingAndFirstWaterAsDoneOnTheirDays) {
  const Pot pot;
  EXPECT_EQ(pot.told(TaskKind::sow_dry, "2026-04-02"), "done 2026-03-02");
  EXPECT_EQ(pot.told(TaskKind::first_water, "2026-04-02"), "done 2026-04-01");
  const auto dry = recorded_work(pot.records, pot.sowing, std::nullopt, pot.needs, watered);
  ASSERT_EQ(dry.size(), 1U);
  EXPECT_EQ(dry.front().kind, TaskKind::sow_dry);
}

TEST(RecordedWork, TakesACountNearItsDayOrLaterForALook) {
  struct Case {
    const char* counted;
    int seen;
    const char* first;
    const char* main;
  };

  for (const Case& one : {Case{"2026-04-03", 0, "2026-04-15", "2026-04-29"},
                          Case{"2026-04-08", 0, "done 2026-04-08", "2026-04-29"},
                          Case{"2026-04-03", 2, "done 2026-04-03", "2026-04-29"},
                          Case{"2026-04-20", 0, "done 2026-04-20", "2026-04-29"},
                          Case{"2026-04-22", 0, "none", "done 2026-04-22"},
                          Case{"2026-06-10", 5, "none", "done 2026-06-10"}}) {
    Pot pot;
    pot.count(one.counted, one.seen);
    SCOPED_TRACE(one.counted);
    const char* today = on(one.counted) < on("2026-04-20") ? "2026-04-20" : one.counted;
    EXPECT_EQ(pot.told(TaskKind::first_look, today), one.first);
    EXPECT_EQ(pot.told(TaskKind::main_look, today), one.main);
  }
}

TEST(RecordedWork, AsksForAMissedFirstLookOnlyUntilTheMainOneIsNear) {
  const Pot pot;
  EXPECT_EQ(pot.told(TaskKind::first_look, "2026-04-21"), "2026-04-15");
  EXPECT_EQ(pot.told(TaskKind::first_look, "2026-04-22"), "none");
}

TEST(RecordedWork, AsksForAMissedMainLookUntilTheFirstRest) {
  const Pot pot;
  EXPECT_EQ(pot.told(TaskKind::main_look, "2026-10-31"), "2026-04-29");
  EXPECT_EQ(pot.told(TaskKind::main_look, "2026-11-01"), "none");
}

TEST(RecordedWork, OpensTheBagThreeDaysAfterTheFirstSeedlingsSeen) {
  Pot pot;
  pot.needs.bag = true;
  EXPECT_EQ(pot.told(TaskKind::bag_off, "2026-04-02"), "2026-04-18");
  pot.count("2026-04-09", 3);
  EXPECT_EQ(pot.told(TaskKind::bag_off, "2026-04-10"), "2026-04-12");
  pot.move("2026-04-11", MoveKind::bag, "off");
  EXPECT_EQ(pot.told(TaskKind::bag_off, "2026-04-12"), "done 2026-04-11");
}

TEST(RecordedWork, KeepsTheBagClosedWhereACountFoundNoneYet) {
  Pot pot;
  pot.needs.bag = true;
  pot.count("2026-04-15", 0);
  EXPECT_EQ(pot.told(TaskKind::bag_off, "2026-04-16"), "2026-04-29");
}

TEST(RecordedWork, LetsGoOfABagThatNobodyWroteOfForFourWeeks) {
  Pot pot;
  pot.needs.bag = true;
  EXPECT_EQ(pot.told(TaskKind::bag_off, "2026-05-16"), "2026-04-18");
  EXPECT_EQ(pot.told(TaskKind::bag_off, "2026-05-17"), "none");
}

TEST(RecordedWork, KnowsAMatByTheSowingOrByAMove) {
  Pot none;
  EXPECT_EQ(none.told(TaskKind::mat_on, "2026-04-02"), "none");
  EXPECT_EQ(none.told(TaskKind::mat_off, "2026-04-02"), "none");
  none.needs.mat = true;
  EXPECT_EQ(none.told(TaskKind::mat_on, "2026-04-02"), "2026-04-01");
  Pot sown;
  sown.sowing.mat = "mat";
  EXPECT_EQ(sown.told(TaskKind::mat_on, "2026-04-02"), "done 2026-04-01");
  EXPECT_EQ(sown.told(TaskKind::mat_off, "2026-04-02"), "2026-04-29");
  sown.move("2026-04-25", MoveKind::mat, "off");
  EXPECT_EQ(sown.told(TaskKind::mat_off, "2026-04-26"), "done 2026-04-25");
  Pot moved;
  moved.move("2026-04-04", MoveKind::mat, "mat");
  EXPECT_EQ(moved.told(TaskKind::mat_on, "2026-04-05"), "done 2026-04-04");
}

TEST(RecordedWork, TakesShadeOfNaughtForNone) {
  Pot pot;
  pot.needs.shade = 0.5;
  pot.move("2026-04-10", MoveKind::shade, "0");
  EXPECT_EQ(pot.told(TaskKind::shade, "2026-04-11"), "2026-04-15");
  pot.move("2026-04-12", MoveKind::shade, "0.4");
  EXPECT_EQ(pot.told(TaskKind::shade, "2026-04-13"), "done 2026-04-12");
}

TEST(RecordedWork, GivesADryRestOnlyToPotsInWhichNothingCame) {
  Pot pot;
  pot.needs.defers = true;
  EXPECT_EQ(pot.told(TaskKind::dry_rest, "2026-07-01"), "2026-06-30");
  EXPECT_EQ(pot.told(TaskKind::re_wet, "2026-07-01"), "2026-07-22");
  pot.water("2026-07-03", WateringKind::dry_rest);
  EXPECT_EQ(pot.told(TaskKind::dry_rest, "2026-07-10"), "done 2026-07-03");
  EXPECT_EQ(pot.told(TaskKind::re_wet, "2026-07-10"), "2026-07-24");
  pot.water("2026-07-26", WateringKind::rewet);
  EXPECT_EQ(pot.told(TaskKind::re_wet, "2026-07-27"), "done 2026-07-26");
  Pot up;
  up.needs.defers = true;
  up.count("2026-05-01", 1);
  EXPECT_EQ(up.told(TaskKind::dry_rest, "2026-07-01"), "none");
  EXPECT_EQ(up.told(TaskKind::re_wet, "2026-07-01"), "none");
}

TEST(RecordedWork, TakesADryRestOfSeedlingsForTheirFirstRest) {
  Pot pot;
  EXPECT_EQ(pot.told(TaskKind::rest, "2026-07-01"), "2026-11-01");
  pot.count("2026-05-01", 7);
  pot.water("2026-10-20", WateringKind::dry_rest);
  EXPECT_EQ(pot.told(TaskKind::rest, "2026-10-21"), "done 2026-10-20");
  EXPECT_EQ(pot.told(TaskKind::dry_rest, "2026-10-21"), "none");
}

TEST(RecordedWork, IsLeftAtTheFirstRestButForWhatWasDone) {
  Pot pot;
  pot.needs.bag = true;
  pot.count("2026-05-01", 7);
  EXPECT_EQ(pot.told(TaskKind::main_look, "2026-12-01"), "done 2026-05-01");
  EXPECT_EQ(pot.told(TaskKind::bag_off, "2026-12-01"), "none");
  EXPECT_EQ(pot.told(TaskKind::rest, "2026-12-01"), "none");
}

TEST(RecordedWork, TicksWateringByNeedWhereItIsWrittenDownAndAsksForTheNext) {
  Pot pot;
  pot.needs.water_every_days = 6;
  pot.needs.waters_later_days = 4;
  const auto next = [&](std::string_view today) {
    std::string told = "none";
    for (const PotTask& task :
         recorded_work(pot.records, pot.sowing, watered, pot.needs, on(today))) {
      if (task.kind == TaskKind::water_by_need && !task.done) {
        told = format_iso_date(task.on);
      }
    }
    return told;
  };
  EXPECT_EQ(pot.told(TaskKind::water_by_need, "2026-04-20"), "none");
  pot.water("2026-04-10", WateringKind::watered);
  EXPECT_EQ(pot.told(TaskKind::water_by_need, "2026-04-12"), "done 2026-04-10");
  EXPECT_EQ(next("2026-04-12"), "2026-04-16");
  pot.water("2026-04-15", WateringKind::watered);
  EXPECT_EQ(pot.told(TaskKind::water_by_need, "2026-04-16"), "done 2026-04-15");
  EXPECT_EQ(next("2026-04-28"), "2026-04-21");
  EXPECT_EQ(next("2026-04-29"), "2026-04-19"); // from the main look on
  EXPECT_EQ(next("2026-05-17"), "2026-04-19");
  EXPECT_EQ(next("2026-05-18"), "none"); // let go of
  pot.water("2026-05-20", WateringKind::dry_rest);
  EXPECT_EQ(pot.told(TaskKind::water_by_need, "2026-05-21"), "none");
}

// Its rest begins on 1 November.
TEST(RecordedWork, OfAnEvergreenGoesOnThroughItsRestingSeason) {
  const auto open = [](species_rules::FirstRestWay way, TaskKind kind) {
    Pot pot;
    pot.needs.first_rest = way;
    pot.needs.waters_later_days = 4;
    pot.water("2026-12-01", WateringKind::watered);
    for (const PotTask& task :
         recorded_work(pot.records, pot.sowing, watered, pot.needs, on("2026-12-03"))) {
      if (task.kind == kind && !task.done) {
        return format_iso_date(task.on);
      }
    }
    return std::string("none");
  };
  EXPECT_EQ(open(species_rules::FirstRestWay::none, TaskKind::water_by_need), "2026-12-05");
  EXPECT_EQ(open(species_rules::FirstRestWay::dry, TaskKind::water_by_need), "none");
}

TEST(RecordedWork, TellsOfPrickingOutInTheFirstSeasonToo) {
  Pot pot;
  EXPECT_EQ(pot.told(TaskKind::prick_out, "2026-08-01"), "none");
  pot.records.pottings.push_back({0, 1, on("2026-07-01"), PottingKind::pricked_out, 5});
  EXPECT_EQ(pot.told(TaskKind::prick_out, "2026-08-01"), "done 2026-07-01");
}

TEST(LaterWork, TakesTheWaterThatWokeAPotForNoneByNeed) {
  Pot pot;
  LaterPotNeeds needs;
  needs.grows_from = on("2027-04-01");
  needs.water_every_days = 4;
  pot.water("2027-04-01", WateringKind::watered);
  const auto waters = [&] {
    const auto work = recorded_later_work(pot.records, pot.sowing, needs, on("2027-04-10"));
    return std::count_if(work.begin(), work.end(), [](const PotTask& task) {
      return task.kind == TaskKind::water_by_need;
    });
  };
  EXPECT_EQ(waters(), 0);
  EXPECT_FALSE(waters_are_told(pot.records, pot.sowing.id, needs.by_need_from()));
  pot.water("2027-04-08", WateringKind::watered);
  EXPECT_EQ(waters(), 2); // that one, and the next
}

TEST(LaterWork, OfAnEvergreenBeginsWithoutWaking) {
  Pot pot;
  LaterPotNeeds needs;
  needs.grows_from = on("2027-04-01");
  needs.woken = false;
  needs.rests = on("2027-11-01");
  needs.rest = species_rules::FirstRestWay::none;
  const auto work = recorded_later_work(pot.records, pot.sowing, needs, on("2027-04-10"));
  ASSERT_EQ(work.size(), 1);
  EXPECT_EQ(work[0].kind, TaskKind::keep_watering);
  EXPECT_EQ(work[0].on, on("2027-11-01"));
}

TEST(LaterWork, AsksForPrickingOutAndPottingOnUntilTheyAreWrittenDown) {
  Pot pot;
  LaterPotNeeds needs;
  needs.grows_from = on("2027-04-01");
  needs.prick_out = true;
  needs.pot_on = true;
  needs.rests = on("2027-11-01");
  const auto told = [&](TaskKind kind, std::string_view today) -> std::string {
    for (const PotTask& task : recorded_later_work(pot.records, pot.sowing, needs, on(today))) {
      if (task.kind == kind) {
        return (task.done ? "done " : "") + format_iso_date(task.on);
      }
    }
    return "none";
  };
  EXPECT_EQ(told(TaskKind::wake, "2027-04-10"), "done 2027-04-01");
  EXPECT_EQ(told(TaskKind::prick_out, "2027-04-10"), "2027-04-01");
  EXPECT_EQ(told(TaskKind::prick_out, "2027-04-30"), "none");
  EXPECT_EQ(told(TaskKind::pot_on, "2027-04-10"), "2027-04-01");
  pot.records.pottings.push_back({0, 1, on("2027-04-08"), PottingKind::pricked_out, {}});
  EXPECT_EQ(told(TaskKind::prick_out, "2027-04-10"), "done 2027-04-08");
  EXPECT_EQ(told(TaskKind::pot_on, "2027-04-10"), "2027-04-01");
  pot.records.pottings.push_back({0, 1, on("2026-10-01"), PottingKind::potted_on, {}});
  EXPECT_EQ(told(TaskKind::pot_on, "2027-04-10"), "none"); // done in an earlier season
  needs.prick_out = false;
  pot.records.pottings.clear();
  EXPECT_EQ(told(TaskKind::prick_out, "2027-04-10"), "none");
}

class RecordedInAPlan : public testing::TestWithParam<int> {
protected:
  /// One sowing watered 70 days ago, two months behind the hottest night.
  [[nodiscard]] static LoadedGarden garden() {
    InventedGarden invented;
    invented.climate.hottest_day_of_year = GetParam();
    invented.days_after_hottest = 130;
    LoadedGarden loaded = support::garden_of(invented);
    RecordedSowing sowing;
    sowing.id = 7;
    sowing.packet_id = "p1";
    sowing.taxon = "Lachenalia mutabilis";
    sowing.on = loaded.today - Days{70};
    sowing.first_water = sowing.on;
    sowing.seeds = 40;
    sowing.packet = support::packet_from("Lachenalia mutabilis, 40 seeds, harvested 270 days ago",
                                         loaded.today);
    loaded.records.sowings = {sowing};
    return loaded;
  }

  static const Task* task_of(const PlanAnswer& answer, TaskKind kind) {
    const auto found = std::find_if(answer.tasks.begin(),
                                    answer.tasks.end(),
                                    [&](const Task& task) { return task.kind == kind; });
    return found == answer.tasks.end() ? nullptr : &*found;
  }

  static bool asked_for(const TodayAnswer& answer, TaskKind kind) {
    return std::any_of(answer.now.begin(), answer.now.end(), [&](const DiaryEntry& entry) {
      return std::any_of(entry.tasks.begin(), entry.tasks.end(), [&](const Task& task) {
        return task.kind == kind;
      });
    });
  }
};

TEST_P(RecordedInAPlan, AMissedLookIsOverdueTodayUntilItIsCounted) {
  LoadedGarden loaded = garden();
  const PlanAnswer before = plan(loaded, {});
  const Task* due = task_of(before, TaskKind::main_look);
  ASSERT_NE(due, nullptr);
  ASSERT_TRUE(due->overdue_since);
  EXPECT_LT(*due->overdue_since, loaded.today);
  EXPECT_EQ(due->on, loaded.today);
  EXPECT_TRUE(asked_for(today(loaded), TaskKind::main_look));

  SeedlingCount count = support::invented_count(7, format_iso_date(loaded.today), 11);
  loaded.records.counts = {count};
  const PlanAnswer after = plan(loaded, {});
  const Task* done = task_of(after, TaskKind::main_look);
  ASSERT_NE(done, nullptr);
  EXPECT_EQ(done->done_on, loaded.today);
  EXPECT_FALSE(done->overdue_since);
  EXPECT_FALSE(asked_for(today(loaded), TaskKind::main_look));
}

TEST_P(RecordedInAPlan, AClosedSowingIsNoWorkAndNotCarried) {
  LoadedGarden loaded = garden();
  ASSERT_EQ(plan(loaded, {}).carried.size(), 1U);
  loaded.records.closings = {{9, 7, loaded.today, ClosingReason::thrown_out}};
  const PlanAnswer answer = plan(loaded, {});
  EXPECT_TRUE(answer.carried.empty());
  EXPECT_EQ(task_of(answer, TaskKind::main_look), nullptr);
  EXPECT_FALSE(asked_for(today(loaded), TaskKind::main_look));
}

TEST_P(RecordedInAPlan, WhatIsDoneStaysInTheCalendarAndSaysSo) {
  const LoadedGarden loaded = garden();
  const PlanAnswer answer = plan(loaded, {});
  const auto watered_entry =
      std::find_if(answer.diary.begin(), answer.diary.end(), [](const DiaryEntry& entry) {
        return entry.kind == TaskKind::first_water;
      });
  ASSERT_NE(watered_entry, answer.diary.end());
  EXPECT_TRUE(watered_entry->done());
  EXPECT_EQ(watered_entry->on, loaded.today - Days{70});
  EXPECT_EQ(entry_title(*watered_entry), "First water, done");
  EXPECT_NE(plan_calendar(answer).find("SUMMARY:First water\\, done"), std::string::npos);
  EXPECT_FALSE(asked_for(today(loaded), TaskKind::first_water));
}

INSTANTIATE_TEST_SUITE_P(SouthAndNorth,
                         RecordedInAPlan,
                         testing::Values(support::hottest_in_the_south,
                                         support::hottest_in_the_north));

TEST(OverdueSowings, AreThoseWhoseSavedDayPassedWithoutASowing) {
  Task task;
  task.kind = TaskKind::sow_dry;
  task.packets = {"a", "b"};
  SavedPlan saved;
  SavedLine line;
  line.packet = "b";
  line.sow_on = on("2026-04-11");
  saved.lines = {line};
  const auto overdue = [&](const Records& records, std::string_view today) {
    std::vector<Task> tasks{task};
    mark_overdue_sowings(saved, records, on(today), tasks);
    return tasks.front().overdue_since;
  };
  EXPECT_EQ(overdue({}, "2026-04-11"), std::nullopt);
  EXPECT_EQ(overdue({}, "2026-04-12"), on("2026-04-11"));
  Records sown;
  sown.sowings = {support::invented_sowing()};
  sown.sowings.front().packet_id = "b";
  EXPECT_EQ(overdue(sown, "2026-04-12"), std::nullopt);
}

TEST(RecordedWork, AsksForWhatTheKindDoesInItsRestingSeason) {
  using species_rules::FirstRestWay;

  struct Case {
    FirstRestWay way;
    TaskKind asked;
  };

  constexpr std::array<TaskKind, 4> all{
      TaskKind::rest, TaskKind::rest_moist, TaskKind::keep_watering, TaskKind::gather_seed};
  for (const Case& one : {Case{FirstRestWay::dry, TaskKind::rest},
                          Case{FirstRestWay::barely_moist, TaskKind::rest_moist},
                          Case{FirstRestWay::none, TaskKind::keep_watering},
                          Case{FirstRestWay::dies, TaskKind::gather_seed}}) {
    Pot pot;
    pot.needs.first_rest = one.way;
    pot.count("2026-05-01", 5);
    for (const TaskKind kind : all) {
      EXPECT_EQ(pot.told(kind, "2026-06-01"), kind == one.asked ? "2026-11-01" : "none")
          << name_of(one.asked) << ", " << name_of(kind);
    }
  }
}

TEST(RecordedWork, AsksForNoDryRestOfPotsThatMayNotGoDry) {
  Pot pot;
  pot.needs.defers = true;
  pot.count("2026-06-01", 0);
  EXPECT_EQ(pot.told(TaskKind::dry_rest, "2026-06-01"), "2026-06-30");
  pot.needs.may_go_dry = false;
  EXPECT_EQ(pot.told(TaskKind::dry_rest, "2026-06-01"), "none");
  EXPECT_EQ(pot.told(TaskKind::re_wet, "2026-06-01"), "none");
}

} // namespace
} // namespace nightsow::planner
