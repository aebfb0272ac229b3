#include "climate/normals.hpp"

#include "climate/base/celsius.hpp"
#include "climate/phases.hpp"
#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace nightsow::climate {
namespace {

constexpr date::month_day mid_january = date::January / 15;

/// Ten years in which every value is the number of its year after 2000.
std::vector<float> numbers_of_years(Date first, std::size_t size) {
  std::vector<float> values;
  for (std::size_t i = 0; i < size; ++i) {
    values.push_back(static_cast<float>(year_of(first + Days{static_cast<int>(i)}) - 2000));
  }
  return values;
}

TEST(PercentileBand, TakesThirtyOneDaysOfEveryYear) {
  const Date first = make_date(2001, 1, 1).value();
  const PercentileBand band =
      percentile_band(first, numbers_of_years(first, 3652), mid_january).value();
  EXPECT_EQ(band.values, 310U);
  EXPECT_DOUBLE_EQ(band.p50_c, 5.5);
  EXPECT_NEAR(band.p10_c, 1.3, 0.71);
  EXPECT_NEAR(band.p90_c, 9.7, 0.71);
}

TEST(PercentileBand, GoesOnAcrossTheTurnOfTheYear) {
  const Date first = make_date(2001, 12, 10).value();
  const std::vector<float> values(60, 3.0F);
  EXPECT_EQ(percentile_band(first, values, date::January / 1).value().values, 31U);
}

TEST(PercentileBand, NeedsThirtyValuesThatAreThere) {
  std::vector<float> values(31, 3.0F);
  const Date first = make_date(2001, 1, 1).value();
  values[4] = missing_c;
  EXPECT_TRUE(percentile_band(first, values, date::January / 16));
  values[5] = missing_c;
  EXPECT_FALSE(percentile_band(first, values, date::January / 16));
}

TEST(SiteQuarter, TheFirstLiesAboutTheHottestNight) {
  const date::month_day hottest = date::February / 10;
  for (const auto& [day, quarter] : {std::pair{make_date(2024, 2, 10), 0},
                                     std::pair{make_date(2023, 12, 28), 0},
                                     std::pair{make_date(2023, 12, 25), 3},
                                     std::pair{make_date(2024, 3, 25), 0},
                                     std::pair{make_date(2024, 3, 29), 1},
                                     std::pair{make_date(2024, 8, 10), 2},
                                     std::pair{make_date(2024, 11, 10), 3}}) {
    EXPECT_EQ(site_quarter(day.value(), hottest).quarter, quarter) << format_iso_date(day.value());
  }
}

TEST(SiteQuarter, KeepsAHotSeasonOverTheTurnOfTheYearTogether) {
  const date::month_day hottest = date::January / 5;
  EXPECT_EQ(site_quarter(make_date(2023, 12, 20).value(), hottest).year,
            site_quarter(make_date(2024, 1, 20).value(), hottest).year);
}

/// A year that follows its cosine exactly, so that departures are what a test adds.
class Departures : public testing::Test {
protected:
  [[nodiscard]] std::array<DepartureShape, quarters_a_year> shapes(
      const std::vector<float>& nights) const {
    return departure_shapes(series_.first(), nights, curve_, hottest_);
  }

  DailySeries series_ = support::invented_series({});
  std::vector<float> nights_{series_.night_c().begin(), series_.night_c().end()};
  SmoothCurve curve_ = fit_smooth_curve(series_.first(), series_.night_c()).value();
  date::month_day hottest_ = find_phases(curve_, 2000).hottest;
};

TEST_F(Departures, OfTheCurveItselfAreNone) {
  for (const DepartureShape& shape : shapes(nights_)) {
    EXPECT_NEAR(shape.mean_k, 0.0, 0.01);
    EXPECT_NEAR(shape.sd_k, 0.0, 0.02);
  }
}

TEST_F(Departures, HaveTheMomentsThatWerePutIn) {
  // One night in five 4 K colder, the others 1 K warmer: mean 0, deviation 2, skewness -1.5.
  for (std::size_t i = 0; i < nights_.size(); ++i) {
    nights_[i] += i % 5 == 0 ? -4.0F : 1.0F;
  }
  for (const DepartureShape& shape : shapes(nights_)) {
    EXPECT_NEAR(static_cast<double>(shape.values), 1826.0, 5.0);
    EXPECT_NEAR(shape.mean_k, 0.0, 0.01);
    EXPECT_NEAR(shape.sd_k, 2.0, 0.01);
    EXPECT_NEAR(shape.skewness, -1.5, 0.02);
  }
}

TEST_F(Departures, AreToldByQuarter) {
  const CelsiusDelta wild{3.0};
  for (std::size_t i = 0; i < nights_.size(); ++i) {
    const bool cold = site_quarter(series_.date_of(i), hottest_).quarter == 2;
    const auto step = static_cast<float>(cold ? wild.kelvin() : 0.0);
    nights_[i] += i % 2 == 0 ? step : -step;
  }
  const auto found = shapes(nights_);
  EXPECT_NEAR(found[2].sd_k, 3.0, 0.01);
  EXPECT_NEAR(found[0].sd_k, 0.0, 0.02);
}

TEST_F(Departures, OfFewNightsAreOnlyCounted) {
  const std::vector<float> few(nights_.begin(), nights_.begin() + 20);
  const auto found = shapes(few);
  EXPECT_EQ(found[0].values, 20U);
  EXPECT_EQ(found[0].sd_k, 0.0);
}

} // namespace
} // namespace nightsow::climate
