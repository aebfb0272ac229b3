// The weather files that lie beside the project in its workshop (../shared/weather). Elsewhere
// these tests are skipped.
#include "climate/base/file.hpp"
#include "climate/merge_readings.hpp"
#include "climate/readers/read_readings.hpp"
#include "tests/support/source_folder.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

namespace nightsow::climate {
namespace {

namespace fs = std::filesystem;

class SharedSeries : public ::testing::Test {
protected:
  void SetUp() override {
    if (!fs::is_directory(folder_ / "series")) {
      GTEST_SKIP() << "there is no " << folder_ << " here";
    }
  }

  [[nodiscard]] Readings read(const std::string& file) const {
    return read_readings(text(file), file);
  }

  [[nodiscard]] std::string text(const std::string& file) const {
    return read_whole_file(folder_ / file, "the test");
  }

  [[nodiscard]] std::vector<std::string> series_files() const {
    std::vector<std::string> files;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder_ / "series")) {
      if (entry.path().extension() == ".csv" && entry.path().filename() != "index.csv") {
        files.push_back("series/" + entry.path().filename().string());
      }
    }
    return files;
  }

private:
  fs::path folder_ = support::shared_weather();
};

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream{text};
  for (std::string line; std::getline(stream, line);) {
    lines.push_back(line);
  }
  return lines;
}

// What a file of date,tmin_c,tmax_c holds, counted without our readers.
struct PlainCount {
  std::size_t rows = 0;
  std::size_t nights = 0;
  std::size_t days = 0;
};

PlainCount count_plainly(const std::string& text) {
  PlainCount count;
  std::vector<std::string> lines = lines_of(text);
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const std::size_t first = lines[i].find(',');
    const std::size_t second = lines[i].find(',', first + 1);
    ++count.rows;
    count.nights += second > first + 1 ? 1U : 0U;
    count.days += second + 1 < lines[i].find_last_not_of('\r') + 1 ? 1U : 0U;
  }
  return count;
}

PlainCount count_rows(const Readings& readings) {
  PlainCount count{readings.rows_read, 0, 0};
  for (const Reading& row : readings.rows) {
    count.nights += std::isnan(row.night_c) ? 0U : 1U;
    count.days += std::isnan(row.day_c) ? 0U : 1U;
  }
  return count;
}

// Two series are the same when they hold the same values on the same dates; missing ends do not
// count.
void expect_same(const DailySeries& a, const DailySeries& b, const std::string& what) {
  const Date first = std::min(a.first(), b.first());
  const int count = (std::max(a.last(), b.last()) - first).count() + 1;
  const auto differ = [](const std::vector<float>& x, const std::vector<float>& y) {
    std::size_t different = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
      const bool both_missing = std::isnan(x[i]) && std::isnan(y[i]);
      different += both_missing || std::abs(x[i] - y[i]) < 0.001F ? 0U : 1U;
    }
    return different;
  };
  EXPECT_EQ(differ(a.nights_from(first, count), b.nights_from(first, count)), 0U) << what;
  EXPECT_EQ(differ(a.days_from(first, count), b.days_from(first, count)), 0U) << what;
}

DailySeries series_of(const Readings& readings) {
  return merge_readings(std::vector{readings}).series;
}

TEST_F(SharedSeries, EverySeriesIsReadWhole) {
  const std::vector<std::string> files = series_files();
  ASSERT_FALSE(files.empty());
  for (const std::string& file : files) {
    const Readings readings = read(file);
    const PlainCount plain = count_plainly(text(file));
    const PlainCount ours = count_rows(readings);
    EXPECT_EQ(ours.rows, plain.rows) << file;
    EXPECT_EQ(ours.nights, plain.nights) << file;
    EXPECT_EQ(ours.days, plain.days) << file;
    EXPECT_TRUE(readings.problems.empty()) << file;
    EXPECT_EQ(readings.unit, "°C") << file;
  }
}

TEST_F(SharedSeries, RawFilesGiveTheSeriesThatOthersMadeOfThem) {
  for (const char* name : {"ghcnd-CA006105976.dly",
                           "ghcnd-JA000047759.csv",
                           "ghcnd-USW00094889.csv",
                           "zamg-16412.csv"}) {
    const std::string stem = fs::path(name).stem().string();
    expect_same(series_of(read("raw/" + std::string(name))),
                series_of(read("series/" + stem + ".csv")),
                name);
  }
}

TEST_F(SharedSeries, FlaggedValuesOfTheRawFileAreAllFound) {
  std::size_t flagged = 0;
  for (const std::string& line : lines_of(text("raw/ghcnd-CA006105976.dly"))) {
    const std::string element = line.substr(17, 4);
    for (std::size_t slot = 21; slot + 8 <= line.size(); slot += 8) {
      const bool value = line.substr(slot, 5) != "-9999" && line[slot + 6] != ' ';
      flagged += value && (element == "TMIN" || element == "TMAX") ? 1U : 0U;
    }
  }
  EXPECT_EQ(read("raw/ghcnd-CA006105976.dly").findings.size(), flagged);
}

struct Sample {
  const char* file;
  const char* format;
  std::size_t lines_above; ///< header and preamble
};

TEST_F(SharedSeries, EveryRowOfTheSamplesIsSeen) {
  for (const Sample& sample :
       {Sample{"ghcnd-dly/CA006105976-head.dly", "GHCN-Daily .dly", 0},
        Sample{"ghcnd-dly/CA006105976-with-qflags.dly", "GHCN-Daily .dly", 0},
        Sample{"ghcnd-dly/CA006105978-part.dly", "GHCN-Daily .dly", 0},
        Sample{"ghcnd-dly/AGE00147704-csv-with-dly-name.dly", "GHCN-Daily CSV, a month a row", 1},
        Sample{"ghcnd-csv-long/by_station-with-header-excerpt.csv",
               "GHCN-Daily CSV, an element a row",
               1},
        Sample{"ghcnd-csv-long/USW00023234-derived-with-header.csv",
               "GHCN-Daily CSV, an element a row",
               1},
        Sample{"ghcnd-csv-wide/JA000047759-access.csv", "GHCN-Daily CSV, a day a row", 1},
        Sample{"ghcnd-csv-wide/USW00094889-access.csv", "GHCN-Daily CSV, a day a row", 1},
        Sample{"ghcnd-csv-wide/death_valley_2018_cdo_standard_units.csv",
               "GHCN-Daily CSV, a day a row",
               1},
        Sample{"ghcnd-csv-wide/sitka_2018_cdo_standard_units_full.csv",
               "GHCN-Daily CSV, a day a row",
               1},
        Sample{"misc-exports/chicago-head.csv", "daily table", 1},
        Sample{"misc-exports/seattle-weather-head.csv", "daily table", 1},
        Sample{"loggers/cimis-daily-espartoa-2020-part.csv", "daily table", 1},
        Sample{"openmeteo/archive-daily.csv", "CSV in blocks, as Open-Meteo writes it", 4},
        Sample{"aquacrop/tunis-head.txt", "AquaCrop climate text", 1}}) {
    const std::string file = "samples/" + std::string(sample.file);
    const Readings readings = read(file);
    EXPECT_EQ(readings.format, sample.format) << file;
    EXPECT_EQ(readings.rows_read, lines_of(text(file)).size() - sample.lines_above) << file;
    EXPECT_EQ(readings.rows_faulty, 0U) << file;
  }
}

TEST_F(SharedSeries, FilesOfOtherFormatsAreRefusedAndNeverMisread) {
  for (const char* file : {"series/index.csv",
                           "samples/ecad/blended-header-excerpt.txt",
                           "samples/gsod/gsod-excerpt.csv",
                           "samples/misc-exports/melbourne-min-head.csv",
                           "samples/misc-exports/denver-head.csv",
                           "samples/ghcnd-csv-long/by_year-noheader-excerpt.csv",
                           "samples/ghcnd-csv-wide/JA000047759-middle-noheader.csv",
                           "samples/loggers/constructed-us-ampm-fixed-offset.csv"}) {
    EXPECT_THROW(static_cast<void>(read(file)), InputError) << file;
  }
}

} // namespace
} // namespace nightsow::climate
