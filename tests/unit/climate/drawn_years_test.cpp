#include "climate/drawn_years.hpp"

#include "climate/monthly_normals.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

namespace nightsow::climate {
namespace {

constexpr std::array<double, 12> nights_c{16, 16, 15, 12, 10, 8, 7, 8, 9, 11, 13, 15};
constexpr std::array<double, 12> days_c{29, 29, 27, 22, 19, 16, 15, 17, 19, 22, 25, 27};

/// Thirty years, and their departures from the course of the normals.
class ThirtyDrawnYears : public testing::Test {
protected:
  ThirtyDrawnYears() {
    const NormalCourse night{nights_c};
    const NormalCourse day{days_c};
    for (std::size_t i = 0; i < series_.size(); ++i) {
      const Date date = series_.date_of(i);
      nights_k_.push_back(static_cast<double>(series_.night_c()[i]) - night.value_c(date));
      days_k_.push_back(static_cast<double>(series_.day_c()[i]) - day.value_c(date));
    }
  }

  static double mean_product(const std::vector<double>& a,
                             const std::vector<double>& b,
                             std::size_t later) {
    double sum = 0.0;
    for (std::size_t i = 0; i + later < a.size(); ++i) {
      sum += a[i] * b[i + later];
    }
    return sum / static_cast<double>(a.size() - later);
  }

  DailySeries series_ = drawn_years(nights_c, days_c, make_date(1995, 1, 1).value(), 10957);
  std::vector<double> nights_k_;
  std::vector<double> days_k_;
};

TEST_F(ThirtyDrawnYears, HaveTheirDeviationAndPersistence) {
  const double square = mean_product(nights_k_, nights_k_, 0);
  EXPECT_NEAR(std::sqrt(square), drawn_night_sd_k, 0.05);
  const double day_square = mean_product(days_k_, days_k_, 0);
  EXPECT_NEAR(std::sqrt(day_square), drawn_day_sd_k, 0.1);
  EXPECT_NEAR(
      mean_product(nights_k_, days_k_, 0) / std::sqrt(square * day_square), drawn_night_day, 0.03);
  EXPECT_NEAR(mean_product(nights_k_, nights_k_, 1) / square, drawn_lag1, 0.02);
  // Of a first-order autoregression: 0.6^3.
  EXPECT_NEAR(mean_product(nights_k_, nights_k_, 3) / square, 0.216, 0.03);
}

TEST_F(ThirtyDrawnYears, DoNotRepeatThemselves) {
  for (const std::size_t later : {365U, 366U, 730U, 1461U, 3652U}) {
    EXPECT_LT(std::abs(mean_product(nights_k_, nights_k_, later)) / 6.25, 0.1) << later;
  }
}

TEST_F(ThirtyDrawnYears, HaveAsManyNightsFarOffAsANormalDistribution) {
  std::size_t beyond = 0;
  for (const double departure : nights_k_) {
    beyond += std::abs(departure) > 2.0 * drawn_night_sd_k ? 1U : 0U;
  }
  // 4.55 in 100 of a normal distribution.
  EXPECT_NEAR(static_cast<double>(beyond) / static_cast<double>(nights_k_.size()), 0.0455, 0.01);
}

TEST_F(ThirtyDrawnYears, NeverPutANightAboveItsDay) {
  for (std::size_t i = 0; i < series_.size(); ++i) {
    EXPECT_LE(series_.night_c()[i], series_.day_c()[i]);
  }
}

TEST(DrawnYears, OfTheSameDayAreTheSameWhereverTheyBegin) {
  const DailySeries early = drawn_years(nights_c, days_c, make_date(1995, 1, 1).value(), 400);
  const DailySeries late = drawn_years(nights_c, days_c, make_date(1995, 4, 11).value(), 10);
  for (std::size_t i = 0; i < late.size(); ++i) {
    EXPECT_EQ(late.night_c()[i], early.night_c()[i + 100]);
    EXPECT_EQ(late.day_c()[i], early.day_c()[i + 100]);
  }
}

} // namespace
} // namespace nightsow::climate
