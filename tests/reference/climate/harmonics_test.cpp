#include "climate/smooth_year.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace nightsow::climate {
namespace {

// Monthly means as points of the year: month t of 12 stands at t / 12 of a year.
TimedValues monthly(std::span<const double> values) {
  TimedValues points;
  for (std::size_t i = 0; i < values.size(); ++i) {
    points.years.push_back(static_cast<double>(i + 1) / 12.0);
    points.values.push_back(values[i]);
  }
  return points;
}

// Emery & Thomson, Data Analysis Methods in Physical Oceanography, section 5.5.2, Table 5.1: two
// harmonics by least squares through 24 monthly sea surface temperatures.
TEST(HarmonicRegression, ReproducesEmeryAndThomsonsSeaSurfaceTemperatures) {
  constexpr std::array sst_c{7.6, 7.4, 8.2,  9.2,  10.2, 11.5, 12.4, 13.4, 13.7, 11.8, 10.1, 9.0,
                             8.9, 9.5, 10.6, 11.4, 12.9, 12.7, 13.9, 14.2, 13.5, 11.4, 10.9, 8.1};
  const SmoothCurve curve = fit_curve(monthly(sst_c), false);
  EXPECT_NEAR(curve.constant_c, 10.9375, 6e-9);
  EXPECT_NEAR(curve.cosine_c[0], -1.78797519, 6e-9);
  EXPECT_NEAR(curve.cosine_c[1], -0.45, 6e-9);
  EXPECT_NEAR(curve.sine_c[0], -1.98067816, 6e-9);
  EXPECT_NEAR(curve.sine_c[1], -0.04330127, 6e-9);
}

// Wilks (2011), Statistical Methods in the Atmospheric Sciences, examples 9.8 and 9.9: the first
// harmonic of monthly means at Ithaca, in °F; amplitude 23.36, phase 218 degrees (coefficients from
// memory).
TEST(HarmonicRegression, ReproducesWilksMonthlyMeansAtIthaca) {
  constexpr std::array mean_f{
      22.2, 22.7, 32.2, 44.4, 54.8, 64.3, 68.8, 67.1, 60.2, 49.5, 39.3, 27.4};
  const SmoothCurve curve = fit_curve(monthly(mean_f), false);
  EXPECT_NEAR(curve.constant_c, 46.1, 0.11);
  EXPECT_NEAR(std::hypot(curve.cosine_c[0], curve.sine_c[0]), 23.36, 0.11);
  const double phase = std::atan2(curve.sine_c[0], curve.cosine_c[0]) * 180.0 / std::numbers::pi;
  EXPECT_NEAR(phase < 0.0 ? phase + 360.0 : phase, 218.0, 0.5);
}

// The closed form for n equally spaced values of whole periods: A_k = (2/n) sum y cos(2 pi k t / n)
// (standard form, as in Wilks 2011, equations 9.64).
TEST(HarmonicRegression, AgreesWithTheClosedFormForEquallySpacedValues) {
  TimedValues points;
  std::array<double, 2> cosine{};
  std::array<double, 2> sine{};
  constexpr int n = 365;
  double sum = 0.0;
  for (int t = 0; t < n; ++t) {
    const double value = 10.0 + 0.01 * ((t * 7919) % 1000); // no harmonic of its own
    points.years.push_back(static_cast<double>(t) / n);
    points.values.push_back(value);
    sum += value;
    for (int k = 1; k <= 2; ++k) {
      const double angle = 2.0 * std::numbers::pi * k * t / n;
      cosine[static_cast<std::size_t>(k - 1)] += 2.0 / n * value * std::cos(angle);
      sine[static_cast<std::size_t>(k - 1)] += 2.0 / n * value * std::sin(angle);
    }
  }
  const SmoothCurve curve = fit_curve(points, false);
  EXPECT_NEAR(curve.constant_c, sum / n, 1e-9);
  for (std::size_t k = 0; k < 2; ++k) {
    EXPECT_NEAR(curve.cosine_c[k], cosine[k], 1e-9);
    EXPECT_NEAR(curve.sine_c[k], sine[k], 1e-9);
  }
}

TEST(HarmonicRegression, FindsKnownCoefficientsAndTrendDespiteHoles) {
  TimedValues points;
  for (int day = 0; day < 20 * 365; ++day) {
    if (day % 11 == 0 || (day > 2000 && day < 2500)) {
      continue;
    }
    const double year = day / 365.2425;
    const double angle = 2.0 * std::numbers::pi * year;
    points.years.push_back(year);
    points.values.push_back(12.0 + 0.03 * year + 4.0 * std::cos(angle) - 2.0 * std::sin(angle) +
                            0.5 * std::cos(2.0 * angle) + 0.25 * std::sin(2.0 * angle));
  }
  const SmoothCurve curve = fit_curve(points, true);
  EXPECT_NEAR(curve.trend_c_per_year, 0.03, 1e-9);
  EXPECT_NEAR(curve.constant_c, 12.0 + 0.03 * curve.centre_year, 1e-9);
  EXPECT_NEAR(curve.cosine_c[0], 4.0, 1e-9);
  EXPECT_NEAR(curve.sine_c[0], -2.0, 1e-9);
  EXPECT_NEAR(curve.cosine_c[1], 0.5, 1e-9);
  EXPECT_NEAR(curve.sine_c[1], 0.25, 1e-9);
}

} // namespace
} // namespace nightsow::climate
