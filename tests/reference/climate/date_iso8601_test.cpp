// ISO 8601 week dates and the leap years of the Gregorian calendar.
#include "climate/base/date.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace nightsow {
namespace {

struct WeekDate {
  const char* date;
  const char* week; ///< year, week and day from Monday = 1
};

std::string week_date(Date day) {
  const IsoWeek week = iso_week(day);
  const unsigned weekday = date::weekday{day}.iso_encoding();
  return std::to_string(week.year) + (week.week < 10 ? "-W0" : "-W") + std::to_string(week.week) +
         '-' + std::to_string(weekday);
}

TEST(DateIso8601, WeeksAroundTheTurnOfTheYear) {
  // The table of contrasting examples in the encyclopedia article "ISO week date".
  constexpr std::array table{WeekDate{"2005-01-01", "2004-W53-6"},
                             WeekDate{"2005-12-31", "2005-W52-6"},
                             WeekDate{"2006-01-01", "2005-W52-7"},
                             WeekDate{"2006-01-02", "2006-W01-1"},
                             WeekDate{"2008-12-28", "2008-W52-7"},
                             WeekDate{"2008-12-29", "2009-W01-1"},
                             WeekDate{"2010-01-03", "2009-W53-7"}};
  for (const WeekDate& row : table) {
    EXPECT_EQ(week_date(parse_iso_date(row.date).value()), row.week) << row.date;
  }
}

TEST(DateIso8601, TheFourthOfJanuaryLiesInWeekOne) {
  // ISO 8601-1:2019, 4.3.8 (calendar week number): the week that holds 4 January is week 1.
  for (int year = 1900; year <= 2100; ++year) {
    EXPECT_EQ(iso_week(make_date(year, 1, 4).value()), (IsoWeek{year, 1}));
  }
}

TEST(DateIso8601, EveryWeekBeginsOnItsMonday) {
  for (Date monday = make_date(2000, 1, 3).value(); year_of(monday) < 2030; monday += Days{7}) {
    EXPECT_EQ(iso_week(monday), iso_week(monday + Days{6}));
    EXPECT_NE(iso_week(monday), iso_week(monday + Days{7}));
  }
}

TEST(DateIso8601, LeapYearsAreThoseOfTheGregorianCalendar) {
  // RFC 3339, appendix C: divisible by 4, but of the centuries only those divisible by 400.
  for (const int leap : {1904, 1996, 2000, 2024, 2400}) {
    EXPECT_TRUE(make_date(leap, 2, 29)) << leap;
  }
  for (const int common : {1900, 2001, 2023, 2100, 2200}) {
    EXPECT_FALSE(make_date(common, 2, 29)) << common;
  }
}

} // namespace
} // namespace nightsow
