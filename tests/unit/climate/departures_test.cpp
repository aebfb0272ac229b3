#include "climate/departures.hpp"

#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace nightsow::climate {
namespace {

using support::invented_series;

constexpr Date may_1{date::year{2001} / date::May / 1};

TEST(DeparturesOfNightsAndDays, AreNothingWhereNightsFollowTheSmoothYear) {
  const DailySeries series = invented_series({.years = 20, .trend_k_per_year = 0.0});
  const Departures gone = departures(series, *fit_smooth_year(series));
  ASSERT_EQ(gone.night.size(), series.size());
  for (std::size_t i = 0; i < series.size(); i += 97) {
    EXPECT_NEAR(static_cast<double>(gone.night.at(series.date_of(i))), 0.0, 1e-4);
    EXPECT_NEAR(static_cast<double>(gone.day.at(series.date_of(i))), 0.0, 1e-4);
  }
}

TEST(DeparturesOfNightsAndDays, KeepMissingNightsMissing) {
  DailySeries series = invented_series({.years = 3});
  series.set_night(40, missing_c);
  const Departures gone = departures(series, *fit_smooth_year(series));
  EXPECT_TRUE(std::isnan(gone.night.at(series.date_of(40))));
  EXPECT_FALSE(std::isnan(gone.night.at(series.date_of(41))));
}

TEST(DepartureRows, AreMissingOutsideOfTheirDates) {
  const DepartureRow row{may_1, {1.0F, 2.0F, 3.0F}};
  EXPECT_TRUE(std::isnan(row.at(may_1 - Days{1})));
  EXPECT_EQ(row.at(may_1 + Days{2}), 3.0F);
  EXPECT_TRUE(std::isnan(row.at(may_1 + Days{3})));
}

struct Part {
  int from;
  int count;
  std::vector<float> expected; ///< -9 is missing
};

TEST(DepartureRows, GiveTheDatesAskedForWhereverTheyLie) {
  const DepartureRow row{may_1, {1.0F, 2.0F, 3.0F}};
  const std::vector<Part> parts{{0, 3, {1, 2, 3}},
                                {1, 1, {2}},
                                {-2, 3, {-9, -9, 1}},
                                {2, 3, {3, -9, -9}},
                                {-1, 5, {-9, 1, 2, 3, -9}},
                                {-9, 2, {-9, -9}},
                                {7, 2, {-9, -9}},
                                {1, 0, {}}};
  for (const Part& part : parts) {
    std::vector<float> values = row.from(may_1 + Days{part.from}, part.count);
    for (float& value : values) {
      value = std::isnan(value) ? -9.0F : value;
    }
    EXPECT_EQ(values, part.expected) << part.from << ", " << part.count;
  }
}

TEST(DepartureRows, HaveAMeanWhenHalfOfTheDatesAreThere) {
  const DepartureRow row{may_1, {1.0F, missing_c, 4.0F}};
  EXPECT_DOUBLE_EQ(row.mean_of(may_1 + Days{2}, 3), 2.5);
  EXPECT_DOUBLE_EQ(row.mean_of(may_1 + Days{2}, 2), 4.0);
  EXPECT_TRUE(std::isnan(row.mean_of(may_1 + Days{2}, 5)));
}

} // namespace
} // namespace nightsow::climate
