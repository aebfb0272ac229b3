#include "planner/render/dates.hpp"

#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

std::string said(const Spread& when) {
  return spread_text(when, day("2026-02-20"));
}

TEST(Dates, ADayIsWrittenOutWithItsMonth) {
  EXPECT_EQ(date_text(day("2026-04-12")), "12 Apr 2026");
  EXPECT_EQ(month_text(12), "Dec");
}

TEST(Dates, TheYearIsSaidOnlyWhereItIsAnother) {
  EXPECT_EQ(day_text(day("2026-12-31"), day("2026-02-20")), "31 Dec");
  EXPECT_EQ(day_text(day("2027-01-01"), day("2026-02-20")), "1 Jan 2027");
}

TEST(Dates, ASpreadHasItsMiddleAndEightInTen) {
  EXPECT_EQ(said(spread("2026-04-01", "2026-04-12", "2026-04-26")), "12 Apr (1-26 Apr)");
  EXPECT_EQ(said(spread("2026-03-28", "2026-04-05", "2026-04-14")), "5 Apr (28 Mar-14 Apr)");
}

TEST(Dates, WhatMayNotComeAtAllIsSaid) {
  EXPECT_EQ(said(spread("2026-04-01", "2026-04-12", "2026-04-26", 0.1)),
            "12 Apr (1-26 Apr), not at all in 1 of 10 years");
  EXPECT_EQ(never_text(0.02), "not at all in 1 of 50 years");
  EXPECT_EQ(never_text(0.0), "");
  EXPECT_EQ(never_text(1.0), "not at all in nearly every year");
}

TEST(Dates, ACertainDateStandsAlone) {
  EXPECT_EQ(said(spread("2026-04-12", "2026-04-12", "2026-04-12")), "12 Apr");
}

TEST(Dates, AnEndBeyondTheNightsSearchedIsLeftOut) {
  EXPECT_EQ(said({day("2026-04-01"), day("2026-05-12"), {}, 0.3}),
            "12 May (1 in 10 before 1 Apr), not at all in 3 of 10 years");
  EXPECT_EQ(said({day("2026-04-01"), {}, {}, 0.6}),
            "in 1 of 10 years by 1 Apr, not at all in 6 of 10 years");
}

TEST(Dates, WithoutAnyDateNothingIsPretended) {
  EXPECT_EQ(said({}), "not known");
  EXPECT_EQ(said({{}, {}, {}, 0.99}), "not at all in nearly every year");
}

} // namespace
} // namespace nightsow::planner
