#include "planner/garden/date_range.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace nightsow::planner {
namespace {

using support::day;

// "2025-11-01..2025-11-30", or nothing.
std::string days_of(std::string_view text) {
  const auto range = parse_date_range(text);
  return range ? format_iso_date(range->first) + ".." + format_iso_date(range->last) : "";
}

TEST(DateRange, AYearAndAMonthAreAllTheirDays) {
  EXPECT_EQ(days_of("2025"), "2025-01-01..2025-12-31");
  EXPECT_EQ(days_of("2025-11"), "2025-11-01..2025-11-30");
  EXPECT_EQ(days_of("2024-02"), "2024-02-01..2024-02-29");
  EXPECT_EQ(days_of(" 2025-11-03 "), "2025-11-03..2025-11-03");
}

TEST(DateRange, FormsOfSpreadsheetsAreReadWhereTheySayOneThing) {
  for (const std::string_view text :
       {"11/2025", "2025/11", "11.2025", "Nov 2025", "Nov. 2025", "november-2025", "2025 Nov"}) {
    EXPECT_EQ(days_of(text), "2025-11-01..2025-11-30") << text;
  }
  for (const std::string_view text : {"2025/11/03",
                                      "2025-11-3",
                                      "2025.11.03",
                                      "3.11.2025",
                                      "3 Nov 2025",
                                      "Nov 3 2025",
                                      "3-Nov-2025"}) {
    EXPECT_EQ(days_of(text), "2025-11-03..2025-11-03") << text;
  }
}

TEST(DateRange, OfTwoNumbersBeforeAYearTheOneThatIsNoMonthIsTheDay) {
  EXPECT_EQ(days_of("25/11/2025"), "2025-11-25..2025-11-25");
  EXPECT_EQ(days_of("11/25/2025"), "2025-11-25..2025-11-25");
  EXPECT_EQ(days_of("11/11/2025"), "2025-11-11..2025-11-11");
  EXPECT_EQ(days_of("12/13/2025"), "2025-12-13..2025-12-13");
  EXPECT_EQ(days_of("12/11/2025"), "");
}

TEST(DateRange, WhatMayMeanTwoThingsOrNothingIsNotRead) {
  for (const std::string_view text : {"03/11/2025",
                                      "11/25",
                                      "Nov-25",
                                      "03.11.25",
                                      "2025-13",
                                      "2025-02-29",
                                      "25/13/2025",
                                      "25",
                                      "2025-",
                                      "-2025",
                                      "20251103",
                                      "last year",
                                      "ma 2025",
                                      "45964",
                                      "1025",
                                      "2025/26",
                                      ""}) {
    EXPECT_EQ(days_of(text), "") << text;
  }
}

TEST(DateRange, IsWrittenAsShortAsItWasMeant) {
  for (const std::string_view text : {"2025", "2025-11", "2025-11-03", "2024-02"}) {
    EXPECT_EQ(format_date_range(*parse_date_range(text)), text);
  }
}

TEST(DateRange, ItsMiddleLiesBetween) {
  EXPECT_EQ((DateRange{day("2025-11-01"), day("2025-11-30")}).middle(), day("2025-11-15"));
  EXPECT_EQ((DateRange{day("2025-11-03"), day("2025-11-03")}).middle(), day("2025-11-03"));
}

TEST(MonthsBefore, TheLastDayOfALongMonthBecomesTheLastOfAShortOne) {
  EXPECT_EQ(months_before(day("2026-01-10"), 2), day("2025-11-10"));
  EXPECT_EQ(months_before(day("2026-01-10"), 14), day("2024-11-10"));
  EXPECT_EQ(months_before(day("2026-04-30"), 2), day("2026-02-28"));
  EXPECT_EQ(months_before(day("2026-03-31"), 1), day("2026-02-28"));
}

} // namespace
} // namespace nightsow::planner
