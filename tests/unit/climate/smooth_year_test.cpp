#include "climate/smooth_year.hpp"

#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

using support::invented_series;
using support::InventedClimate;

Date day(int year, unsigned month, unsigned of_month) {
  return *make_date(year, month, of_month);
}

TEST(SmoothYear, FindsTheCourseItWasMadeFrom) {
  const DailySeries series = invented_series({.trend_k_per_year = 0.03});
  const std::optional<SmoothYear> smooth = fit_smooth_year(series);
  ASSERT_TRUE(smooth);
  EXPECT_NEAR(smooth->night.trend_c_per_year, 0.03, 1e-6);
  EXPECT_NEAR(smooth->night.season_c(day(2000, 2, 5)) - smooth->night.season_c(day(2000, 8, 6)),
              10.0,
              0.01);
  ASSERT_TRUE(smooth->day);
  EXPECT_NEAR(smooth->day->constant_c - smooth->night.constant_c, 10.0, 1e-4);
}

TEST(SmoothYear, CarriesTheTrendToTheDateAskedFor) {
  const DailySeries series = invented_series({.trend_k_per_year = 0.03});
  const SmoothCurve night = fit_smooth_year(series)->night;
  EXPECT_NEAR(
      night.value_c(day(2020, 2, 5)) - night.value_c(day(2000, 2, 5)), 0.6 * trend_carried, 0.01);
}

TEST(SmoothYear, IsNotDrawnThroughLessThanAYear) {
  EXPECT_FALSE(fit_smooth_year(DailySeries{day(2000, 1, 1), 3000}));
  DailySeries half = invented_series({.years = 1});
  for (std::size_t i = 0; i < 150; ++i) {
    half.set_night(i, missing_c);
  }
  EXPECT_FALSE(fit_smooth_year(half));
}

TEST(SmoothYear, LeavesTheTrendOutOfAShortRecord) {
  const DailySeries series = invented_series({.years = 4, .trend_k_per_year = 0.5});
  const SmoothCurve night = fit_smooth_year(series)->night;
  EXPECT_FALSE(night.trend_fitted);
  EXPECT_EQ(night.shrunk_trend_c_per_year(), 0.0);
}

TEST(SmoothYear, PassesOverMissingNights) {
  DailySeries series = invented_series({});
  for (std::size_t i = 1000; i < 2000; ++i) {
    series.set_night(i, missing_c);
  }
  const SmoothCurve night = fit_smooth_year(series)->night;
  EXPECT_EQ(night.count, series.size() - 1000);
  EXPECT_NEAR(
      night.cosine_c[0] * night.cosine_c[0] + night.sine_c[0] * night.sine_c[0], 25.0, 0.01);
}

TEST(SmoothYear, ShrinksATrendThatItsErrorSwallows) {
  SmoothCurve curve;
  curve.trend_fitted = true;
  curve.trend_c_per_year = 0.02;
  curve.trend_standard_error = 0.02;
  EXPECT_NEAR(curve.shrunk_trend_c_per_year(), 0.01, 1e-12);
  curve.trend_standard_error = 0.0;
  EXPECT_NEAR(curve.shrunk_trend_c_per_year(), 0.02, 1e-12);
  EXPECT_NEAR(curve.carried_trend_c_per_year(), 0.02 * trend_carried, 1e-12);
}

} // namespace
} // namespace nightsow::climate
