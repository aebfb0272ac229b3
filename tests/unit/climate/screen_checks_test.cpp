#include "climate/screen_checks.hpp"

#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace nightsow::climate {
namespace {

using support::nights;

std::vector<std::size_t> indices(const std::vector<Doubt>& doubts) {
  std::vector<std::size_t> result;
  for (const Doubt& doubt : doubts) {
    result.push_back(doubt.index);
  }
  return result;
}

using Indices = std::vector<std::size_t>;

TEST(CalendarDays, TheFirstOfMarchIsTheSixtyFirstInEveryYear) {
  const CalendarDays days = calendar_days(make_date(2023, 2, 27).value(), 3 + 365);
  EXPECT_EQ(days.day_of_leap_year[1], 59U);
  EXPECT_EQ(days.day_of_leap_year[2], 61U);
  EXPECT_EQ(days.day_of_leap_year[367], 60U); // 29 February 2024
  EXPECT_EQ(days.month[1], 2U);
  EXPECT_EQ(days.month[2], 3U);
}

TEST(BothNaught, NeedsBothAndKnowsNaughtFahrenheit) {
  EXPECT_EQ(both_naught(nights("0 0 3 -17.8 -17.8 - 0"), nights("0 4 3 -17.8 -10 0 -")),
            (Indices{0, 3}));
}

struct StreakCase {
  const char* what;
  int equal_before_hole;
  int hole;
  int equal_after_hole;
  std::vector<int> found; ///< values of each streak
};

TEST(Streaks, AreEqualValuesInARow) {
  for (const StreakCase& test : {StreakCase{"fourteen are chance", 14, 0, 0, {}},
                                 StreakCase{"fifteen are said", 15, 0, 0, {15}},
                                 StreakCase{"a week's hole does not end one", 8, 7, 8, {16}},
                                 StreakCase{"eight days do", 8, 8, 8, {}},
                                 StreakCase{"two of them", 15, 8, 20, {15, 20}}}) {
    std::vector<float> values{1, 2};
    values.insert(values.end(), static_cast<std::size_t>(test.equal_before_hole), 7.2F);
    values.insert(values.end(), static_cast<std::size_t>(test.hole), missing_c);
    values.insert(values.end(), static_cast<std::size_t>(test.equal_after_hole), 7.2F);
    values.push_back(3);
    std::vector<int> found;
    for (const Streak& streak : streaks(values)) {
      found.push_back(streak.values);
    }
    EXPECT_EQ(found, test.found) << test.what;
  }
}

TEST(Streaks, AreFoundAtBothEndsOfTheSeries) {
  const std::vector<float> values(15, 4.0F);
  ASSERT_EQ(streaks(values).size(), 1U);
  EXPECT_EQ(streaks(values)[0].first, 0U);
  EXPECT_EQ(streaks(values)[0].last, 14U);
}

/// Four Januaries of 31 values from 0 to 9.3 in steps of 0.3; the rest of the year is missing.
class FourJanuaries : public testing::Test {
protected:
  FourJanuaries() {
    for (std::size_t i = 0; i < values_.size(); ++i) {
      if (calendar_.month[i] == 1) {
        values_[i] = 0.3F * static_cast<float>(calendar_.day_of_leap_year[i]);
      }
    }
  }

  CalendarDays calendar_ = calendar_days(make_date(2021, 1, 1).value(), 3 * 366 + 31);
  std::vector<float> values_ = std::vector<float>(calendar_.month.size(), missing_c);
};

TEST_F(FourJanuaries, HaveNoGap) {
  EXPECT_TRUE(beyond_gap(values_, calendar_).empty());
}

TEST_F(FourJanuaries, ShowAValueTenKelvinAboveAllOthers) {
  values_[5] = 19.2F;
  EXPECT_TRUE(beyond_gap(values_, calendar_).empty());
  values_[5] = 19.4F;
  const std::vector<Doubt> found = beyond_gap(values_, calendar_);
  EXPECT_EQ(indices(found), (Indices{5}));
  EXPECT_FLOAT_EQ(found.at(0).other_c, 9.3F);
}

TEST_F(FourJanuaries, ShowAllValuesBeyondTheGapBelow) {
  values_[5] = -10.0F;
  values_[6] = -12.0F;
  values_[7] = -30.0F;
  EXPECT_EQ(indices(beyond_gap(values_, calendar_)), (Indices{5, 6, 7}));
}

TEST_F(FourJanuaries, ThreeOfThemAreTooFewToJudge) {
  std::fill(values_.begin() + 800, values_.end(), missing_c);
  values_[5] = 40.0F;
  EXPECT_TRUE(beyond_gap(values_, calendar_).empty());
}

/// Thirty years of nights about 12 °C that stray by 2 K.
class InventedNights : public testing::Test {
protected:
  static DailySeries invented() {
    support::InventedClimate climate;
    climate.night_sd_k = 2.0;
    climate.years = 30;
    return support::invented_series(climate);
  }

  DailySeries series_ = invented();
  std::vector<float> values_{series_.night_c().begin(), series_.night_c().end()};
  CalendarDays calendar_ = calendar_days(series_.first(), series_.size());
};

TEST_F(InventedNights, HaveNoOutlierAndNoSpike) {
  EXPECT_TRUE(outliers(values_, calendar_).empty());
  EXPECT_TRUE(spikes(values_).empty());
  EXPECT_TRUE(beyond_gap(values_, calendar_).empty());
  EXPECT_TRUE(days_too_far(values_, series_.day_c()).empty());
  EXPECT_TRUE(nights_too_far(values_, series_.day_c()).empty());
}

TEST_F(InventedNights, AnOutlierIsSixDeviationsFromItsTimeOfYear) {
  const Doubt plain = [&] {
    values_[4000] += 40.0F;
    return outliers(values_, calendar_).at(0);
  }();
  // The deviation there is about 2 K: 5 of them pass, 7 do not.
  values_[4000] = plain.other_c + 10.0F;
  EXPECT_TRUE(outliers(values_, calendar_).empty());
  values_[4000] = plain.other_c - 14.5F;
  EXPECT_EQ(indices(outliers(values_, calendar_)), (Indices{4000}));
}

TEST_F(InventedNights, OutliersDoNotHideOneAnother) {
  // Six of some 450 values that are 60 K off widen the deviation to 7 K and more: at first sight
  // two that are 22 K off pass.
  for (std::size_t year = 0; year < 6; ++year) {
    values_[100 + year * 1461] += 60.0F;
  }
  values_[103] += 22.0F;
  values_[103 + 1461] += 22.0F;
  EXPECT_EQ(outliers(values_, calendar_).size(), 8U);
}

TEST_F(InventedNights, OfOneYearAreTooFewForOutliers) {
  const std::vector<float> year(values_.begin(), values_.begin() + 365);
  const CalendarDays calendar = calendar_days(series_.first(), year.size());
  std::vector<float> wrong = year;
  wrong[100] += 50.0F;
  EXPECT_TRUE(outliers(wrong, calendar).empty());
  EXPECT_EQ(indices(spikes(wrong)), (Indices{100}));
}

TEST(Outliers, AreNotToldWhereAllValuesAreEqual) {
  const std::vector<float> values(4000, 7.0F);
  const CalendarDays calendar = calendar_days(make_date(2001, 1, 1).value(), values.size());
  EXPECT_TRUE(outliers(values, calendar).empty());
}

TEST(Spikes, NeedBothNeighbours) {
  EXPECT_EQ(indices(spikes(nights("5 30 5"))), (Indices{1}));
  EXPECT_EQ(indices(spikes(nights("5 -20 5"))), (Indices{1}));
  EXPECT_TRUE(spikes(nights("5 29.5 5")).empty());
  EXPECT_TRUE(spikes(nights("5 30 30")).empty());
  EXPECT_TRUE(spikes(nights("5 30 - 5")).empty());
  EXPECT_TRUE(spikes(nights("30 5")).empty());
}

TEST(LaggedRange, HoldsADayAgainstTheWarmestOfThreeNights) {
  EXPECT_EQ(indices(days_too_far(nights("4 4 4"), nights("20 44.5 20"))), (Indices{1}));
  EXPECT_TRUE(days_too_far(nights("4 4 6"), nights("20 44.5 20")).empty());
  EXPECT_TRUE(days_too_far(nights("- - -"), nights("20 50 20")).empty());
}

TEST(LaggedRange, HoldsANightAgainstTheColdestOfThreeDays) {
  EXPECT_EQ(indices(nights_too_far(nights("4 -21 4"), nights("20 20 20"))), (Indices{1}));
  EXPECT_TRUE(nights_too_far(nights("4 -21 4"), nights("20 20 18")).empty());
}

} // namespace
} // namespace nightsow::climate
