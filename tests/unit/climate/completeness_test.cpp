#include "climate/completeness.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace nightsow::climate {
namespace {

struct MonthCase {
  const char* what;
  std::vector<int> missing; ///< days of the month
  bool lost;
};

// source: WMO-No. 1203 (2017): 11 or more days missing, or 5 or more in a row.
TEST(MonthIsLost, ByElevenMissingDaysOrFiveInARow) {
  for (const MonthCase& test :
       {MonthCase{"none", {}, false},
        MonthCase{"ten apart", {1, 3, 5, 7, 9, 11, 13, 15, 17, 19}, false},
        MonthCase{"eleven apart", {1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21}, true},
        MonthCase{"four in a row", {10, 11, 12, 13}, false},
        MonthCase{"five in a row", {10, 11, 12, 13, 14}, true},
        MonthCase{"the last five", {26, 27, 28, 29, 30}, true}}) {
    std::vector<float> month(30, 8.0F);
    for (const int day : test.missing) {
      month[static_cast<std::size_t>(day - 1)] = missing_c;
    }
    EXPECT_EQ(month_is_lost(month), test.lost) << test.what;
  }
}

/// Ten years of nights from 1 January 2001, all there; a test takes some away.
class TenYears : public testing::Test {
protected:
  template <class Takes> void take(Takes takes) {
    for (std::size_t i = 0; i < values_.size(); ++i) {
      if (takes(first_ + Days{static_cast<int>(i)})) {
        values_[i] = missing_c;
      }
    }
  }

  [[nodiscard]] Completeness counted() const { return completeness(first_, values_); }

  Date first_ = make_date(2001, 1, 1).value();
  std::vector<float> values_ = std::vector<float>(3652, 8.0F);
};

bool is_on(Date day, date::weekday weekday) {
  return date::weekday{day} == weekday;
}

TEST_F(TenYears, AreComplete) {
  const Completeness all = counted();
  EXPECT_EQ(all.days, 3652);
  EXPECT_EQ(all.missing, 0);
  EXPECT_EQ(all.months, 120);
  EXPECT_EQ(all.months_lost, 0);
  EXPECT_TRUE(all.long_holes.empty());
  EXPECT_FALSE(lopsided_week(all));
  EXPECT_FALSE(lopsided_year(all));
}

TEST_F(TenYears, MonthsThatBeginOrEndOutsideAreNotCounted) {
  values_.erase(values_.begin());
  first_ += Days{1};
  values_.pop_back();
  EXPECT_EQ(counted().months, 118);
}

TEST_F(TenYears, ListHolesOfThirtyDaysAndMore) {
  const Date thirty = make_date(2003, 3, 1).value();
  const Date shorter = make_date(2004, 3, 1).value();
  take([&](Date day) {
    return (day >= thirty && day < thirty + Days{30}) ||
           (day >= shorter && day < shorter + Days{29});
  });
  const Completeness some = counted();
  EXPECT_EQ(some.missing, 59);
  EXPECT_EQ(some.long_holes, (std::vector{Hole{thirty, thirty + Days{29}}}));
  EXPECT_EQ(some.months_lost, 2);
}

TEST_F(TenYears, AHoleAtTheEndIsAHole) {
  take([&](Date day) { return day > first_ + Days{3600}; });
  EXPECT_EQ(counted().long_holes.size(), 1U);
}

TEST_F(TenYears, WithoutWeekendsAreLopsided) {
  take([](Date day) { return is_on(day, date::Saturday) || is_on(day, date::Sunday); });
  const Lopsided week = lopsided_week(counted()).value();
  EXPECT_EQ(week.of, (std::vector{0, 6}));
  EXPECT_NEAR(week.share, 1.0, 1e-12);
  EXPECT_NEAR(week.usual, 0.0, 1e-12);
  EXPECT_FALSE(lopsided_year(counted()));
}

TEST_F(TenYears, AQuarterOfTheWeekendsIsEnoughToSay) {
  // As at one station of Australia: a quarter missing from Saturday to Monday, an eighth otherwise.
  int count = 0;
  take([&](Date day) {
    ++count;
    const bool weekend =
        is_on(day, date::Saturday) || is_on(day, date::Sunday) || is_on(day, date::Monday);
    return (count / 7) % (weekend ? 4 : 8) == 0;
  });
  const Lopsided week = lopsided_week(counted()).value();
  EXPECT_EQ(week.of, (std::vector{0, 1, 6}));
  EXPECT_NEAR(week.share, 0.25, 0.01);
  EXPECT_NEAR(week.usual, 0.125, 0.01);
}

TEST_F(TenYears, WithoutWintersAreLopsided) {
  take([](Date day) {
    const date::month month = date::year_month_day{day}.month();
    return (month == date::December || month == date::January || month == date::February) &&
           days_between(make_date(2001, 1, 1).value(), day) % 3 == 0;
  });
  const Lopsided year = lopsided_year(counted()).value();
  EXPECT_EQ(year.of, (std::vector{11, 0, 1}));
  EXPECT_NEAR(year.share, 0.333, 0.01);
  EXPECT_NEAR(year.usual, 0.0, 0.01);
}

TEST_F(TenYears, ALostYearMakesNothingLopsided) {
  const Date lost = make_date(2005, 1, 1).value();
  take([&](Date day) { return day >= lost && day < lost + Days{100}; });
  EXPECT_FALSE(lopsided_week(counted()));
  EXPECT_FALSE(lopsided_year(counted()));
}

TEST(CompletenessOfNothing, IsNothing) {
  EXPECT_EQ(completeness(make_date(2001, 1, 1).value(), {}).months, 0);
}

} // namespace
} // namespace nightsow::climate
