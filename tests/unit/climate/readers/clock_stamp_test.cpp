#include "climate/readers/clock_stamp.hpp"

#include "climate/base/problem.hpp"

#include <date/date.h>
#include <gtest/gtest.h>

#include <sstream>
#include <string>
#include <vector>

namespace nightsow::climate {
namespace {

std::string text_of(date::local_seconds clock) {
  return date::format("%F %T", clock);
}

std::string clock_of(std::string_view field, StampOrder order = StampOrder::year_first) {
  const auto stamp = read_stamp(field);
  const auto clock = stamp ? clock_time(*stamp, order) : std::nullopt;
  return clock ? text_of(*clock) : "";
}

struct Case {
  const char* field;
  StampOrder order;
  const char* clock;
};

TEST(ClockStamp, ReadsEveryForm) {
  constexpr auto year = StampOrder::year_first;
  constexpr auto day = StampOrder::day_first;
  constexpr auto month = StampOrder::month_first;
  for (const Case& test : {
           Case{"2024-03-31 21:30", year, "2024-03-31 21:30:00"},
           Case{"2024-03-31T21:30:05", year, "2024-03-31 21:30:05"},
           Case{"2024/3/1 4:05", year, "2024-03-01 04:05:00"},
           Case{"20240331 21:30", year, "2024-03-31 21:30:00"},
           Case{"2024-03-31 21:30:05.250", year, "2024-03-31 21:30:05"},
           Case{"29.03.2026 01:30", year, "2026-03-29 01:30:00"},
           Case{"29.03.26 01:30", day, "2026-03-29 01:30:00"},
           Case{"31-05-2019 23:00", day, "2019-05-31 23:00:00"},
           Case{"05/31/2019 23:00", month, "2019-05-31 23:00:00"},
           Case{"03/11/17 11:30:00 PM", month, "2017-03-11 23:30:00"},
           Case{"21/08/16 9:05:00 PM", day, "2016-08-21 21:05:00"},
           Case{"20-12-25 9:45:01", year, "2020-12-25 09:45:01"},
           Case{"01/02/98 0:00", day, "1998-02-01 00:00:00"},
           Case{"2024-03-31 24:00", year, "2024-04-01 00:00:00"},
           Case{"  2024-03-31  21:30  ", year, "2024-03-31 21:30:00"},
           Case{"2024-03-31", year, "2024-03-31 00:00:00"},
       }) {
    EXPECT_EQ(clock_of(test.field, test.order), test.clock) << test.field;
  }
}

TEST(ClockStamp, TwelveAtNightIsHourNoughtAndTwelveByDayIsTwelve) {
  EXPECT_EQ(clock_of("2024-03-31 12:15 AM"), "2024-03-31 00:15:00");
  EXPECT_EQ(clock_of("2024-03-31 12:15 p.m."), "2024-03-31 12:15:00");
  EXPECT_EQ(clock_of("2024-03-31 1:15:00 a. m."), "2024-03-31 01:15:00");
  EXPECT_EQ(clock_of("2024-03-31 13:15 PM"), "");
}

TEST(ClockStamp, RefusesWhatIsNoTime) {
  for (const char* field : {"",
                            "noon",
                            "2024-02-30 10:00",
                            "2024-03-31 10:60",
                            "2024-03-31 25:00",
                            "2024-03-31 10:00 cheese",
                            "1/2",
                            "123-4-5 10:00",
                            "2024-03/31 10:00",
                            "2024-03-31x10:00"}) {
    EXPECT_EQ(clock_of(field), "") << field;
  }
}

TEST(ClockStamp, TheOffsetStandsBehindTheTime) {
  const auto offset = [](const char* field) {
    const auto stamp = read_stamp(field);
    return stamp && stamp->offset ? static_cast<int>(stamp->offset->count()) : -1;
  };
  EXPECT_EQ(offset("2024-03-31T21:30:00Z"), 0);
  EXPECT_EQ(offset("2024-03-31T21:30:00+02:00"), 7200);
  EXPECT_EQ(offset("2024-03-31 21:30 +0530"), 19800);
  EXPECT_EQ(offset("2024-03-31 21:30 UTC"), 0);
  EXPECT_EQ(offset("2024-03-31T21:30-05"), -18000);
  EXPECT_EQ(offset("2024-03-31T21:30"), -1);
}

TEST(ClockStamp, TheOffsetInANameIsFoundAndTakenOut) {
  EXPECT_EQ(offset_in("Date Time, GMT-05:00")->count(), -18000);
  EXPECT_EQ(offset_in("Tiempo UTC-4")->count(), -14400);
  EXPECT_EQ(offset_in("Time (UTC)")->count(), 0);
  EXPECT_EQ(offset_in("time utc+9:30")->count(), 34200);
  EXPECT_FALSE(offset_in("Time"));
  EXPECT_EQ(without_offset("Date Time, GMT-05:00"), "Date Time, ");
  EXPECT_EQ(without_offset("Time (UTC) of logger"), "Time () of logger");
}

TEST(ClockStamp, AnHourAloneIsATimeOnlyWhereItMayBe) {
  EXPECT_EQ(read_time_of_day("13", true)->count(), 13 * 3600);
  EXPECT_EQ(read_time_of_day("1330", true)->count(), 13 * 3600 + 30 * 60);
  EXPECT_EQ(read_time_of_day("2400", true)->count(), 86400);
  EXPECT_FALSE(read_time_of_day("13", false));
  EXPECT_FALSE(read_time_of_day("25", true));
  EXPECT_FALSE(read_time_of_day("1275", true));
  EXPECT_EQ(read_time_of_day("9:05 PM", false)->count(), 21 * 3600 + 300);
}

TEST(ClockStamp, SecondsSince1970AreTold) {
  // source: POSIX, 1 000 000 000 s is 2001-09-09 01:46:40 UTC
  EXPECT_EQ(date::format("%F %T", *read_unix_time("1000000000")), "2001-09-09 01:46:40");
  EXPECT_EQ(read_unix_time("1000000000000"), read_unix_time("1000000000"));
  EXPECT_FALSE(read_unix_time("20240331"));
  EXPECT_FALSE(read_unix_time("21.5"));
}

std::vector<PlacedStamp> stamps(const std::vector<const char*>& fields) {
  std::vector<PlacedStamp> placed;
  for (const char* field : fields) {
    placed.push_back({*read_stamp(field), placed.size() + 2});
  }
  return placed;
}

std::string refusal_of(const std::vector<const char*>& fields) {
  try {
    static_cast<void>(find_stamp_order(stamps(fields), "Time", "file.csv"));
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

TEST(StampOrder, ANumberOverTwelveDecidesForTheWholeFile) {
  const auto found =
      find_stamp_order(stamps({"03/04/2024 1:00", "13/04/2024 1:00"}), "Time", "file.csv");
  EXPECT_EQ(found.order, StampOrder::day_first);
  EXPECT_EQ(found.because, "dates are day/month/year: some can be read in no other way");
}

TEST(StampOrder, TheClockRunsOnWithoutLeaps) {
  EXPECT_EQ(find_stamp_order(stamps({"03/11/17 11:30 PM", "03/12/17 12:00 AM"}), "Time", "f").order,
            StampOrder::month_first);
  EXPECT_EQ(find_stamp_order(stamps({"03-11-07 23:30", "04-11-07 0:00"}), "Time", "f").order,
            StampOrder::day_first);
  EXPECT_EQ(find_stamp_order(stamps({"07-11-03 23:30", "07-11-04 0:00"}), "Time", "f").order,
            StampOrder::year_first);
}

TEST(StampOrder, ADateLedByItsYearNeedsNoOrder) {
  EXPECT_EQ(find_stamp_order(stamps({"2024-03-04 1:00"}), "Time", "f").because, "");
}

TEST(StampOrder, TheColumnsNameTellsWhereTheDatesDoNot) {
  EXPECT_EQ(find_stamp_order(stamps({"03/04/05 1:00"}), "Time (dd/mm/yy)", "f").order,
            StampOrder::day_first);
  EXPECT_EQ(find_stamp_order(stamps({"03/04/05 1:00"}), "Time (mm/dd/yy)", "f").order,
            StampOrder::month_first);
  EXPECT_EQ(find_stamp_order(stamps({"03-04-05 1:00"}), "Time (yy-mm-dd)", "f").order,
            StampOrder::year_first);
}

TEST(StampOrder, WhatNothingTellsIsAsked) {
  EXPECT_EQ(refusal_of({"03/04/2024 1:00", "03/04/2024 2:00"}),
            "file.csv:2: no date of the file tells the order of day, month and year; expected "
            "dates of one order, such as 2024-03-31 21:30; is it day/month, month/day or year "
            "first? Name the column 'Time (dd/mm/yy)', 'Time (mm/dd/yy)' or 'Time (yy-mm-dd)'");
}

TEST(StampOrder, DatesThatContradictEachOtherAreRefused) {
  EXPECT_NE(refusal_of({"13/04/2024 1:00", "04/13/2024 1:00"}).find("no order of day"),
            std::string::npos);
}

} // namespace
} // namespace nightsow::climate
