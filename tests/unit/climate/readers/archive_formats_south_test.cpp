#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

// Layouts as the archives have them; stations and numbers are invented.

std::string bureau(const std::string& element, const std::string& rows) {
  return "Product code,Bureau of Meteorology station number,Year,Month,Day," + element +
         " temperature (Degree C),Days of accumulation of temperature,Quality\r\n" + rows;
}

TEST(BureauOfMeteorology, OneElementAFile) {
  const Readings nights = read(bureau("Minimum",
                                      "IDCJAC0011,099001,2024,01,01,,,\r\n"
                                      "IDCJAC0011,099001,2024,03,31,5.5,,Y\r\n"
                                      "IDCJAC0011,099001,2024,04,01,6.5,1,Y\r\n"));
  EXPECT_EQ(rows_of(nights), "2024-03-31 5.5/-; 2024-04-01 6.5/-");
  EXPECT_EQ(nights.station.id, "099001");
  EXPECT_EQ(rows_of(read(bureau("Maximum", "IDCJAC0010,099001,2024,03,31,18.5,1,Y\n"))),
            "2024-03-31 -/18.5");
}

TEST(BureauOfMeteorology, AnExtremeOfSeveralDaysIsAFinding) {
  const Readings readings = read(bureau("Minimum",
                                        "IDCJAC0011,099001,2024,03,31,5.5,1,Y\n"
                                        "IDCJAC0011,099001,2024,04,02,3.5,2,Y\n"));
  EXPECT_EQ(rows_of(readings), "2024-03-31 5.5/-");
  ASSERT_EQ(readings.findings.size(), 1U);
  EXPECT_EQ(readings.findings[0].value_c, 3.5);
  EXPECT_EQ(readings.findings[0].line, 3U);
}

TEST(BureauOfMeteorology, ValuesNotYetCheckedAreUsedAndCounted) {
  const Readings readings = read(bureau("Minimum",
                                        "IDCJAC0011,099001,2024,03,31,5.5,1,N\n"
                                        "IDCJAC0011,099001,2024,04,01,6.5,1,N\n"));
  EXPECT_EQ(readings.rows.size(), 2U);
  EXPECT_TRUE(says(readings.problems.at(0).found, "2 values are not yet checked"));
}

TEST(BureauOfMeteorology, ATableOfBothElementsIsReadToo) {
  EXPECT_EQ(rows_of(read("Product code,BoM station,Year,Month,Day,Maximum (C),Minimum (C)\n"
                         "IDCJAC0010,099001,2024,03,31,18.5,5.5\n")),
            "2024-03-31 5.5/18.5");
}

TEST(AcornSat, TextOfMinimaAndMaxima) {
  const Readings nights =
      read("MIN TEMP   099001 20240331 20240402 missing_value=99999.9 NO SUCH PORT      \r\n"
           "20240331     5.5\r\n20240401 99999.9\r\n20240402    -1.5\r\n");
  EXPECT_EQ(rows_of(nights), "2024-03-31 5.5/-; 2024-04-02 -1.5/-");
  EXPECT_EQ(nights.station.id, "099001");
  EXPECT_EQ(nights.station.name, "NO SUCH PORT");
  EXPECT_EQ(rows_of(read("MAX TEMP   099001 20240331 20240331 missing_value=99999.9 NO SUCH\n"
                         "20240331    18.5\n")),
            "2024-03-31 -/18.5");
}

TEST(AcornSat, TheCsvNamesItsStationInOneRowOnly) {
  const Readings readings =
      read("date,minimum temperature (degC),site number,site name\n"
           ",,099001,NO SUCH PORT\n2024-03-31,5.5,,\n2024-04-01,,,\n2024-04-02,-1.5,,\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5.5/-; 2024-04-02 -1.5/-");
  EXPECT_EQ(readings.station.id, "099001");
  EXPECT_EQ(readings.station.name, "NO SUCH PORT");
  EXPECT_EQ(readings.rows_faulty, 0U);
}

TEST(MetFile, LongTermAveragesAreNeverReadings) {
  const Readings readings = read("[weather.met.weather]\r\n!station number = 099001\r\n"
                                 "!station name = NO SUCH SHIRE (DAM)\r\n"
                                 "latitude = -33.50  (DECIMAL DEGREES)\r\ntav = 15.0 (oC)\r\n"
                                 "year  day radn  maxt   mint  rain  pan    vp      code\r\n"
                                 " ()   () (MJ/m^2) (oC) (oC)  (mm)  (mm)   (hPa)     ()\r\n"
                                 "2024  91   17.0  18.5   5.0   0.0   3.4   8.0 000000\r\n"
                                 "2024  92   17.0  19.5   6.0   0.0   3.4   8.0 072222\r\n"
                                 "2024  93   17.0  20.5   7.0   0.0   3.4   8.0 777777\r\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18.5; 2024-04-01 6/-");
  EXPECT_EQ(readings.station.name, "NO SUCH SHIRE");
  EXPECT_EQ(readings.station.latitude, -33.5);
  EXPECT_EQ(readings.findings.size(), 3U);
  ASSERT_EQ(readings.problems.size(), 2U);
  EXPECT_TRUE(says(readings.problems[0].found, "3 values are long-term averages"));
  EXPECT_TRUE(says(readings.problems[1].found, "1 value is interpolated"));
}

TEST(MetFile, DayOfTheMonthGoesBeforeDayOfTheYear) {
  EXPECT_EQ(rows_of(read("[weather.met.weather]\nLatitude=33(deg.min)\n\n"
                         "  day  dm month year  maxt  mint\n  ()  ()  ()   ()  (oC)  (oC)\n"
                         "   91  31     3 2024  18.5   5.0\n")),
            "2024-03-31 5/18.5");
}

TEST(MetFile, AColumnOfTheSiteIsPassedOver) {
  EXPECT_EQ(rows_of(read("[weather.met.weather]\nSite  Year  Day  maxt  mint\n()  ()  ()  (oC)  "
                         "(oC)\nNo_Such_  2024  91  18.5  5.0\nNo_Such   2024  92  19.5  6.0\n")),
            "2024-03-31 5/18.5; 2024-04-01 6/19.5");
}

TEST(NewZealand, TheEndOfADayInUtcIsTheNextLocalDate) {
  const Readings readings =
      read("Station information:\nName,Agent Number\nNo such, Flat,99001\n\nMax_min: Daily\n"
           "Station,Date(UTC),Tmax(C),Period(Hrs),Tmin(C),Period(Hrs),Tgmin(C),Period(Hrs)\n"
           "99001,20240630:2100,8.5,24,-1.5,24,-3.5,24\n"
           "99001,20241231:2000,22.5,24,-,-,9.5,24\n"
           "99001,20250102:2000,25.5,48,11.5,24,9.5,24\n");
  EXPECT_EQ(rows_of(readings), "2024-07-01 -1.5/8.5; 2025-01-01 -/22.5; 2025-01-03 11.5/-");
  EXPECT_EQ(readings.station.id, "99001");
  ASSERT_EQ(readings.findings.size(), 1U);
  EXPECT_EQ(readings.findings[0].value_c, 25.5);
}

TEST(RClimDex, HasNoHeaderAndMissingValuesOfItsOwn) {
  const Readings readings = read("2024\t3\t31\t0.3\t18.5\t5.0\n2024\t4\t1\t-99.9\t19.5\t6.0\n"
                                 "2024\t4\t2\t0\t-99.9\t-99.9\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18.5; 2024-04-01 6/19.5");
  EXPECT_EQ(readings.format, "RClimDex");
  EXPECT_TRUE(says(readings.problems.at(0).found, "no line names the columns"));
}

TEST(RClimDex, RowsWhoseNightsLieAboveTheirDaysAreNotTakenForIt) {
  EXPECT_FALSE(refusal("2024\t3\t31\t0.3\t5.0\t18.5\n2024\t4\t1\t0\t6.0\t19.5\n").found.empty());
}

TEST(AquaCrop, BlanksOrTabsPartItsColumns) {
  EXPECT_EQ(rows_of(read("Day       Month     Year      Tmin(C)        Tmax(C)        Prcp(mm)\n"
                         "31        3         2024      5.00           18.50          0.00\n")),
            "2024-03-31 5/18.5");
  EXPECT_EQ(rows_of(read("Day\tMonth\tYear\tMinTemp\tMaxTemp\tPrecipitation\n"
                         "31\t3\t2024\t5.0\t18.5\t0.0\n")),
            "2024-03-31 5/18.5");
}

TEST(Sef, OneVariableAFile) {
  const std::string head =
      "SEF\t1.0.0\nID\tNo_Such\nName\tNo such mission\nLat\t-33.5\nLon\t19.25\n"
      "Alt\t310\nSource\tX\nLink\t\nVbl\t";
  const std::string rows =
      "\nUnits\tC\nMeta\t\nYear\tMonth\tDay\tHour\tMinute\tPeriod\tValue\tMeta\n"
      "1884\t3\t31\t5\t43\tp1day\t5.5\tOrig=41.9F\n"
      "1884\t4\t1\tNA\tNA\tp1day\t6.5\t\n1884\t4\t2\t\t\tday\tNA\t\n";
  const Readings nights = read(head + "Tn\nStat\tminimum" + rows);
  EXPECT_EQ(rows_of(nights), "1884-03-31 5.5/-; 1884-04-01 6.5/-");
  EXPECT_EQ(nights.station.id, "No_Such");
  EXPECT_EQ(nights.station.name, "No such mission");
  EXPECT_EQ(nights.station.elevation_m, 310.0);
  EXPECT_EQ(rows_of(read(head + "Tx\nStat\tmaximum" + rows)), "1884-03-31 -/5.5; 1884-04-01 -/6.5");
  EXPECT_TRUE(says(refusal(head + "p\nStat\tpoint" + rows).found, "neither Tn nor Tx"));
}

TEST(Jma, Utf8IsReadToo) {
  EXPECT_EQ(
      rows_of(read("年月日,最高気温(℃),最低気温(℃)\n2024/3/31,18.5,5.0\n2024/4/1,19.5 ),6.0\n")),
      "2024-03-31 5/18.5; 2024-04-01 6/-");
}

// In cp932: date, highest and lowest temperature, then the same with the quality behind each.
TEST(Jma, ShiftJisIsReadByItsBytes) {
  const std::string date = "\x94N\x8C\x8E\x93\xFA";
  const std::string day = "\x8D\xC5\x8D\x82\x8B\x43\x89\xB7(\x81\x8E)";
  const std::string night = "\x8D\xC5\x92\xE1\x8B\x43\x89\xB7(\x81\x8E)";
  EXPECT_EQ(rows_of(read(date + "," + day + "," + night + "\n2024/3/31,18.5,5.0\n")),
            "2024-03-31 5/18.5");
  const Readings marked = read(date + "," + day + "," + day + "," + night + "," + night +
                               "\n,,\x95,,\x95\n2024/3/31,18.5,8,5.0,8\n2024/4/1,19.5,4,6.0,8\n");
  EXPECT_EQ(rows_of(marked), "2024-03-31 5/18.5; 2024-04-01 6/-");
  EXPECT_EQ(marked.findings.size(), 1U);
}

TEST(Jma, NoMarkUnderFiveIsUsed) {
  std::string text = "年月日,最低気温(℃),最低気温(℃)\n";
  for (int mark = 0; mark <= 8; ++mark) {
    text += "2024/4/" + std::to_string(mark + 1) + ",5.0," + std::to_string(mark) + '\n';
  }
  const Readings readings = read(text);
  EXPECT_EQ(rows_of(readings), "2024-04-06 5/-; 2024-04-07 5/-; 2024-04-08 5/-; 2024-04-09 5/-");
  EXPECT_EQ(readings.findings.size(), 5U);
}

} // namespace
} // namespace nightsow::climate
