#include "climate/monthly_normals.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace nightsow::climate {
namespace {

using Months = std::array<double, 12>;

// Invented: a coast, a continent, a place with two warm times, one that is the same all the year,
// and one with a month that stands out.
constexpr Months coast{16.6, 16.7, 15.3, 11.7, 10.2, 7.5, 7.1, 7.9, 9.4, 10.8, 13.6, 15.3};
constexpr Months continent{-22, -19, -9, 3, 11, 17, 19.5, 16, 10, 2, -10, -18};
constexpr Months two_peaks{22, 23, 24.5, 24, 22, 20.5, 20, 21, 23, 24, 23.5, 22.5};
constexpr Months even{9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9};
constexpr Months jagged{5, 9, 4, 10, 3, 11, 2, 12, 3, 9, 4, 8};

Months means_of(const NormalCourse& course, int year) {
  Months means{};
  Months days{};
  for (Date day = make_date(year, 1, 1).value(); year_of(day) == year; day += Days{1}) {
    const std::size_t month = static_cast<unsigned>(date::year_month_day{day}.month()) - 1;
    means.at(month) += course.value_c(day);
    days.at(month) += 1.0;
  }
  for (std::size_t month = 0; month < means.size(); ++month) {
    means.at(month) /= days.at(month);
  }
  return means;
}

class EveryCourse : public testing::TestWithParam<Months> {};

TEST_P(EveryCourse, KeepsTheMeanOfEachMonthExactly) {
  const Months means = means_of(NormalCourse{GetParam()}, 2023);
  for (std::size_t month = 0; month < means.size(); ++month) {
    EXPECT_NEAR(means.at(month), GetParam().at(month), 1e-9) << month;
  }
}

TEST_P(EveryCourse, KeepsThemNearlyInALeapYear) {
  const Months means = means_of(NormalCourse{GetParam()}, 2024);
  for (std::size_t month = 0; month < means.size(); ++month) {
    EXPECT_NEAR(means.at(month), GetParam().at(month), month == 1 ? 0.2 : 1e-9) << month;
  }
}

TEST_P(EveryCourse, HasNoStepAtTheTurnOfTheYear) {
  const NormalCourse course{GetParam()};
  const double across = course.value_c(make_date(2023, 1, 1).value()) -
                        course.value_c(make_date(2022, 12, 31).value());
  EXPECT_LT(std::abs(across), 0.4);
}

INSTANTIATE_TEST_SUITE_P(InventedPlaces,
                         EveryCourse,
                         testing::Values(coast, continent, two_peaks, even, jagged));

TEST(NormalCourse, OfEqualMonthsIsLevel) {
  const NormalCourse course{even};
  for (int day = 0; day < 365; ++day) {
    EXPECT_NEAR(course.value_c(make_date(2023, 1, 1).value() + Days{day}), 9.0, 1e-9);
  }
}

TEST(NormalCourse, OfMeansOfACosineIsTheCosine) {
  const auto cosine = [](Date day) {
    return 12.0 + 5.0 * std::cos(2.0 * std::numbers::pi * (day_of_year(day) - 36) / 365.0);
  };
  Months means{};
  Months days{};
  for (Date day = make_date(2023, 1, 1).value(); year_of(day) == 2023; day += Days{1}) {
    const std::size_t month = static_cast<unsigned>(date::year_month_day{day}.month()) - 1;
    means.at(month) += cosine(day);
    days.at(month) += 1.0;
  }
  for (std::size_t month = 0; month < means.size(); ++month) {
    means.at(month) /= days.at(month);
  }
  const NormalCourse course{means};
  for (int i = 0; i < 365; ++i) {
    const Date day = make_date(2023, 1, 1).value() + Days{i};
    EXPECT_NEAR(course.value_c(day), cosine(day), 0.03) << format_iso_date(day);
  }
}

TEST(NormalCourse, GoesBeyondTheWarmestMonthOnlyALittle) {
  const NormalCourse course{coast};
  double highest = -100.0;
  for (int i = 0; i < 365; ++i) {
    highest = std::max(highest, course.value_c(make_date(2023, 1, 1).value() + Days{i}));
  }
  EXPECT_GT(highest, 16.7);
  EXPECT_LT(highest, 17.2);
}

} // namespace
} // namespace nightsow::climate
