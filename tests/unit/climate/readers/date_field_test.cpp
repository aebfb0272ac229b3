#include "climate/readers/date_field.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <string_view>
#include <utility>

namespace nightsow::climate {
namespace {

const Date last_of_march = make_date(2024, 3, 31).value();
const Date third_of_april = make_date(2024, 4, 3).value();

std::optional<Date> date(std::string_view field, std::optional<DayOrder> order = std::nullopt) {
  const auto found = read_date(field, order);
  return found ? std::optional(found->date) : std::nullopt;
}

TEST(DateField, ReadsTheFormsThatNeedNoOrder) {
  for (const char* text : {"2024-03-31",
                           "2024/03/31",
                           "2024.03.31",
                           "20240331",
                           "31.03.2024",
                           "31.3.2024",
                           "2024-3-31",
                           "2024/3/31",
                           " 2024-03-31 "}) {
    EXPECT_EQ(date(text), last_of_march) << text;
  }
}

TEST(DateField, LeavesATimeOfDayAside) {
  for (const char* text : {"2024-03-31T00:00",
                           "2024-03-31 00:00:00",
                           "2024-03-31T00:00:00Z",
                           "2024-03-31T00:00+02:00",
                           "31.03.2024 0:00:00",
                           "20240331T00:00"}) {
    EXPECT_EQ(date(text), last_of_march) << text;
  }
}

TEST(DateField, SaysWhichTimeItWas) {
  EXPECT_EQ(read_date("2024-03-31T09:00", std::nullopt)->time, "T09:00");
  EXPECT_EQ(read_date("2024-03-31", std::nullopt)->time, "");
}

TEST(DateField, ReadsSlashesOnlyWithAnOrder) {
  for (const char* text : {"3/4/2024", "03/04/2024", "3-4-2024", "03-04-2024"}) {
    EXPECT_FALSE(date(text)) << text;
    EXPECT_EQ(date(text, DayOrder::day_first), third_of_april) << text;
    EXPECT_EQ(date(text, DayOrder::month_first), make_date(2024, 3, 4)) << text;
  }
}

TEST(DateField, AnOrderDoesNotTouchTheOtherForms) {
  EXPECT_EQ(date("2024-04-03", DayOrder::month_first), third_of_april);
  EXPECT_EQ(date("03.04.2024", DayOrder::month_first), third_of_april);
}

TEST(DateField, ReadsNothingElse) {
  for (const char* text : {"",
                           "x",
                           "2024",
                           "2024-03",
                           "2024-03-32",
                           "2023-02-29",
                           "2024-13-01",
                           "31/3/24",
                           "24-03-31",
                           "2024-03/31",
                           "2024--31",
                           "2024-03-31x",
                           "2024-03-31T",
                           "2024-03-31 x",
                           "202403311",
                           "2024033",
                           "19870601:2100",
                           "31 Mar 2024",
                           "-2024-03-31"}) {
    EXPECT_FALSE(date(text, DayOrder::day_first)) << text;
  }
}

TEST(DateField, YearsWithoutThermometersAreSlips) {
  EXPECT_FALSE(date("0202-03-31"));
  EXPECT_FALSE(date("1649-12-31"));
  EXPECT_TRUE(date("1650-01-01"));
  EXPECT_TRUE(date("2200-12-31"));
  EXPECT_FALSE(date("2201-01-01"));
}

TEST(DateField, ReadsADateFromThreeFields) {
  EXPECT_EQ(read_date("2024", " 03", "31"), last_of_march);
  EXPECT_FALSE(read_date("2024", "3", "32"));
  EXPECT_FALSE(read_date("2024", "", "31"));
  EXPECT_FALSE(read_date("2024", "3", "-1"));
}

TEST(DateField, ShowsTheNumbersOfADateWithoutOrder) {
  const auto numbers = unordered_date("13/4/2024");
  ASSERT_TRUE(numbers);
  EXPECT_EQ(numbers->first, 13);
  EXPECT_EQ(numbers->second, 4);
  EXPECT_FALSE(unordered_date("13.4.2024"));
  EXPECT_FALSE(unordered_date("2024-04-13"));
}

TEST(DateInYear, CountsFromTheFirstOfJanuary) {
  EXPECT_EQ(format_iso_date(date_in_year(2024, 1).value()), "2024-01-01");
  EXPECT_EQ(format_iso_date(date_in_year(2024, 366).value()), "2024-12-31");
  EXPECT_EQ(format_iso_date(date_in_year(2023, 365).value()), "2023-12-31");
  for (const auto& [year, day] : {std::pair{2023, 366},
                                  std::pair{2024, 0},
                                  std::pair{2024, 367},
                                  std::pair{earliest_year - 1, 1}}) {
    EXPECT_FALSE(date_in_year(year, day).has_value()) << year << ' ' << day;
  }
}

} // namespace
} // namespace nightsow::climate
