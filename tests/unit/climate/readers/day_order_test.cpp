#include "climate/readers/day_order.hpp"

#include "climate/base/problem.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <string_view>

namespace nightsow::climate {
namespace {

// The dates stand in the first column; `name` is its header.
FoundOrder order(std::string_view rows, std::string_view name = "date") {
  const std::string text = std::string(name) + ",tmin\n" + std::string(rows);
  return find_day_order(CsvReader{text, ',', "file.csv"}, 0, name, 1, "file.csv");
}

std::string question(std::string_view rows) {
  try {
    static_cast<void>(order(rows));
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

TEST(DayOrder, ANumberOverTwelveInFrontIsADay) {
  EXPECT_EQ(order("3/4/2024,5\n13/4/2024,5\n").order, DayOrder::day_first);
}

TEST(DayOrder, ANumberOverTwelveBehindIsADay) {
  EXPECT_EQ(order("3/4/2024,5\n3/13/2024,5\n").order, DayOrder::month_first);
}

TEST(DayOrder, SaysWhichLineTold) {
  EXPECT_NE(order("3/4/2024,5\n13/4/2024,5\n14/4/2024,5\n").because.find("line 3"),
            std::string::npos);
}

TEST(DayOrder, TheLastRowMayTell) {
  std::string rows;
  for (int i = 0; i < 500; ++i) {
    rows += "3/4/2024,5\n";
  }
  EXPECT_EQ(order(rows + "3/25/2024,5\n").order, DayOrder::month_first);
}

TEST(DayOrder, AsksWhenNothingTells) {
  EXPECT_NE(question("3/4/2024,5\n4/4/2024,5\n").find("is it day/month or month/day?"),
            std::string::npos);
}

TEST(DayOrder, TheColumnsNameAnswersTheQuestion) {
  EXPECT_EQ(order("3/4/2024,5\n", "date (dd/mm/yyyy)").order, DayOrder::day_first);
  EXPECT_EQ(order("3/4/2024,5\n", "date (mm/dd/yyyy)").order, DayOrder::month_first);
}

TEST(DayOrder, RefusesRowsThatContradictEachOther) {
  EXPECT_NE(question("13/4/2024,5\n4/13/2024,5\n").find("file.csv:3"), std::string::npos);
}

TEST(DayOrder, OtherDatesNeedNoOrder) {
  EXPECT_FALSE(order("2024-04-03,5\n").order);
  EXPECT_FALSE(order("03.04.2024,5\n").order);
  EXPECT_FALSE(order("").order);
}

TEST(DayOrder, RowsThatAreNoDatesDoNotEndTheSearch) {
  EXPECT_EQ(order("°C,°C\n13/4/2024,5\n").order, DayOrder::day_first);
}

} // namespace
} // namespace nightsow::climate
