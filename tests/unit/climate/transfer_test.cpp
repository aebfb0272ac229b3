#include "climate/transfer.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace nightsow::climate {
namespace {

constexpr int days = 120;

/// Nights fall from 16 to 4 °C with ups and downs, days lie 10 K above.
DailySeries station() {
  DailySeries series{support::day("2025-03-01"), days};
  for (std::size_t i = 0; i < days; ++i) {
    const auto t = static_cast<double>(i);
    const double night_c = 16.0 - 0.1 * t + 1.5 * std::sin(0.7 * t);
    series.set_night(i, static_cast<float>(night_c));
    series.set_day(i, static_cast<float>(night_c + 10.0));
  }
  return series;
}

/// A bench 2 K warmer at 10 °C, and more so on cold nights; days 3 K above.
DailySeries logger(std::size_t from, std::size_t count) {
  const DailySeries outside = station();
  DailySeries series{outside.date_of(from), count};
  for (std::size_t i = 0; i < count; ++i) {
    const auto night_c = static_cast<double>(outside.night_c()[from + i]);
    series.set_night(i, static_cast<float>(12.0 + 0.8 * (night_c - 10.0)));
    series.set_day(i, outside.day_c()[from + i] + 3.0F);
  }
  return series;
}

TEST(Transfer, FindsTheLineThatMadeTheLoggersNights) {
  const Transfer transfer = fit_transfer(station(), logger(0, days));
  ASSERT_TRUE(transfer.night);
  EXPECT_NEAR(transfer.night->slope, 0.8, 1e-4);
  EXPECT_NEAR(transfer.night->at(10.0), 12.0, 1e-4);
  EXPECT_NEAR(transfer.day->at(20.0), 23.0, 1e-4);
  EXPECT_EQ(transfer.paired_nights, days);
}

TEST(Transfer, IsNotMovedByNightsOnTheKitchenTable) {
  DailySeries some_indoors = logger(0, days);
  for (std::size_t i = 10; i < days; i += 10) {
    some_indoors.set_night(i, 21.0F);
  }
  const RobustLine line = fit_transfer(station(), some_indoors).night.value();
  EXPECT_NEAR(line.at(10.0), 12.0, 0.1);
  EXPECT_NEAR(line.at(4.0), 7.2, 0.2);
}

TEST(Transfer, NeedsFourteenPairedNights) {
  EXPECT_FALSE(fit_transfer(station(), logger(0, 13)).night);
  EXPECT_TRUE(fit_transfer(station(), logger(0, 14)).night);
}

TEST(Transfer, KeepsTheSlopeAtOneWhereAFewWeeksCannotShowIt) {
  const RobustLine line = fit_transfer(station(), logger(0, 30)).night.value();
  EXPECT_EQ(line.slope, 1.0);
}

TEST(Transfer, DoesNotCountNightsThatWereFilledIn) {
  DailySeries outside = station();
  outside.set_night(3, outside.night_c()[3], Mark::filled);
  EXPECT_EQ(fit_transfer(outside, logger(0, 20)).paired_nights, 19);
}

TEST(Transfer, LeavesMaximaInTheSunOut) {
  DailySeries sunny = logger(0, days);
  for (std::size_t i = 0; i < 10; ++i) {
    sunny.set_day(i, station().day_c()[i] + 15.0F);
  }
  const Transfer transfer = fit_transfer(station(), sunny);
  EXPECT_EQ(transfer.days_in_sun, 10);
  EXPECT_NEAR(transfer.day.value().at(20.0), 23.0, 1e-4);
}

TEST(Transfer, MakesNothingOfTheDullDaysOfALoggerThatStoodInTheSun) {
  DailySeries sunny = logger(0, days);
  for (std::size_t i = 0; i < days; i += 2) {
    sunny.set_day(i, station().day_c()[i] + 15.0F);
  }
  const Transfer transfer = fit_transfer(station(), sunny);
  EXPECT_FALSE(transfer.day);
  EXPECT_TRUE(transfer.night);
}

TEST(Transfer, DoubtsALoggerOverEightKelvinAboveTheStation) {
  EXPECT_FALSE(in_the_sun(28.0, 20.0));
  EXPECT_TRUE(in_the_sun(28.1, 20.0));
  EXPECT_FALSE(in_the_sun(static_cast<double>(missing_c), 20.0));
}

} // namespace
} // namespace nightsow::climate
