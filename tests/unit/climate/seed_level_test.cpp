#include "climate/seed_level.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <type_traits>

namespace nightsow::climate {
namespace {

static_assert(!std::is_constructible_v<BenchAir, SeedLevel>);
static_assert(!std::is_constructible_v<SeedLevel, BenchAir>);
static_assert(!std::is_convertible_v<SeedLevel, DailySeries>);

DailySeries days_of(float night_c, float day_c) {
  DailySeries series{support::day("2025-03-20"), 6};
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_night(i, night_c);
    series.set_day(i, day_c);
  }
  return series;
}

SeedLevel level_of(const DailySeries& air, const SeedPlace& place) {
  return seed_level(air, to_bench(air, "bench", {}), place, SunYear{place.latitude});
}

SeedPlace in_the_south() {
  SeedPlace place;
  place.latitude = -34.0;
  return place;
}

double hottest(const SeedLevel& level, std::size_t day = 3) {
  const auto hours = level.hours_of(day);
  return static_cast<double>(*std::max_element(hours.begin(), hours.end()));
}

double coldest(const SeedLevel& level, std::size_t day = 3) {
  const auto hours = level.hours_of(day);
  return static_cast<double>(*std::min_element(hours.begin(), hours.end()));
}

TEST(SeedLevel, IsHotterThanTheAirByDayAndColderByNight) {
  const SeedLevel level = level_of(days_of(10.0F, 25.0F), in_the_south());
  EXPECT_GT(hottest(level), 27.0);
  EXPECT_LT(coldest(level), 10.0);
  EXPECT_NEAR(level.swing_k(3), hottest(level) - coldest(level), 1e-6);
}

// The factors of FAO 56, equation 50: 0.16 inland, 0.19 on the coast.
TEST(SeedLevel, HasMoreSunOfTheSameRangeOnTheCoast) {
  const DailySeries air = days_of(12.0F, 22.0F);
  SeedPlace place = in_the_south();
  place.lag_hours = 0.01;
  const auto noon = [&] { return static_cast<double>(level_of(air, place).hours_of(3)[12]); };
  place.shade = 1.0;
  const double dark = noon();
  place.shade = 0.0;
  const double inland = noon() - dark;
  place.coast = true;
  EXPECT_GT(inland, 5.0);
  EXPECT_NEAR((noon() - dark) / inland, 0.19 / 0.16, 1e-3);
}

TEST(SeedLevel, HasTheLossOfTheNightInFullUnderAClearSky) {
  SeedPlace place = in_the_south();
  place.lag_hours = 0.01;
  place.night_loss_k = 3.0;
  place.shade = 1.0;
  // A range of 30 K is a clear sky by any factor: the sun by the range is capped there.
  const SeedLevel clear = level_of(days_of(5.0F, 35.0F), place);
  place.night_loss_k = 0.0;
  const SeedLevel without = level_of(days_of(5.0F, 35.0F), place);
  EXPECT_NEAR(without.hours_of(3)[2] - clear.hours_of(3)[2], 3.0, 1e-4);
  EXPECT_NEAR(without.hours_of(3)[12] - clear.hours_of(3)[12], 0.0, 1e-4);
}

TEST(SeedLevel, HasLessOfItUnderClouds) {
  SeedPlace place = in_the_south();
  place.lag_hours = 0.01;
  place.frost_care = FrostCare::none;
  const SeedLevel dull = level_of(days_of(10.0F, 11.0F), place);
  place.night_loss_k = 0.0;
  const SeedLevel without = level_of(days_of(10.0F, 11.0F), place);
  EXPECT_NEAR(without.hours_of(3)[2] - dull.hours_of(3)[2], 2.0 * 0.3, 1e-4);
}

TEST(SeedLevel, GetsHotterInDarkPotsAndCoolerInShade) {
  SeedPlace place = in_the_south();
  const double pale = hottest(level_of(days_of(10.0F, 25.0F), place));
  place.pots = PotColour::dark;
  EXPECT_GT(hottest(level_of(days_of(10.0F, 25.0F), place)), pale + 1.0);
  place.shade = 0.9;
  EXPECT_LT(hottest(level_of(days_of(10.0F, 25.0F), place)), pale);
}

TEST(SeedLevel, SwingsLessTheDeeperItLies) {
  SeedPlace place = in_the_south();
  const double surface = level_of(days_of(10.0F, 25.0F), place).swing_k(3);
  place.lag_hours = SeedPlace::covered_lag_hours;
  const double covered = level_of(days_of(10.0F, 25.0F), place).swing_k(3);
  place.lag_hours = SeedPlace::litre_lag_hours;
  EXPECT_LT(covered, surface);
  EXPECT_LT(level_of(days_of(10.0F, 25.0F), place).swing_k(3), covered);
}

TEST(SeedLevel, IsCoveredWithFleeceOnTheNightsThatNeedIt) {
  SeedPlace place = in_the_south();
  place.frost_care = FrostCare::none;
  const SeedLevel bare = level_of(days_of(1.0F, 14.0F), place);
  place.frost_care = FrostCare::fleece;
  const SeedLevel covered = level_of(days_of(1.0F, 14.0F), place);
  EXPECT_NEAR(covered.hours_of(3)[4] - bare.hours_of(3)[4], 4.0, 1e-4);
  EXPECT_EQ(covered.hours_of(3)[13], bare.hours_of(3)[13]);
  const SeedLevel mild = level_of(days_of(9.0F, 20.0F), place);
  place.frost_care = FrostCare::none;
  EXPECT_EQ(coldest(mild), coldest(level_of(days_of(9.0F, 20.0F), place)));
}

TEST(SeedLevel, IsNeverUnderTwoDegreesWhereCarriedIn) {
  SeedPlace place = in_the_south();
  place.frost_care = FrostCare::in;
  EXPECT_EQ(coldest(level_of(days_of(-6.0F, 8.0F), place)), 2.0);
}

TEST(SeedLevel, IsMissingOnDatesWithoutANightOrADay) {
  DailySeries air = days_of(10.0F, 25.0F);
  air.set_day(2, missing_c);
  const SeedLevel level = level_of(air, in_the_south());
  EXPECT_TRUE(std::isnan(level.hours_of(2)[7]));
  EXPECT_TRUE(std::isnan(level.swing_k(2)));
  EXPECT_FALSE(std::isnan(level.hours_of(3)[0]));
}

TEST(SeedLevel, HoldsInPolarNightAndPolarDay) {
  SeedPlace place;
  place.latitude = 78.0;
  for (const char* first : {"2025-12-15", "2025-06-15"}) {
    DailySeries air{support::day(first), 3};
    for (std::size_t i = 0; i < 3; ++i) {
      air.set_night(i, 3.0F);
      air.set_day(i, 9.0F);
    }
    const SeedLevel level = level_of(air, place);
    for (const float hour : level.hours_of(1)) {
      EXPECT_TRUE(std::isfinite(hour));
    }
  }
}

TEST(SeedLevel, OverAMatIsWarmByNightOnlyWhereTheMatIsOnThen) {
  SeedPlace place = in_the_south();
  const double cold = coldest(level_of(days_of(10.0F, 25.0F), place));
  place.mat = SeedMat{CelsiusDelta{10.0}, Celsius{18.0}, false};
  EXPECT_NEAR(coldest(level_of(days_of(10.0F, 25.0F), place)), cold, 0.5);
  place.mat->at_night = true;
  EXPECT_GT(coldest(level_of(days_of(10.0F, 25.0F), place)), 15.5);
}

TEST(OnMat, IsRaisedUpToTheThermostatAndNeverCooled) {
  EXPECT_EQ(on_mat_c(10.0, CelsiusDelta{8.0}, std::nullopt), 18.0);
  EXPECT_EQ(on_mat_c(10.0, CelsiusDelta{8.0}, Celsius{15.0}), 15.0);
  EXPECT_EQ(on_mat_c(20.0, CelsiusDelta{8.0}, Celsius{15.0}), 20.0);
}

} // namespace
} // namespace nightsow::climate
