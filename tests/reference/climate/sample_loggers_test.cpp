// Samples of archives as JSON and CSV and of loggers that lie beside the project in its workshop
// (../shared/weather/samples). Elsewhere these tests are skipped. The figures expected were read
// off the samples with pandas 1.5.3, without our readers.
#include "climate/base/file.hpp"
#include "climate/base/problem.hpp"
#include "climate/readers/read_readings.hpp"
#include "tests/support/source_folder.hpp"
#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {
namespace {

namespace fs = std::filesystem;

class Samples : public ::testing::Test {
protected:
  void SetUp() override {
    if (!fs::is_directory(folder_)) {
      GTEST_SKIP() << "there is no " << folder_ << " here";
    }
  }

  [[nodiscard]] Readings read_sample(const std::string& file,
                                     const ReadingChoices& choices = {}) const {
    return read_readings(read_whole_file(folder_ / file, "the test"), file, choices);
  }

  [[nodiscard]] std::string refusal_of(const std::string& file,
                                       const ReadingChoices& choices = {}) const {
    try {
      return "read as " + rows_of(read_sample(file, choices));
    } catch (const InputError& error) {
      return error.problem().found;
    }
  }

  [[nodiscard]] const fs::path& folder() const { return folder_; }

private:
  fs::path folder_ = support::shared_weather() / "samples";
};

TEST_F(Samples, OfAnArchiveInFahrenheit) {
  const Readings readings = read_sample("openmeteo/archive-daily-fahrenheit-10days.json");
  ASSERT_EQ(readings.rows.size(), 10U);
  EXPECT_EQ(readings.unit, "°F");
  EXPECT_EQ(readings.rows[0].date, make_date(2016, 2, 15));
  EXPECT_NEAR(readings.rows[0].night_c, (13.3 - 32.0) / 1.8, 1e-5);
  EXPECT_NEAR(readings.rows[9].day_c, (57.2 - 32.0) / 1.8, 1e-5);
  EXPECT_EQ(readings.rows_faulty, 0U);
}

TEST_F(Samples, OfAnArchiveAsCsv) {
  const Readings readings = read_sample("openmeteo/archive-daily.csv");
  EXPECT_EQ(rows_of(readings).substr(0, 50), "2025-10-08 14.5/21.8; 2025-10-09 8.5/15.1; 2025-10");
  EXPECT_EQ(readings.rows.size(), 8U);
  EXPECT_EQ(readings.station.elevation_m, 27.0);
}

TEST_F(Samples, OfHoursAtSeveralPlaces) {
  const std::string file = "openmeteo/archive-hourly-several-places.csv";
  EXPECT_EQ(refusal_of(file),
            "the file holds several places: 0 (55.7558, 37.6173); 1 (59.9343, 30.3351)");
  EXPECT_TRUE(says(refusal_of(file, {"1", "", ""}), "not one night or day is covered"));
}

TEST_F(Samples, OfAemet) {
  EXPECT_TRUE(says(refusal_of("aemet/daily.json"), "several stations: 3194U, 8178D"));
  EXPECT_EQ(rows_of(read_sample("aemet/daily.json", {"8178D", "", ""})), "2022-01-01 0.8/6.8");
  EXPECT_EQ(rows_of(read_sample("aemet/daily.json", {"3194U", "", ""})), "2019-10-01 10/28.1");
}

TEST_F(Samples, OfATableByTheHourWithTwoColumns) {
  const std::string file = "loggers/Winters-60rows.csv";
  EXPECT_EQ(refusal_of(file), "several columns hold temperatures: 'Temp_gaps', 'Temp'");
  EXPECT_EQ(rows_of(read_sample(file, {"", "Temp", "America/Los_Angeles"})),
            "2008-03-04 3.775/21.867; 2008-03-05 7.619/20.793");
  // Of the column with gaps the night of the 5th and its day have 14 and 15 readings of 24.
  EXPECT_EQ(rows_of(read_sample(file, {"", "Temp_gaps", "America/Los_Angeles"})),
            "2008-03-04 3.775/21.867");
}

TEST_F(Samples, OfReadingsEveryThreeHours) {
  const Readings readings =
      read_sample("loggers/climatedata-60rows.csv", {"", "", "Australia/Adelaide"});
  EXPECT_EQ(rows_of(readings),
            "2001-03-01 -/28.8; 2001-03-02 14/27.4; 2001-03-03 16.3/29; 2001-03-04 16.2/26.3; "
            "2001-03-05 17.8/32.7; 2001-03-06 26.4/35.7; 2001-03-07 20.6/33.8; 2001-03-08 22.3/-");
  EXPECT_EQ(readings.station.id, "23090");
}

TEST_F(Samples, OfANetworkWithAFooter) {
  const Readings readings = read_sample("loggers/chile-agromet-hourly-head-and-footer.csv");
  EXPECT_EQ(rows_of(readings), "2019-05-01 -/30.1");
  EXPECT_EQ(readings.rows_read, 34U); // 32 hours and two lines of prose
  EXPECT_EQ(readings.rows_faulty, 0U);
  EXPECT_TRUE(says(readings.because.at(3) + readings.because.at(4), "UTC-4"));
}

TEST_F(Samples, OfADailyTableInFahrenheit) {
  const Readings readings = read_sample("loggers/cimis-daily-espartoa-2020-part.csv");
  EXPECT_EQ(readings.rows.size(), 29U);
  EXPECT_EQ(readings.unit, "°F");
}

// Too short for a night, but understood up to there.
TEST_F(Samples, OfLoggersWithAFewRowsAreUnderstoodUpToTheirShortness) {
  const std::string too_short = "not one night or day is covered by its readings (there are ";
  const std::map<std::string, std::string> files{
      {"constructed-german-semicolon-cp1252-dst-start.csv", "3, mostly every 30 minutes)"},
      {"constructed-serial-only-in-first-row.txt", "3, mostly every 5 minutes)"},
      {"constructed-unit-column-dmy-12h.csv", "3, mostly every 255 minutes)"},
      {"constructed-us-ampm-fixed-offset.csv", "5, mostly every 30 minutes)"}};
  for (const auto& [file, end] : files) {
    EXPECT_EQ(refusal_of("loggers/" + file, {"", "", "Europe/Berlin"}), too_short + end) << file;
  }
  EXPECT_EQ(refusal_of("loggers/constructed-local-clock-dst-end-melbourne.csv",
                       {"", "", "Australia/Melbourne"}),
            too_short + "7, mostly every 15 minutes)");
}

// All rows are of one day, 20-12-25, which is 2020 or 20 December.
TEST_F(Samples, OfALoggerWhoseDateIsOpenIsRefusedWithTheQuestion) {
  EXPECT_EQ(refusal_of("loggers/constructed-decimal-comma-inside-comma-file.csv"),
            "no date of the file tells the order of day, month and year");
}

} // namespace
} // namespace nightsow::climate
