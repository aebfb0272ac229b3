#include "climate/season_trends.hpp"

#include "climate/phases.hpp"
#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace nightsow::climate {
namespace {

/// Thirty years of nights that stray by 2 K; a test warms them.
class ThirtyYears : public testing::Test {
protected:
  static DailySeries invented() {
    support::InventedClimate climate;
    climate.night_sd_k = 2.0;
    climate.years = 30;
    return support::invented_series(climate);
  }

  [[nodiscard]] SeasonTrends trends() const {
    const SmoothCurve curve = fit_smooth_curve(series_.first(), nights_).value();
    return season_trends(series_.first(), nights_, curve, hottest_);
  }

  void warm(int quarter, double k_a_year) {
    for (std::size_t i = 0; i < nights_.size(); ++i) {
      if (site_quarter(series_.date_of(i), hottest_).quarter == quarter) {
        nights_[i] += static_cast<float>(k_a_year * static_cast<double>(i) / 365.2425);
      }
    }
  }

  DailySeries series_ = invented();
  std::vector<float> nights_{series_.night_c().begin(), series_.night_c().end()};
  date::month_day hottest_ = date::February / 5;
};

TEST_F(ThirtyYears, DoNotWarmByThemselves) {
  const YearlyTrend year = trends().year.value();
  EXPECT_GE(year.years, 29);
  EXPECT_LT(year.a_year.low, 0.0);
  EXPECT_GT(year.a_year.high, 0.0);
  EXPECT_GT(year.test.p_value, 0.05);
}

TEST_F(ThirtyYears, ShowTheWarmingOfOneSeasonInThatSeason) {
  const SeasonTrends before = trends();
  warm(2, 0.1);
  const SeasonTrends after = trends();
  for (std::size_t quarter = 0; quarter < quarters_a_year; ++quarter) {
    const double rise =
        after.quarter.at(quarter)->a_year.slope - before.quarter.at(quarter)->a_year.slope;
    EXPECT_NEAR(rise, quarter == 2 ? 0.1 : 0.0, 0.01) << quarter;
  }
  EXPECT_NEAR(after.year->a_year.slope - before.year->a_year.slope, 0.025, 0.01);
  EXPECT_LT(after.quarter[2]->test.p_value, 0.001);
}

TEST_F(ThirtyYears, AMissingWinterDoesNotWarmAYear) {
  const double before = trends().year->a_year.slope;
  // The last ten years lose a sixth of their days, the coldest.
  for (std::size_t i = 20 * 365; i < nights_.size(); ++i) {
    const int day = day_of_year(series_.date_of(i));
    if (day > 190 && day < 250) {
      nights_[i] = missing_c;
    }
  }
  EXPECT_NEAR(trends().year->a_year.slope, before, 0.01);
}

TEST_F(ThirtyYears, AreNeededInPart) {
  nights_.resize(9 * 365);
  const SmoothCurve curve = fit_smooth_curve(series_.first(), nights_).value();
  EXPECT_FALSE(season_trends(series_.first(), nights_, curve, hottest_).year);
}

PastSeason season(int name, std::optional<int> stirs, std::optional<int> holds) {
  PastSeason past;
  past.season.name = name;
  past.usable = true;
  past.words.stirs.day = stirs;
  past.words.holds.day = holds;
  return past;
}

TEST(GateTrend, IsInDaysAYearAndLeavesOutWhatNeverCame) {
  std::vector<PastSeason> seasons;
  for (int i = 0; i < 12; ++i) {
    seasons.push_back(season(2001 + i, 20 - i, 40 + 2 * i));
  }
  seasons.push_back(season(2013, 3, std::nullopt));
  seasons.push_back(season(2014, 200, 200));
  seasons.back().usable = false;
  const GateTrend trend = gate_trend(seasons);
  EXPECT_EQ(trend.never, 1);
  EXPECT_EQ(trend.holds->years, 12);
  EXPECT_DOUBLE_EQ(trend.holds->a_year.slope, 2.0);
  EXPECT_EQ(trend.stirs->years, 13);
  EXPECT_LT(trend.stirs->a_year.slope, 0.0);
}

TEST(GateTrend, OfNineSeasonsIsNotTold) {
  std::vector<PastSeason> seasons;
  for (int i = 0; i < 9; ++i) {
    seasons.push_back(season(2001 + i, 20, 40 + i));
  }
  EXPECT_FALSE(gate_trend(seasons).holds);
}

} // namespace
} // namespace nightsow::climate
