#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace nightsow::climate {
namespace {

std::string rows(std::string_view text) {
  return rows_of(read(text));
}

bool has_reason(const Readings& readings, std::string_view words) {
  return std::any_of(readings.because.begin(),
                     readings.because.end(),
                     [&](const std::string& reason) { return says(reason, words); });
}

// A month of days that only °F can explain.
std::string hot_month(std::string_view header) {
  std::string text(header);
  for (int day = 10; day < 30; ++day) {
    text += "\n2024-06-" + std::to_string(day) + ",50,86";
  }
  return text;
}

TEST(DailyTable, ReadsThePlainestFile) {
  const Readings readings = read("date,tmin_c,tmax_c\n2024-03-30,5.1,18.2\n2024-03-31,6,19\n");
  EXPECT_EQ(rows_of(readings), "2024-03-30 5.1/18.2; 2024-03-31 6/19");
  EXPECT_EQ(readings.format, "daily table");
  EXPECT_EQ(readings.unit, "°C");
  EXPECT_EQ(readings.rows_read, 2U);
  EXPECT_TRUE(readings.problems.empty());
  EXPECT_EQ(readings.rows[1].line, 3U);
}

TEST(DailyTable, SaysHowItUnderstoodTheColumns) {
  const Readings readings = read("Fecha;Tmax (°C);Tmin (°C)\n31.03.2024;18;5\n");
  EXPECT_TRUE(has_reason(readings, "'Fecha' is the date"));
  EXPECT_TRUE(has_reason(readings, "'Tmin (°C)' is daily minima"));
  EXPECT_TRUE(has_reason(readings, "semicolon"));
  EXPECT_TRUE(has_reason(readings, "the unit stands in the header: °C"));
}

TEST(DailyTable, ReadsADecimalCommaBehindSemicolons) {
  EXPECT_EQ(rows("date;tmin_c;tmax_c\n2024-03-31;-0,5;12,75\n"), "2024-03-31 -0.5/12.75");
}

TEST(DailyTable, ReadsADecimalCommaBehindTabs) {
  EXPECT_EQ(rows("date\ttmin_c\n2024-03-31\t5,5\n"), "2024-03-31 5.5/-");
}

TEST(DailyTable, ReadsADecimalCommaInQuotes) {
  EXPECT_EQ(rows("date,tmin_c,tmax_c\n2024-03-31,\"5,5\",\"12,0\"\n"), "2024-03-31 5.5/12");
}

TEST(DailyTable, AnUnquotedDecimalCommaIsAFaultAndNotAMisreading) {
  const Readings readings = read("date,tmin_c,tmax_c\n2024-03-30,5,18\n2024-03-31,5,5,12,0\n");
  EXPECT_EQ(rows_of(readings), "2024-03-30 5/18");
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_TRUE(says(readings.problems[0].remedy, "decimal commas in quotes"));
}

TEST(DailyTable, ReadsEveryLineEndAndAByteOrderMark) {
  for (const char* text : {"date,tmin_c\r\n2024-03-31,5\r\n",
                           "date,tmin_c\r2024-03-31,5\r",
                           "\xEF\xBB\xBF"
                           "date,tmin_c\n2024-03-31,5",
                           "date,tmin_c\r\n2024-03-31,5\n"}) {
    EXPECT_EQ(rows(text), "2024-03-31 5/-") << text;
  }
}

TEST(DailyTable, ReadsALatin1DegreeSign) {
  EXPECT_EQ(read("date,tmin (\xB0"
                 "C)\n2024-03-31,5\n")
                .unit,
            "°C");
}

TEST(DailyTable, AFileMayHoldOnlyMaxima) {
  EXPECT_EQ(rows("date,tmax_c\n2024-03-31,18\n"), "2024-03-31 -/18");
}

TEST(DailyTable, MissingMarksLeaveTheOtherElementAlone) {
  for (const char* mark : {"",
                           " ",
                           "-",
                           "NA",
                           "NaN",
                           "null",
                           "-99",
                           "-99.9",
                           "-999",
                           "-999.0",
                           "-9999",
                           "-9999.9",
                           "9999.9",
                           "99999.9",
                           "-99999"}) {
    const std::string text = "date,tmin_f,tmax_f\n2024-03-31," + std::string(mark) + ",77\n";
    const Readings readings = read(text);
    EXPECT_EQ(rows_of(readings), "2024-03-31 -/25") << mark;
    EXPECT_TRUE(readings.problems.empty()) << mark;
  }
}

TEST(DailyTable, ARowWithoutAnyValueIsReadButGivesNothing) {
  const Readings readings = read("date,tmin_c,tmax_c\n2024-03-30,,\n2024-03-31,5,18\n");
  EXPECT_EQ(readings.rows_read, 2U);
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18");
}

TEST(DailyTable, ConvertsFahrenheitThatTheHeaderNames) {
  const Readings readings = read("date,Min.TemperatureF,Max.TemperatureF\n2024-03-31,50,77\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 10/25");
  EXPECT_EQ(readings.unit, "°F");
}

TEST(DailyTable, AUnitNamedForOneElementHoldsForBoth) {
  EXPECT_EQ(rows("date,tmin_f,tmax\n2024-03-31,50,77\n"), "2024-03-31 10/25");
}

TEST(DailyTable, EachElementMayNameItsOwnUnit) {
  const Readings readings = read("date,tmin_c,tmax_f\n2024-03-31,10,77\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 10/25");
  EXPECT_EQ(readings.unit, "°C and °F");
}

TEST(DailyTable, GuessesFahrenheitByTheValuesAndSaysSo) {
  const Readings readings = read(hot_month("date,tmin,tmax"));
  EXPECT_EQ(readings.unit, "°F");
  EXPECT_FLOAT_EQ(readings.rows[0].day_c, 30.0F);
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0].severity, Severity::note);
  EXPECT_TRUE(says(readings.problems[0].found, "values from 50 to 86 were taken as °F"));
  EXPECT_TRUE(has_reason(readings, "were taken as °F"));
}

TEST(DailyTable, TheHeaderWinsAgainstTheValuesButAWarningSaysSo) {
  const Readings readings = read(hot_month("date,tmin_c,tmax_c"));
  EXPECT_FLOAT_EQ(readings.rows[0].day_c, 86.0F);
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0].severity, Severity::warning);
  EXPECT_TRUE(says(readings.problems[0].found, "the header says °C"));
  EXPECT_EQ(readings.rows_faulty, 0U);
}

TEST(DailyTable, RefusesValuesOfNoKnownUnit) {
  std::string text = "date,tmin,tmax\n";
  for (int day = 10; day < 30; ++day) {
    text += "2024-06-" + std::to_string(day) + ",283.4,295.2\n";
  }
  EXPECT_TRUE(says(refusal(text).found, "values from 283.4 to 295.2 fit neither °C nor °F"));
}

TEST(DailyTable, ReadsADateInThreeColumns) {
  EXPECT_EQ(rows("Day,Month,Year,Tmin(C),Tmax(C)\n31,3,2024,5,18\n"), "2024-03-31 5/18");
}

TEST(DailyTable, DecidesTheOrderOfDayAndMonthOnTheWholeFile) {
  EXPECT_EQ(rows("date,tmin_c\n3/4/2024,5\n13/4/2024,6\n"), "2024-04-03 5/-; 2024-04-13 6/-");
  EXPECT_EQ(rows("date,tmin_c\n3/4/2024,5\n3/13/2024,6\n"), "2024-03-04 5/-; 2024-03-13 6/-");
}

TEST(DailyTable, AsksForTheOrderWhenNothingTells) {
  EXPECT_TRUE(says(refusal("date,tmin_c\n3/4/2024,5\n").remedy, "is it day/month or month/day?"));
}

TEST(DailyTable, LeavesMidnightAside) {
  const Readings readings = read("time,tmin_c\n2024-03-30T00:00,5\n2024-03-31T00:00,6\n");
  EXPECT_EQ(rows_of(readings), "2024-03-30 5/-; 2024-03-31 6/-");
  EXPECT_TRUE(has_reason(readings, "'T00:00'"));
}

TEST(DailyTable, RefusesReadingsWithinTheDay) {
  const Problem problem = refusal("time,tmin_c\n2024-03-31T00:00,5\n2024-03-31T06:00,6\n");
  EXPECT_EQ(problem.line, 3U);
  EXPECT_TRUE(says(problem.found, "readings within the day"));
}

TEST(DailyTable, AFaultyDateIsListedWithItsPlaceAndTheRestIsUsed) {
  const Readings readings = read("tmin_c,date\n5,2024-02-30\n6,2024-03-01\n");
  EXPECT_EQ(rows_of(readings), "2024-03-01 6/-");
  EXPECT_EQ(readings.rows_faulty, 1U);
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(
      to_text(readings.problems[0]),
      "file.csv:2:3: '2024-02-30' where the date should be; expected a day of the calendar, such "
      "as 2024-03-31; correct the date or remove the row");
}

TEST(DailyTable, AFaultyValueLeavesTheOtherElementOfItsRow) {
  const Readings readings = read("date,tmin_c,tmax_c\n2024-03-31,5?,18\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 -/18");
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0].line, 2U);
  EXPECT_EQ(readings.problems[0].column, 12U);
  EXPECT_EQ(readings.problems[0].severity, Severity::warning);
  EXPECT_EQ(readings.problems[0].found, "'5?' in column 'tmin_c'");
}

TEST(DailyTable, AShortRowIsAFault) {
  const Readings readings = read("date,tmin_c,tmax_c\n2024-03-30,5\n2024-03-31,5,18\n");
  EXPECT_EQ(readings.rows_faulty, 1U);
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18");
}

TEST(DailyTable, ColumnsThatAreNotNeededMayBeCutOff) {
  EXPECT_EQ(rows("date,tmin_c,rain\n2024-03-31,5\n"), "2024-03-31 5/-");
  EXPECT_EQ(rows("date,tmin_c\n2024-03-31,5,,\n"), "2024-03-31 5/-");
}

TEST(DailyTable, LineNumbersCountBlankLinesAndPreambles) {
  const Readings readings = read("My garden\n\ndate,tmin_c\n\n2024-03-30,5\n\nx,6\n");
  EXPECT_EQ(readings.rows[0].line, 5U);
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0].line, 7U);
}

TEST(DailyTable, CommentsAndBlankRowsAreNoRows) {
  const Readings readings = read("date,tmin_c\n# moved the screen\n2024-03-31,5\n  \n");
  EXPECT_EQ(readings.rows_read, 1U);
  EXPECT_TRUE(readings.problems.empty());
}

TEST(DailyTable, OneStationIsNamed) {
  const Readings readings =
      read("station,lat,lon,elev,date,tmin_c\nHILL,-33.5,19,310,2024-03-31,5\n");
  EXPECT_EQ(readings.station.id, "HILL");
  EXPECT_EQ(readings.station.latitude, -33.5);
  EXPECT_EQ(readings.station.longitude, 19.0);
  EXPECT_EQ(readings.station.elevation_m, 310.0);
}

TEST(DailyTable, AStationMayStandInTheFirstRowOnly) {
  const Readings readings = read("date,tmin_c,station\n2024-03-30,5,HILL\n2024-03-31,6\n");
  EXPECT_EQ(readings.station.id, "HILL");
  EXPECT_EQ(readings.rows.size(), 2U);
}

TEST(DailyTable, SeveralStationsAreRefusedAndListed) {
  const Problem problem = refusal("station,date,tmin_c\nHILL,2024-03-31,5\nDALE,2024-03-31,3\n");
  EXPECT_TRUE(says(problem.found, "HILL, DALE"));
  EXPECT_TRUE(says(problem.remedy, "or keep only its rows"));
}

TEST(DailyTable, ReadsThePlaceInAPreamble) {
  const Readings readings =
      read("latitude,longitude,elevation,timezone\n-33.5,19.25,310,Somewhere/Else\n\n"
           "time,temperature_2m_min (°C)\n2024-03-31,5\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/-");
  EXPECT_EQ(readings.station.latitude, -33.5);
  EXPECT_EQ(readings.station.elevation_m, 310.0);
}

TEST(DailyTable, AnUnknownElevationStaysUnknown) {
  const Readings readings =
      read("latitude,longitude,elevation\n-33.5,19.25,NaN\n\ntime,tmin_c\n2024-03-31,5\n");
  EXPECT_FALSE(readings.station.elevation_m);
}

TEST(DailyTable, TwoColumnsOfOneElementAreRefused) {
  EXPECT_TRUE(says(refusal("date,tmin,minimum\n2024-03-31,5,6\n").found, "'tmin' and 'minimum'"));
}

TEST(DailyTable, ReadsDatesOfBothReleases) {
  EXPECT_EQ(rows("date,temp_max,temp_min\n2012/01/01,12.8,5.0\n2012-01-02,10.6,2.8\n"),
            "2012-01-01 5/12.8; 2012-01-02 2.8/10.6");
}

TEST(DailyTable, RepeatedDatesAndDatesOutOfOrderAreKeptAsTheyStand) {
  EXPECT_EQ(rows("date,tmin_c\n2024-03-31,5\n2024-03-30,4\n2024-03-31,6\n"),
            "2024-03-31 5/-; 2024-03-30 4/-; 2024-03-31 6/-");
}

} // namespace
} // namespace nightsow::climate
