#include "climate/lean_on_normals.hpp"

#include "climate/phases.hpp"
#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

namespace nightsow::climate {
namespace {

using support::invented_series;
using support::InventedClimate;

constexpr std::array<double, 12> even{10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10};

/// Means of each month of the years of a made-up climate.
std::vector<double> monthly_means(const DailySeries& series, std::span<const float> values) {
  std::vector<double> sums(12);
  std::vector<double> days(12);
  for (std::size_t i = 0; i < series.size(); ++i) {
    const std::size_t month =
        static_cast<unsigned>(date::year_month_day{series.date_of(i)}.month()) - 1;
    sums[month] += static_cast<double>(values[i]);
    days[month] += 1.0;
  }
  for (std::size_t month = 0; month < sums.size(); ++month) {
    sums[month] /= days[month];
  }
  return sums;
}

SmoothYear normals_of(const InventedClimate& climate) {
  const DailySeries series = invented_series(climate);
  return {curve_of_normals(monthly_means(series, series.night_c())),
          curve_of_normals(monthly_means(series, series.day_c()))};
}

SmoothYear fitted_to(const InventedClimate& climate) {
  return *fit_smooth_year(invented_series(climate));
}

Date day_in_2010(int day) {
  return make_date(2010, 1, 1).value() + Days{day - 1};
}

TEST(CurveOfNormals, IsTheCourseThatTheMeansWereTakenFrom) {
  const InventedClimate climate{.years = 4};
  const SmoothCurve truth = fitted_to(climate).night;
  const SmoothCurve curve = normals_of(climate).night;
  for (int day = 1; day <= 365; day += 7) {
    EXPECT_NEAR(curve.value_c(day_in_2010(day)), truth.value_c(day_in_2010(day)), 0.1) << day;
  }
  EXPECT_FALSE(curve.trend_fitted);
}

TEST(CurveOfNormals, IsLevelWhereAllMonthsAreAlike) {
  const SmoothCurve curve = curve_of_normals(even);
  EXPECT_NEAR(curve.value_c(day_in_2010(1)), 10.0, 1e-9);
  EXPECT_NEAR(curve.value_c(day_in_2010(200)), 10.0, 1e-9);
}

struct Record {
  int years;
  double share; ///< of the record in the usual year: years / (years + 3)
};

class RecordThreeKelvinTooWarm : public testing::TestWithParam<Record> {};

TEST_P(RecordThreeKelvinTooWarm, IsPulledTowardsTheNormalsByTheirShare) {
  const SmoothYear fitted = fitted_to({.years = GetParam().years, .night_mean_c = 15.0});
  const SmoothYear normals = normals_of({.years = 4, .night_mean_c = 12.0});
  const SmoothYear usual = leaned(fitted, normals);
  for (const int day : {1, 100, 200, 300}) {
    const Date date = day_in_2010(day);
    EXPECT_NEAR(usual.night.value_c(date) - normals.night.value_c(date),
                GetParam().share * (fitted.night.value_c(date) - normals.night.value_c(date)),
                1e-9)
        << day;
    EXPECT_NEAR(
        usual.night.value_c(date), fitted.night.value_c(date) - 3.0 * (1.0 - GetParam().share), 0.1)
        << day;
    EXPECT_NEAR(
        usual.day->value_c(date), fitted.day->value_c(date) - 3.0 * (1.0 - GetParam().share), 0.1)
        << day;
  }
}

// 365 days a year and a leap day in some of them, over 365.2425.
constexpr double year = 365.0 / days_a_year;
INSTANTIATE_TEST_SUITE_P(OfYears,
                         RecordThreeKelvinTooWarm,
                         testing::Values(Record{1, year / (year + 3.0)},
                                         Record{2, 2 * year / (2 * year + 3.0)},
                                         Record{9,
                                                3287 / days_a_year / (3287 / days_a_year + 3.0)}));

TEST(Leaned, TwoYearsCountForTwoFifths) {
  const SmoothCurve warm = fitted_to({.years = 2, .night_mean_c = 15.0}).night;
  const SmoothCurve usual = leaned(warm, curve_of_normals(even), 2.0);
  EXPECT_NEAR(usual.constant_c, 0.4 * warm.constant_c + 0.6 * 10.0, 1e-9);
  EXPECT_NEAR(usual.cosine_c[0], 0.4 * warm.cosine_c[0], 1e-9);
  EXPECT_NEAR(usual.sine_c[1], 0.4 * warm.sine_c[1], 1e-9);
}

TEST(Leaned, KeepsHowSingleNightsStray) {
  const SmoothCurve fitted = fitted_to({.years = 2, .night_sd_k = 2.0}).night;
  const SmoothCurve usual = leaned(fitted, curve_of_normals(even), 2.0);
  EXPECT_GT(fitted.residual_sd_c, 1.0);
  EXPECT_EQ(usual.residual_sd_c, fitted.residual_sd_c);
  EXPECT_EQ(usual.residual_lag1, fitted.residual_lag1);
  EXPECT_EQ(usual.count, fitted.count);
}

TEST(Leaned, TwelveYearsStandAlone) {
  const SmoothYear fitted = fitted_to({.years = 12, .night_mean_c = 15.0});
  const SmoothYear usual = leaned(fitted, normals_of({.years = 4, .night_mean_c = 12.0}));
  EXPECT_EQ(usual.night.constant_c, fitted.night.constant_c);
  EXPECT_EQ(usual.day->constant_c, fitted.day->constant_c);
}

TEST(Leaned, DaysReadSeldomLeanMore) {
  DailySeries series = invented_series({.years = 4, .night_mean_c = 15.0});
  for (std::size_t i = 0; i < series.size(); i += 2) {
    series.set_day(i, missing_c);
  }
  const SmoothYear fitted = *fit_smooth_year(series);
  const SmoothYear normals = normals_of({.years = 4, .night_mean_c = 12.0});
  const SmoothYear usual = leaned(fitted, normals);
  EXPECT_NEAR(usual.night.constant_c, 12.0 + 3.0 * 4.0 / 7.0, 0.05);
  EXPECT_NEAR(usual.day->constant_c, 22.0 + 3.0 * 2.0 / 5.0, 0.05);
}

TEST(Leaned, DaysNeverReadAreThoseOfTheNormals) {
  DailySeries series = invented_series({.years = 2});
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_day(i, missing_c);
  }
  const SmoothYear normals = normals_of({.years = 4});
  EXPECT_EQ(leaned(*fit_smooth_year(series), normals).day->constant_c, normals.day->constant_c);
}

TEST(Leaned, TheTurningPointsFollow) {
  const SmoothYear late = fitted_to({.years = 3, .hottest_day_of_year = 66});
  const SmoothYear normals = normals_of({.years = 4, .hottest_day_of_year = 36});
  const auto hottest = [](const SmoothCurve& night) {
    return day_of_year(in_year(find_phases(night, 2010).hottest, 2010));
  };
  EXPECT_NEAR(hottest(late.night), 66, 2);
  // Half and half: two like waves 30 days apart make one between them.
  EXPECT_NEAR(hottest(leaned(late, normals).night), 51, 2);
}

TEST(Moved, AddsTheDifferenceOfTwoCurvesToAThird) {
  const SmoothCurve base = fitted_to({.years = 2, .night_half_swing_k = 2.0}).night;
  const SmoothCurve from = fitted_to({.years = 2, .night_mean_c = 10.0}).night;
  const SmoothCurve to =
      fitted_to({.years = 2, .night_mean_c = 13.0, .hottest_day_of_year = 99}).night;
  const SmoothCurve result = moved(base, from, to);
  for (const int day : {1, 100, 200, 300}) {
    const Date date = day_in_2010(day);
    EXPECT_NEAR(
        result.value_c(date), base.value_c(date) + to.value_c(date) - from.value_c(date), 1e-9);
  }
}

} // namespace
} // namespace nightsow::climate
