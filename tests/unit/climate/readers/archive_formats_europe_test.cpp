#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

// Layouts as the archives have them; stations and numbers are invented.

TEST(Knmi, IsInTenthsBehindItsExplanations) {
  const Readings readings = read("BRON: X\nYYYYMMDD  = Datum\n\n"
                                 "# STN,YYYYMMDD,   TG,   TN,  TNH,   TX,  TXH, T10N\n\n"
                                 "  999,20240331,  118,   50,    6,  185,   14,   21\n"
                                 "  999,20240401,  118,     ,     ,  195,   14,   21\n"
                                 "  999,20240402,  118,  -60,    6,  205\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18.5; 2024-04-01 -/19.5; 2024-04-02 -6/20.5");
  EXPECT_EQ(readings.unit, "tenths of °C");
  EXPECT_EQ(readings.station.id, "999");
  EXPECT_EQ(readings.rows_faulty, 0U);
}

TEST(Dwd, TheMinimumNearTheGroundIsNotTheMinimum) {
  const Readings readings =
      read("STATIONS_ID;MESS_DATUM;QN_3;  FX;QN_4; TMK; TXK; TNK; TGK;eor\n"
           "        999;20240331;-999;-999;    3;   9.0;   18.5;    5.0;   -2.0;eor\n"
           "        999;20240401;-999;-999;    3;   9.0;   -999;    6.0;-999;eor\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18.5; 2024-04-01 6/-");
  EXPECT_EQ(readings.station.id, "999");
}

TEST(Ecad, SuspectValuesAreFindings) {
  const Readings readings =
      read("EUROPEAN CLIMATE ASSESSMENT & DATASET (ECA&D), file created on 01-04-2024\n\n"
           "This is the blended series of station NOWHERELAND, NO SUCH MILL (STAID: 99999).\n\n"
           " SOUID,    DATE,   TN, Q_TN\n"
           "999001,20240331,   50,    0\n"
           "999001,20240401,  858,    1\n"
           "999001,20240402,-9999,    9\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/-");
  EXPECT_EQ(readings.station.id, "99999");
  EXPECT_EQ(readings.station.name, "NOWHERELAND, NO SUCH MILL");
  ASSERT_EQ(readings.findings.size(), 1U);
  EXPECT_EQ(readings.findings[0].kind, FindingKind::flagged);
  EXPECT_EQ(readings.findings[0].verdict, Verdict::ignored);
  EXPECT_EQ(format_iso_date(readings.findings[0].date), "2024-04-01");
  EXPECT_NEAR(readings.findings[0].value_c, 85.8, 1e-5);
  EXPECT_TRUE(says(readings.problems.at(0).found, "1 value is suspect"));
}

TEST(Ecad, TheNonBlendedLayoutHasAColumnMore) {
  const Readings readings = read(" STAID, SOUID,    DATE,   TX, Q_TX\n"
                                 " 99999,999001,20240331,  185,    0\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 -/18.5");
  EXPECT_EQ(readings.station.id, "99999");
}

constexpr std::string_view column_a_station =
    "YYYYMMDD, 009001, 009002\r\n20240331, 5.5, 1\r\n20240401, NaN, 2.5\r\n";

TEST(EcadColumns, ThePersonIsAskedWhichStation) {
  EXPECT_TRUE(says(refusal(column_a_station).found, "009001, 009002"));
}

TEST(EcadColumns, TheFilesNameTellsTheElement) {
  const Readings nights = read_readings(column_a_station, "value/tmin.txt", {"009002", "", ""});
  EXPECT_EQ(rows_of(nights), "2024-03-31 1/-; 2024-04-01 2.5/-");
  EXPECT_EQ(nights.station.id, "009002");
  EXPECT_EQ(rows_of(read_readings(column_a_station, "min/tmax.txt", {"009001", "", ""})),
            "2024-03-31 -/5.5");
}

TEST(EcadColumns, ANameThatTellsNothingIsRefused) {
  EXPECT_THROW(static_cast<void>(read_readings(column_a_station, "data.txt", {"009001", "", ""})),
               InputError);
}

TEST(HadCet, TheFilesNameTellsTheElement) {
  const std::string text = "\nDate        Value\n2024-03-31    5.5\n2024-04-01   -6.5\n";
  EXPECT_EQ(rows_of(read_readings(text, "mintemp_daily.txt")),
            "2024-03-31 5.5/-; 2024-04-01 -6.5/-");
  EXPECT_EQ(rows_of(read_readings(text, "maxtemp_daily.txt")),
            "2024-03-31 -/5.5; 2024-04-01 -/-6.5");
  EXPECT_THROW(static_cast<void>(read_readings(text, "meantemp_daily.txt")), InputError);
}

TEST(MeteoFrance, DoubtfulValuesAreFindings) {
  const Readings readings =
      read("NUM_POSTE;NOM_USUEL;LAT;LON;ALTI;AAAAMMJJ;RR;QRR;TN;QTN;HTN;QHTN;TX;QTX\n"
           "99001001;VAL PERDU;44.5;5.25;900;20240331;0.0;1;5.5;1;0610;9;18.5;1\n"
           "99001001;VAL PERDU;44.5;5.25;900;20240401;0.0;1;6.5;2;0610;9;19.5;1\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5.5/18.5; 2024-04-01 -/19.5");
  EXPECT_EQ(readings.findings.size(), 1U);
  EXPECT_EQ(readings.station.name, "VAL PERDU");
}

TEST(Meteostat, IsReadWithAndWithoutItsHeader) {
  const std::string rows = "2024-03-31,9.1,5.0,18.5,0.0,,180,10.1,,1015.2,\n"
                           "2024-04-01,9.9,,19.5,,,,,,,\n";
  const std::string wanted = "2024-03-31 5/18.5; 2024-04-01 -/19.5";
  const Readings bare = read(rows);
  EXPECT_EQ(rows_of(bare), wanted);
  EXPECT_EQ(bare.format, "Meteostat bulk daily, without header");
  const Readings headed = read("date,tavg,tmin,tmax,prcp,snow,wdir,wspd,wpgt,pres,tsun\n" + rows);
  EXPECT_EQ(rows_of(headed), wanted);
  EXPECT_EQ(headed.format, "Meteostat bulk daily");
}

} // namespace
} // namespace nightsow::climate
