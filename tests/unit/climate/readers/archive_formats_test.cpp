#include "climate/readers/archive_formats.hpp"

#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <set>

namespace nightsow::climate {
namespace {

// ---- the table itself -----------------------------------------------------------------------

TEST(ArchiveFormats, EachHasANameOfItsOwn) {
  std::set<std::string_view> names;
  for (const TableFormat& format : archive_formats()) {
    EXPECT_FALSE(format.name.empty());
    EXPECT_TRUE(names.insert(format.name).second) << format.name;
  }
}

TEST(ArchiveFormats, EachMarkOfQualityIsExplained) {
  for (const TableFormat& format : archive_formats()) {
    for (const QualityRule& rule : format.quality) {
      const bool drops = !rule.not_used.empty() || rule.at_most > 0;
      EXPECT_EQ(drops, !rule.why_not.empty()) << format.name;
      EXPECT_EQ(!rule.kept.empty(), !rule.what_kept.empty()) << format.name;
    }
  }
}

TEST(ArchiveFormats, AGeneralTableIsNoneOfThem) {
  EXPECT_EQ(read("date,tmin,tmax\n2024-03-31,5,18\n").format, "daily table");
}

// ---- what every row of the table does -------------------------------------------------------

constexpr std::string_view two_stations =
    "NUM_POSTE;NOM_USUEL;LAT;LON;ALTI;AAAAMMJJ;RR;QRR;TN;QTN;TX;QTX\n"
    "99001001;VAL PERDU;44.5;5.25;900;20240331;0.0;1;5.5;1;18.5;1\n"
    "99002002;COL VIDE;44.6;5.5;1400;20240331;0.0;1;1.5;1;12.5;1\n";

TEST(ArchiveFormats, SeveralStationsAreListedByNumberAndName) {
  const Problem problem = refusal(two_stations);
  EXPECT_TRUE(says(problem.found, "99001001 (VAL PERDU), 99002002 (COL VIDE)")) << problem.found;
  EXPECT_TRUE(says(problem.remedy, R"("station": "99001001")")) << problem.remedy;
}

TEST(ArchiveFormats, OneStationOfSeveralIsReadByNumberOrName) {
  for (const char* wanted : {"99002002", "COL VIDE"}) {
    const Readings readings =
        read_readings(two_stations, "file.csv", {std::string(wanted), "", ""});
    EXPECT_EQ(rows_of(readings), "2024-03-31 1.5/12.5");
    EXPECT_EQ(readings.station.id, "99002002");
    EXPECT_EQ(readings.station.name, "COL VIDE");
    EXPECT_EQ(readings.station.latitude, 44.6);
    EXPECT_EQ(readings.station.elevation_m, 1400.0);
  }
}

TEST(ArchiveFormats, AStationThatIsNotThereIsRefusedWithThoseThatAre) {
  try {
    static_cast<void>(read_readings(two_stations, "file.csv", {std::string("99003003"), "", ""}));
    FAIL() << "this was read";
  } catch (const InputError& error) {
    EXPECT_TRUE(says(error.problem().found, "'99003003' is not in this file: 99001001"));
  }
}

TEST(ArchiveFormats, AFaultyRowOfAnotherStationIsNoFault) {
  const std::string text =
      std::string(two_stations) + "99002002;COL VIDE;44.6;5.5;1400;never;;;;;;\n";
  EXPECT_EQ(read_readings(text, "file.csv", {std::string("99001001"), "", ""}).rows_faulty, 0U);
  EXPECT_EQ(read_readings(text, "file.csv", {std::string("99002002"), "", ""}).rows_faulty, 1U);
}

TEST(ArchiveFormats, FaultsOfRowsHaveTheirPlace) {
  const Readings readings = read("STATIONS_ID;MESS_DATUM;QN_4; TXK; TNK; TGK;eor\n"
                                 "          7;20240331;    3;  18.5;   5.0;   2.0;eor\n"
                                 "          7;20240332;    3;  18.5;   5.0;   2.0;eor\n"
                                 "          7;20240401;    3;   x.y;   6.0;   3.0;eor\n"
                                 "          7;20240402;    3;  18.5\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18.5; 2024-04-01 6/-");
  EXPECT_EQ(readings.rows_faulty, 3U);
  ASSERT_EQ(readings.problems.size(), 3U);
  EXPECT_EQ(readings.problems[0].line, 3U);
  EXPECT_EQ(readings.problems[1].line, 4U);
  EXPECT_EQ(readings.problems[1].column, 28U);
  EXPECT_EQ(readings.problems[2].line, 5U);
}

TEST(ArchiveFormats, TheReasonsSayWhatADayIs) {
  const Readings readings = read("# STN,YYYYMMDD,   TN,   TX\n  999,20240331,   50,  185\n");
  EXPECT_TRUE(says(readings.because.back(), "0 to 24 h UTC"));
}

TEST(ArchiveFormats, AFileOfAnotherElementIsRefusedByName) {
  const Problem problem = refusal(" SOUID,    DATE,   HU, Q_HU\n999001,20240331,   81,    0\n");
  EXPECT_TRUE(says(problem.found, "this is ECA&D")) << problem.found;
  EXPECT_TRUE(says(problem.expected, "TN or TX"));
}

} // namespace
} // namespace nightsow::climate
