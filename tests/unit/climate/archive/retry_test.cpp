#include "climate/archive/retry.hpp"

#include <date/date.h>
#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

using std::chrono::milliseconds;
using std::chrono::seconds;

// 1 March 2026, 06:00:00 UTC, a Sunday.
const std::chrono::system_clock::time_point now =
    date::sys_days{date::year{2026} / 3 / 1} + std::chrono::hours{6};

TEST(Retry, AServerMayAskForSecondsOrForAnInstant) {
  EXPECT_EQ(read_retry_after("120", now), seconds{120});
  EXPECT_EQ(read_retry_after(" 0 ", now), seconds{0});
  EXPECT_EQ(read_retry_after("Sun, 01 Mar 2026 06:00:30 GMT", now), seconds{30});
}

TEST(Retry, AnInstantThatHasPassedIsNoWait) {
  EXPECT_EQ(read_retry_after("Sun, 01 Mar 2026 05:59:59 GMT", now), seconds{0});
}

TEST(Retry, AnInstantOfTheFarFutureIsALongWait) {
  EXPECT_GT(read_retry_after("Fri, 31 Dec 9999 23:59:59 GMT", now), std::chrono::hours{24 * 365});
}

TEST(Retry, WhatIsNeitherAsksForNothing) {
  for (const char* text : {"", "soon", "-5", "12 parsecs", "2026-03-01", "99999999999999999999"}) {
    EXPECT_EQ(read_retry_after(text, now), std::nullopt) << text;
  }
}

TEST(Retry, WaitsGrowAndStayWithinTheirBounds) {
  milliseconds most{500};
  for (int attempt = 1; attempt <= 6; ++attempt, most *= 2) {
    const milliseconds wait = back_off(attempt, "https://archive.invalid/a");
    EXPECT_GE(wait, most / 2) << attempt;
    EXPECT_LE(wait, most) << attempt;
  }
  EXPECT_LE(back_off(1000, "https://archive.invalid/a"), seconds{30});
}

TEST(Retry, OneAskerWaitsTheSameEachTimeAndTwoDoNotMeet) {
  EXPECT_EQ(back_off(3, "https://archive.invalid/a"), back_off(3, "https://archive.invalid/a"));
  EXPECT_NE(back_off(3, "https://archive.invalid/a"), back_off(3, "https://archive.invalid/b"));
}

} // namespace
} // namespace nightsow::climate
