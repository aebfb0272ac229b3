#include "climate/readers/table_header.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {
namespace {

TEST(TableHeader, FindsColumnsInAnyOrder) {
  const TableHeader header = read_header("rain,tmax,station,tmin,date", 1, ',');
  EXPECT_EQ(header.date, 4U);
  EXPECT_EQ(header.night, 3U);
  EXPECT_EQ(header.day, 1U);
  EXPECT_EQ(header.column_of(ColumnMeaning::station_id), 2U);
  EXPECT_TRUE(header.complete());
}

TEST(TableHeader, FindsADateInThreeColumns) {
  const TableHeader header = read_header("Day,Month,Year,Tmin", 1, ',');
  EXPECT_FALSE(header.date);
  EXPECT_EQ(header.year_month_day, (std::array<std::size_t, 3>{2, 1, 0}));
}

TEST(TableHeader, PrefersADateToItsParts) {
  const TableHeader header = read_header("time,Date/Time,Year,Month,Day,Tmin", 1, ',');
  EXPECT_EQ(header.date, 1U);
  EXPECT_FALSE(header.year_month_day);
}

TEST(TableHeader, TakesATimeOrADayForWantOfADate) {
  EXPECT_EQ(read_header("time,tmin", 1, ',').date, 0U);
  EXPECT_EQ(read_header("tmin,day", 1, ',').date, 1U);
}

TEST(TableHeader, ADayNumberBesideAYearAloneIsNoDate) {
  EXPECT_FALSE(read_header("year,day,tmin", 1, ',').has_dates());
}

TEST(TableHeader, PrefersCelsiusAmongTwoUnits) {
  const TableHeader header = read_header("date,tmin_f,tmin_c,tmax_c,tmax_f", 1, ',');
  EXPECT_EQ(header.night, 2U);
  EXPECT_EQ(header.day, 3U);
  EXPECT_TRUE(header.rivals.empty());
}

TEST(TableHeader, ListsColumnsOfWhichOnlyOneCanBeMeant) {
  EXPECT_EQ(read_header("date,tmin,minimum", 1, ',').rivals,
            (std::vector<std::string>{"tmin", "minimum"}));
}

TEST(TableHeader, IsFoundBelowAPreambleUnderAnySeparator) {
  for (const char separator : {',', ';', '\t'}) {
    const std::string text =
        "Station of the hill\n\n5\" gauge\ndate" + std::string(1, separator) + "tmin\n";
    const auto header = find_header(opening_of(text));
    ASSERT_TRUE(header) << separator_name(separator);
    EXPECT_EQ(header->line, 4U);
    EXPECT_EQ(header->separator, separator);
  }
}

TEST(TableHeader, IsNotFoundWhereDatesOrTemperaturesLack) {
  EXPECT_FALSE(find_header(opening_of("date,rain\n")));
  EXPECT_FALSE(find_header(opening_of("tmin,tmax\n")));
  EXPECT_FALSE(find_header(opening_of("")));
}

TEST(TableHeader, TheNearestLineHasMostColumnsUnderstood) {
  const TableHeader header = nearest_to_a_header(opening_of("my notes\ndate;rain\n2024-03-31;4\n"));
  EXPECT_EQ(header.line, 2U);
  EXPECT_EQ(header.separator, ';');
}

TEST(TableHeader, FieldsOfALineAreTrimmedAndUnquoted) {
  EXPECT_EQ(fields_of(R"( a ;"b;c"; )", ';'), (std::vector<std::string>{"a", "b;c", ""}));
  EXPECT_TRUE(fields_of(R"("open)", ',').empty());
}

} // namespace
} // namespace nightsow::climate
