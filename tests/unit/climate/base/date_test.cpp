#include "climate/base/date.hpp"

#include <gtest/gtest.h>

#include <string>
#include <type_traits>

namespace nightsow {
namespace {

template <class A, class B>
concept CanBeAdded = requires(A a, B b) {
  a + b;
};

static_assert(!CanBeAdded<Date, Date>, "two dates have no sum");
static_assert(CanBeAdded<Date, Days>);
static_assert(std::is_same_v<decltype(Date{} - Date{}), Days>);
static_assert(!std::is_convertible_v<int, Date>);

Date day(int year, unsigned month, unsigned day_of_month) {
  return make_date(year, month, day_of_month).value();
}

TEST(Date, ReadsAndWritesTheIsoForm) {
  EXPECT_EQ(parse_iso_date("2024-03-31"), day(2024, 3, 31));
  EXPECT_EQ(format_iso_date(day(2024, 3, 31)), "2024-03-31");
  EXPECT_EQ(format_iso_date(day(981, 1, 2)), "0981-01-02");
}

TEST(Date, ReadsNothingElse) {
  for (const char* text : {"",
                           "2024-3-31",
                           "2024/03/31",
                           "20240331",
                           "2024-03-31 ",
                           " 2024-03-31",
                           "2024-03-31T00:00",
                           "-024-03-31",
                           "+024-03-31",
                           "2024-03-3a",
                           "2024-+3-31"}) {
    EXPECT_FALSE(parse_iso_date(text)) << text;
  }
}

TEST(Date, KnowsWhichDaysThereAre) {
  EXPECT_FALSE(parse_iso_date("2023-02-29"));
  EXPECT_TRUE(parse_iso_date("2024-02-29"));
  EXPECT_FALSE(parse_iso_date("2024-04-31"));
  EXPECT_FALSE(parse_iso_date("2024-13-01"));
  EXPECT_FALSE(parse_iso_date("2024-00-10"));
  EXPECT_FALSE(parse_iso_date("2024-01-00"));
}

TEST(Date, CountsDaysAcrossTheLeapDay) {
  EXPECT_EQ(day(2024, 3, 1) - day(2024, 2, 28), Days{2});
  EXPECT_EQ(day(2023, 3, 1) - day(2023, 2, 28), Days{1});
}

TEST(Date, NumbersTheDaysOfTheYear) {
  EXPECT_EQ(day_of_year(day(2023, 1, 1)), 1);
  EXPECT_EQ(day_of_year(day(2023, 12, 31)), 365);
  EXPECT_EQ(day_of_year(day(2024, 12, 31)), 366);
  EXPECT_EQ(year_of(day(2024, 12, 31)), 2024);
}

TEST(Date, TheLeapDayRecursOnTheFirstOfMarch) {
  EXPECT_EQ(recurring_day(day(2024, 2, 29)), date::March / 1);
  EXPECT_EQ(recurring_day(day(2024, 2, 28)), date::February / 28);
}

TEST(Date, ADayThatAYearLacksBecomesTheFirstOfMarch) {
  EXPECT_EQ(in_year(date::February / 29, 2023), day(2023, 3, 1));
  EXPECT_EQ(in_year(date::February / 29, 2024), day(2024, 2, 29));
  EXPECT_EQ(in_year(date::January / 20, 2023), day(2023, 1, 20));
}

} // namespace
} // namespace nightsow
