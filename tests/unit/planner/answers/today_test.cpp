#include "planner/answers/today.hpp"

#include "planner/answers/plan.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <optional>

namespace nightsow::planner {
namespace {

support::InventedGarden some_garden(int days_after_hottest) {
  support::InventedGarden garden;
  garden.climate.hottest_day_of_year = support::hottest_in_the_south;
  garden.days_after_hottest = days_after_hottest;
  garden.packets = {"Bulbine annua, 40 seeds, harvested 300 days ago",
                    "Albuca spiralis, 30 seeds, harvested 400 days ago",
                    "Brunsvigia josephinae, 6 seeds, harvested 3 days ago",
                    "Pachypodium namaquanum, 8 seeds, harvested 60 days ago"};
  return garden;
}

// Of an entry of which some is due this week, what follows is still to come.
TEST(Today, TellsTheFirstTaskBehindTheWeekWhicheverEntryItBelongsTo) {
  int of_an_entry_that_is_due = 0;
  for (int day = -60; day < 300; day += 15) {
    const LoadedGarden garden = support::garden_of(some_garden(day));
    const TodayAnswer answer = today(garden);
    std::optional<Date> first;
    for (const Task& task : plan(garden, {}).tasks) {
      if (task.on > answer.to && (!first || task.on < *first)) {
        first = task.on;
      }
    }
    ASSERT_EQ(answer.next.has_value(), first.has_value()) << day;
    if (first) {
      EXPECT_EQ(answer.next->on, *first) << day;
      EXPECT_EQ(answer.next->tasks.front().on, *first) << day;
      for (const DiaryEntry& due : answer.now) {
        of_an_entry_that_is_due +=
            due.group == answer.next->group && due.kind == answer.next->kind ? 1 : 0;
      }
    }
  }
  EXPECT_GT(of_an_entry_that_is_due, 0) << "no case was to the point";
}

struct Reading {
  double night_c;
  bool alarms;
};

// 3.04 is shown as 3.0, which is the limit, but lies over it.
TEST(Today, ComparesWithTheFrostLimitBeforeItRounds) {
  for (const Reading& reading : {Reading{2.9, true},
                                 Reading{3.0, true},
                                 Reading{3.004, true},
                                 Reading{3.04, false},
                                 Reading{3.2, false}}) {
    support::InventedGarden invented = some_garden(150);
    GardenFolder folder = support::folder_of(invented);
    const Date day = support::today_of(invented);
    climate::DailySeries& series = folder.station.series;
    for (int back = 0; back <= 20; ++back) {
      const std::size_t index = *series.index_of(day - Days{back});
      series.set_night(index, 9.0F);
      series.set_day(index, 16.0F);
    }
    series.set_night(*series.index_of(day - Days{1}), static_cast<float>(reading.night_c));
    bool alarmed = false;
    for (const WeatherAlarm& alarm : today(as_of(folder, day)).alarms) {
      alarmed = alarmed || alarm.kind == WeatherAlarm::Kind::frost;
    }
    EXPECT_EQ(alarmed, reading.alarms) << reading.night_c;
  }
}

} // namespace
} // namespace nightsow::planner
