#include "planner/render/figure_text.hpp"

#include "planner/render/words.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

TEST(FigureText, ADecimalIsShownOnlyWhereThereIsOne) {
  EXPECT_EQ(number_text(13.0), "13");
  EXPECT_EQ(number_text(13.5), "13.5");
  EXPECT_EQ(number_text(-0.04), "0");
  EXPECT_EQ(temperature_text(9.5, {}), "9.5 °C");
}

TEST(FigureText, ADifferenceIsNeverTakenForAPoint) {
  TextStyle fahrenheit;
  fahrenheit.fahrenheit = true;
  EXPECT_EQ(difference_text(2.0, {}), "2.0 K");
  EXPECT_EQ(difference_text(2.0, fahrenheit), "3.6 °F");
  EXPECT_EQ(difference_text(2.0, {}, true), "+2.0 K");
}

TEST(FigureText, SharesAreCountedAsGrowersCount) {
  EXPECT_EQ(share_text(0.0), "none");
  EXPECT_EQ(share_text(0.01), "hardly any");
  EXPECT_EQ(share_text(0.05), "about 1 in 20");
  EXPECT_EQ(share_text(0.25), "about 1 in 4");
  EXPECT_EQ(share_text(0.5), "about half");
  EXPECT_EQ(share_text(0.9), "about 9 in 10");
  EXPECT_EQ(share_text(0.97), "nearly all");
  EXPECT_EQ(share_text(1.0), "all");
}

TEST(FigureText, AShareNeverRoundsUpToTenInTen) {
  for (int thousandths = 0; thousandths < 1000; ++thousandths) {
    EXPECT_EQ(share_text(thousandths / 1000.0).find("10 in 10"), std::string::npos) << thousandths;
  }
}

TEST(FigureText, YearsUnderOneAreMonths) {
  EXPECT_EQ(counted_text(1.0, "year"), "1 year");
  EXPECT_EQ(counted_text(0.3, "year"), "4 months");
  EXPECT_EQ(counted_text(0.02, "year"), "under a month");
  EXPECT_EQ(counted_text(2.5, "year"), "2.5 years");
}

TEST(FigureText, APlaceSaysItsHemispheres) {
  EXPECT_EQ(place_text(-33.0, 19.0), "33.0° S, 19.0° E");
  EXPECT_EQ(place_text(37.1, -8.5), "37.1° N, 8.5° W");
}

} // namespace
} // namespace nightsow::planner
