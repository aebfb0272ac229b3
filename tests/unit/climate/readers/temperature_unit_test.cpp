#include "climate/readers/temperature_unit.hpp"

#include "climate/daily_series.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <optional>
#include <vector>

namespace nightsow::climate {
namespace {

constexpr auto celsius = TemperatureUnit::celsius;
constexpr auto fahrenheit = TemperatureUnit::fahrenheit;
constexpr auto tenths = TemperatureUnit::tenths_of_celsius;

// A month of equal days.
std::vector<Reading> month(float night, float day) {
  std::vector<Reading> rows;
  for (unsigned i = 1; i <= 30; ++i) {
    rows.push_back({make_date(2024, 6, i).value(), night, day, i + 1});
  }
  return rows;
}

std::optional<TemperatureUnit> told(const std::vector<Reading>& rows) {
  return unit_by_values(spread_of(rows));
}

TEST(TemperatureUnit, MissingCodesAreKnownBeforeConversion) {
  for (const float code :
       {-99.0F, -99.9F, -999.0F, -9999.0F, -9999.9F, 9999.0F, 9999.9F, 99999.9F, -99999.0F}) {
    EXPECT_TRUE(std::isnan(to_celsius(code, fahrenheit))) << code;
  }
}

TEST(TemperatureUnit, MinusNinetyNineTenthsAreATemperature) {
  EXPECT_FLOAT_EQ(to_celsius(-99.0F, tenths), -9.9F);
  EXPECT_TRUE(std::isnan(to_celsius(-9999.0F, tenths)));
}

TEST(TemperatureUnit, ValuesNearACodeAreValues) {
  EXPECT_FALSE(is_missing_code(-98.9F, fahrenheit));
  EXPECT_FALSE(is_missing_code(-100.0F, tenths));
  EXPECT_FALSE(is_missing_code(9998.0F, celsius));
}

TEST(TemperatureUnit, ConvertsToCelsius) {
  EXPECT_FLOAT_EQ(to_celsius(77.0F, fahrenheit), 25.0F);
  EXPECT_FLOAT_EQ(to_celsius(152.0F, tenths), 15.2F);
  EXPECT_FLOAT_EQ(to_celsius(15.2F, celsius), 15.2F);
  EXPECT_TRUE(std::isnan(to_celsius(missing_c, celsius)));
}

TEST(TemperatureUnit, WhatCouldBeCelsiusIsCelsius) {
  EXPECT_EQ(told(month(12.5F, 31.0F)), celsius);
  EXPECT_EQ(told(month(-35.0F, -20.0F)), celsius);
  EXPECT_EQ(told(month(36.0F, 50.0F)), celsius) << "the hottest month on Earth";
}

TEST(TemperatureUnit, DaysTooHotForCelsiusAreFahrenheit) {
  EXPECT_EQ(told(month(41.0F, 68.0F)), fahrenheit);
  EXPECT_EQ(told(month(60.8F, 98.6F)), fahrenheit);
}

TEST(TemperatureUnit, AMonthTooHotForCelsiusIsFahrenheit) {
  EXPECT_EQ(told(month(30.0F, 52.0F)), fahrenheit);
  EXPECT_EQ(told(month(39.0F, 48.0F)), fahrenheit);
  EXPECT_EQ(told(month(39.0F, missing_c)), fahrenheit);
}

TEST(TemperatureUnit, OneSlipDoesNotTurnTheUnit) {
  std::vector<Reading> rows = month(8.0F, 19.0F);
  rows[3].day_c = 190.0F;
  rows[7].night_c = 292.2F;
  EXPECT_EQ(told(rows), celsius);
}

TEST(TemperatureUnit, WholeNumbersTooWideForDegreesAreTenths) {
  EXPECT_EQ(told(month(121.0F, 254.0F)), tenths);
  EXPECT_EQ(told(month(-12.0F, 61.0F)), tenths) << "a swing of 73 is none of degrees";
  EXPECT_EQ(told(month(-250.0F, -200.0F)), tenths);
}

TEST(TemperatureUnit, DecimalsTooWideForDegreesFitNoUnit) {
  EXPECT_FALSE(told(month(283.4F, 295.2F))) << "kelvin";
}

TEST(TemperatureUnit, MissingCodesDoNotSpeakForAUnit) {
  std::vector<Reading> rows = month(8.0F, 19.0F);
  for (std::size_t i = 0; i < 20; ++i) {
    rows[i].day_c = 9999.0F;
    rows[i].night_c = -9999.0F;
  }
  EXPECT_EQ(told(rows), celsius);
}

TEST(TemperatureUnit, ConversionDropsRowsWithoutAnyValue) {
  std::vector<Reading> rows = month(50.0F, 77.0F);
  rows[0].night_c = -99999.0F;
  rows[0].day_c = missing_c;
  rows[1].night_c = -99999.0F;
  convert_rows(rows, fahrenheit, fahrenheit);
  ASSERT_EQ(rows.size(), 29U);
  EXPECT_EQ(rows[0].line, 3U);
  EXPECT_TRUE(std::isnan(rows[0].night_c));
  EXPECT_FLOAT_EQ(rows[0].day_c, 25.0F);
}

TEST(TemperatureUnit, DescribesTheRange) {
  EXPECT_EQ(describe(spread_of(month(-12.5F, 38.0F))), "values from -12.5 to 38");
}

} // namespace
} // namespace nightsow::climate
