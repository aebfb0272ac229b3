#include "climate/readers/column_name.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <vector>

namespace nightsow::climate {
namespace {

using M = ColumnMeaning;

ColumnMeaning meaning(const char* name) {
  return understand_column(name).meaning;
}

std::optional<TemperatureUnit> unit(const char* name) {
  return understand_column(name).unit;
}

TEST(ColumnName, PartsNamesIntoWords) {
  using Words = std::vector<std::string>;
  EXPECT_EQ(words_of("Min Temp (\xC2\xB0"
                     "C)"),
            (Words{"min", "temp", "c"}));
  EXPECT_EQ(words_of("Max.TemperatureF"), (Words{"max", "temperature", "f"}));
  EXPECT_EQ(words_of("temperature_2m_min"), (Words{"temperature", "2m", "min"}));
  EXPECT_EQ(words_of("TMIN"), (Words{"tmin"}));
  EXPECT_TRUE(words_of("#").empty());
}

TEST(ColumnName, TakesAccentsOffInUtf8AndLatin1) {
  EXPECT_EQ(words_of("Temp\xC3\xA9rature").front(), "temperature");
  EXPECT_EQ(words_of("Temp\xE9rature").front(), "temperature");
  EXPECT_EQ(words_of("M\xC3\x8DNIMA").front(), "minima");
}

TEST(ColumnName, KnowsDailyMinima) {
  for (const char* name : {"tmin",
                           "TMIN",
                           "Tmin(C)",
                           "min",
                           "temp_min",
                           "minimum",
                           "MinTemp",
                           "tmin_c",
                           "temperature_2m_min (\xC2\xB0"
                           "C)",
                           "Min.TemperatureF",
                           "Min Temp (\xC2\xB0"
                           "C)",
                           "Min Temp (\xB0"
                           "C)",
                           "daily minimum",
                           "Minimum temperature (Degree C)",
                           "TN",
                           "TNK",
                           "T2M_MIN",
                           "low",
                           "Temperatura m\xC3\xADnima",
                           "mint"}) {
    EXPECT_EQ(meaning(name), M::night) << name;
  }
}

TEST(ColumnName, KnowsDailyMaxima) {
  for (const char* name : {"tmax",
                           "TMax",
                           "Max Temp (\xC2\xB0"
                           "F)",
                           "temp_max",
                           "maximum",
                           "max",
                           "High (F)",
                           "TX",
                           "temperature_2m_max",
                           "maxTemp"}) {
    EXPECT_EQ(meaning(name), M::day) << name;
  }
}

TEST(ColumnName, RefusesMinimaAndMaximaOfOtherThings) {
  for (const char* name : {"Min.DewpointF",
                           "Min Temp Flag",
                           "Max.Humidity",
                           "Max Sea Level Pressure",
                           "T10N",
                           "TGK",
                           "grass minimum",
                           "Days of accumulation of maximum temperature",
                           "min max range",
                           "apparent_temperature_min",
                           "wind max"}) {
    EXPECT_EQ(meaning(name), M::other) << name;
  }
}

TEST(ColumnName, ATemperatureMayBeNeither) {
  EXPECT_EQ(meaning("Temp"), M::temperature_only);
  EXPECT_EQ(meaning("Temperature_Celsius"), M::temperature_only);
  EXPECT_EQ(meaning("Mean.TemperatureF"), M::other);
}

TEST(ColumnName, ReadsTheUnit) {
  EXPECT_EQ(unit("tmin_c"), TemperatureUnit::celsius);
  EXPECT_EQ(unit("Min Temp (\xC2\xBA"
                 "C)"),
            TemperatureUnit::celsius);
  EXPECT_EQ(unit("Min Temp (\xC3\x82\xC2\xB0"
                 "C)"),
            TemperatureUnit::celsius)
      << "mojibake";
  EXPECT_EQ(unit("Max.TemperatureF"), TemperatureUnit::fahrenheit);
  EXPECT_EQ(unit("tmax_f"), TemperatureUnit::fahrenheit);
  EXPECT_EQ(unit("TN (0.1 \xC2\xB0"
                 "C)"),
            TemperatureUnit::tenths_of_celsius);
  EXPECT_EQ(unit("tmin tenths"), TemperatureUnit::tenths_of_celsius);
  EXPECT_FALSE(unit("tmin"));
}

TEST(ColumnName, ANumberBehindAnElementIsNoUnit) {
  EXPECT_EQ(meaning("tmin_1"), M::other);
}

TEST(ColumnName, KnowsDates) {
  for (const char* name : {"date",
                           "DATE",
                           "Datum",
                           "Fecha",
                           "Date/Time",
                           "date (dd/mm/yyyy)",
                           "YYYYMMDD",
                           "MESS_DATUM",
                           "# date"}) {
    EXPECT_EQ(meaning(name), M::date) << name;
  }
  EXPECT_EQ(meaning("time"), M::time);
  EXPECT_EQ(meaning("day"), M::day_number);
  EXPECT_EQ(meaning("Year"), M::year);
  EXPECT_EQ(meaning("Month"), M::month);
  EXPECT_EQ(meaning("Jahr"), M::year);
}

TEST(ColumnName, ADateInUniversalTimeIsNoLocalDay) {
  EXPECT_EQ(meaning("Date(UTC)"), M::other);
}

TEST(ColumnName, KnowsStationsAndPlaces) {
  EXPECT_EQ(meaning("Station"), M::station_id);
  EXPECT_EQ(meaning("Climate ID"), M::station_id);
  EXPECT_EQ(meaning("Station Name"), M::station_name);
  EXPECT_EQ(meaning("Latitude (y)"), M::latitude);
  EXPECT_EQ(meaning("lon"), M::longitude);
  EXPECT_EQ(meaning("elevation_m"), M::elevation);
  EXPECT_EQ(meaning("id"), M::other) << "often the number of the row";
}

} // namespace
} // namespace nightsow::climate
