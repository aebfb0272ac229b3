// The samples of weather formats and the raw archive files that lie beside the project in its
// workshop (../shared/weather): each is read, or refused for a stated reason. Elsewhere these tests
// are skipped; every format has an invented file of its own in the unit tests.
#include "climate/base/file.hpp"
#include "climate/readers/read_readings.hpp"
#include "tests/support/source_folder.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {
namespace {

namespace fs = std::filesystem;

// What is to come of one file: the format and the first row's night and day (tenths of °C, as
// integers; `none` for no value), or the words of the refusal.
constexpr int none = 9999;

struct Expected {
  std::string_view file;
  std::string_view format;
  std::size_t rows = 0;
  int night = none;
  int day = none;
  std::string_view station = {};
};

struct Refused {
  std::string_view file;
  std::string_view words;
};

// The numbers were read from the samples by eye.
constexpr auto read_samples = std::to_array<Expected>({
    {"acorn-sat/acorn.sat.minT.009021.daily-head.txt", "ACORN-SAT text, minima", 7, 177},
    {"aquacrop/champion-head.txt", "AquaCrop climate text", 3, -211, 33},
    {"aquacrop/hyderabad-head.txt", "AquaCrop climate text", 4, 113, 273},
    {"aquacrop/tunis-head.txt", "AquaCrop climate text", 5, 150, 200},
    {"bom-cdo/IDCJAC0010_066062_part.csv",
     "Bureau of Meteorology, one element a file",
     22,
     none,
     244},
    {"bom-cdo/IDCJAC0010_086071_leading-empty.csv",
     "Bureau of Meteorology, one element a file",
     11,
     none,
     189},
    {"bom-cdo/IDCJAC0011_066062_part.csv", "Bureau of Meteorology, one element a file", 11, 145},
    {"cliflo/4882_temperature-part.csv", "New Zealand database export", 3, -10},
    {"dwd-klima-tag/fichtelberg-excerpt.txt", "DWD daily (klima_tag)", 2, 10, 54},
    {"dwd-klima-tag/station-44-excerpt.txt", "DWD daily (klima_tag)", 1, -60, -40},
    {"ec-daily/bulk-one-row-bom.csv", "Environment Canada daily CSV", 1, -88, -43, "6106001"},
    {"ec-daily/old-with-preamble-excerpt.csv", "Environment Canada daily CSV", 2, -149, -22},
    {"ec-fixed/A1128551-head.DLY", "Environment Canada .DLY", 55, none, 189},
    {"ecad/blended-TN-first-row.txt", "ECA&D", 1, 14},
    {"ecad/value-zip-tmin-head.txt", "ECA&D, a column a station", 4, -164, none, "000042"},
    {"ghcnd-csv-long/USW00023234-derived-with-header.csv",
     "GHCN-Daily CSV, an element a row",
     8,
     none,
     133},
    {"ghcnd-csv-long/by_station-with-header-excerpt.csv",
     "GHCN-Daily CSV, an element a row",
     2,
     none,
     356},
    {"ghcnd-csv-long/by_year-noheader-excerpt.csv",
     "GHCN-Daily CSV, an element a row",
     3,
     none,
     356,
     "USW00094728"},
    {"ghcnd-csv-wide/JA000047759-access.csv", "GHCN-Daily CSV, a day a row", 25, 13, 79},
    {"ghcnd-csv-wide/USW00094889-access.csv", "GHCN-Daily CSV, a day a row", 5, 67, 133},
    {"ghcnd-csv-wide/death_valley_2018_cdo_standard_units.csv",
     "GHCN-Daily CSV, a day a row",
     363,
     11,
     183},
    {"ghcnd-csv-wide/sitka_2018_cdo_standard_units_full.csv",
     "GHCN-Daily CSV, a day a row",
     19,
     33,
     89},
    {"ghcnd-dly/AGE00147704-csv-with-dly-name.dly", "GHCN-Daily CSV, a month a row", 46, none, 150},
    {"ghcnd-dly/CA006105976-head.dly", "GHCN-Daily .dly", 325, none, 39},
    {"ghcnd-dly/CA006105976-with-qflags.dly", "GHCN-Daily .dly", 115, 6},
    {"ghcnd-dly/CA006105978-part.dly", "GHCN-Daily .dly", 199, none, 189},
    {"gsod/gsod-excerpt.csv", "GSOD (global summary of the day)", 1, 67, 106, "03005099999"},
    {"inta/NH0358-head.dat", "INTA .DAT", 3, 82, 292},
    {"jma/manual-test-excerpt.cp932.csv", "JMA daily", 2, 200, 310},
    {"knmi/etmgeg_260-part.txt", "KNMI daily", 9, -8, 23},
    {"loggers/cimis-daily-espartoa-2020-part.csv", "daily table", 29, 33, 128},
    {"meteofrance/Q-excerpt.csv", "Météo-France daily", 1, 84, 246},
    {"midas-badc/daily-temperature-test-excerpt.csv",
     "MIDAS daily temperatures (BADC-CSV)",
     3,
     82,
     155},
    {"misc-exports/chicago-head.csv", "daily table", 4, 151, 300},
    {"misc-exports/seattle-weather-head.csv", "daily table", 3, 50, 128},
    {"nasapower/daily_ag_point.csv", "NASA POWER CSV", 1, -254, -227},
    {"nasapower/daily_sb_point_LST.csv", "NASA POWER CSV", 1, -257, -249},
    {"nasapower/daily_sb_point_UTC.csv", "NASA POWER CSV", 1, -254, -227},
    {"rclimdex/sydney-head.txt", "RClimDex", 6, 187, 237},
    {"sef/CapeTown-Tn-head.tsv", "SEF (rescued minima)", 7, 101},
    {"sef/GHCN-AR000875850-Tn-head.tsv", "SEF (rescued minima)", 7, 85},
    {"sef/Kimberley-Tn-head.tsv", "SEF (rescued minima)", 9, 181},
    {"silo-met/Wandering-head.met", "crop model .met (SILO)", 8, 140, 315},
    {"silo-met/harare-head.met", "crop model .met (SILO)", 6, 86, 238},
    {"silo-met/telhadya-head.met", "crop model .met (SILO)", 5, 80, 220},
    {"tenths-tsv/USC00112140-head.txt", "GHCN-Daily subset in tenths", 9, -22, 61},
    {"tenths-tsv/reduced-ghcn-capetown-part.csv", "daily table", 7, 160, 220},
    {"wth/AZMC8832-head.wth", "DSSAT weather file", 7, 10, 160},
    {"wth/SWIF6752-head.wth", "DSSAT weather file", 9, -72, -44},
});

constexpr auto refused_samples = std::to_array<Refused>({
    {"bom-cdo/IDCJAC0010_086338_1800_Note.txt", "a note that comes with"},
    {"bom-cdo/IDCJAC0011_accumulated-days.csv", "the extreme of several days"},
    {"ec-daily/bulk-one-row-bom.csv", "6106001 (OTTAWA INTL A), 6144239 (KITCHENER/WATERLOO)"},
    {"ecad/blended-header-excerpt.txt", "this is ECA&D"},
    {"ecad/nonblended-TG-excerpt.txt", "this is ECA&D"},
    {"ecad/stations-excerpt.txt", "list of stations"},
    {"ecad/value-zip-stations.txt", "list of stations"},
    {"ecad/value-zip-tmin-head.txt", "each column of this file is a station: 000042"},
    {"ghcnd-csv-long/by_year-noheader-excerpt.csv", "several stations"},
    {"ghcnd-csv-wide/JA000047759-middle-noheader.csv", "without its header line"},
    {"ghcnd-meta/ghcnd-inventory-germany.txt", "no known weather format"},
    {"ghcnd-meta/ghcnd-stations-first-ten.txt", "no known weather format"},
    {"ghcnd-meta/ghcnd-stations-germany.txt", "no known weather format"},
    {"ghcnd-meta/ghcnd-stations-odd-lines.txt", "no known weather format"},
    {"gsod/gsod-excerpt.csv", "03005099999 (LERWICK, UK)"},
    {"italy/header.csv", "there are no rows"},
    {"meteofrance/Q-full-header.csv", "there are no rows"},
    {"meteostat/columns.txt", "there are no rows"},
    {"misc-exports/denver-head.csv", "not one of 5 rows gives a temperature"},
    {"misc-exports/melbourne-min-head.csv", "neither a daily minimum nor a daily maximum"},
    {"nasapower/header-with-2010-style.txt", "this is NASA POWER CSV, but no line names dates"},
});

// Folders that hold no daily tables of text: JSON, and readings within the day.
constexpr std::array<std::string_view, 3> other_folders{"aemet", "loggers", "openmeteo"};

class SampleFiles : public ::testing::Test {
protected:
  void SetUp() override {
    if (!fs::is_directory(folder_ / "samples")) {
      GTEST_SKIP() << "there is no " << folder_ << " here";
    }
  }

  [[nodiscard]] Readings read(std::string_view file, std::string_view station = {}) const {
    return read_readings(
        read_whole_file(folder_ / file, "the test"), file, {std::string(station), "", ""});
  }

  [[nodiscard]] Readings sample(std::string_view file, std::string_view station = {}) const {
    return read("samples/" + std::string(file), station);
  }

  [[nodiscard]] const fs::path& folder() const { return folder_; }

private:
  fs::path folder_ = support::shared_weather();
};

int tenths(float celsius) {
  return std::isnan(celsius) ? none : static_cast<int>(std::lround(celsius * 10.0F));
}

TEST_F(SampleFiles, AreRead) {
  for (const Expected& expected : read_samples) {
    const Readings readings = sample(expected.file, expected.station);
    EXPECT_EQ(readings.format, expected.format) << expected.file;
    EXPECT_EQ(readings.rows.size(), expected.rows) << expected.file;
    EXPECT_EQ(tenths(readings.rows.at(0).night_c), expected.night) << expected.file;
    EXPECT_EQ(tenths(readings.rows.at(0).day_c), expected.day) << expected.file;
    EXPECT_EQ(readings.rows_faulty, 0U) << expected.file;
  }
}

TEST_F(SampleFiles, AreRefusedForAStatedReason) {
  for (const Refused& refused : refused_samples) {
    try {
      static_cast<void>(sample(refused.file));
      ADD_FAILURE() << refused.file << " was read";
    } catch (const InputError& error) {
      EXPECT_NE(error.problem().found.find(refused.words), std::string::npos)
          << refused.file << ": " << error.problem().found;
      EXPECT_FALSE(error.problem().remedy.empty()) << refused.file;
    }
  }
}

TEST_F(SampleFiles, AreAllListedHere) {
  std::set<std::string_view> listed;
  for (const Expected& expected : read_samples) {
    listed.insert(expected.file);
  }
  for (const Refused& refused : refused_samples) {
    listed.insert(refused.file);
  }
  for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder() / "samples")) {
    const std::string file = entry.path().lexically_relative(folder() / "samples").string();
    const bool other = std::any_of(std::begin(other_folders),
                                   std::end(other_folders),
                                   [&](std::string_view start) { return file.starts_with(start); });
    if (entry.is_regular_file() && file != "README.md" && !other) {
      EXPECT_TRUE(listed.contains(file)) << file;
    }
  }
}

// Both elements of several files of one place, a date once.
std::map<Date, std::pair<int, int>> by_date(const std::vector<Readings>& files) {
  std::map<Date, std::pair<int, int>> days;
  for (const Readings& readings : files) {
    for (const Reading& row : readings.rows) {
      auto& day = days.try_emplace(row.date, none, none).first->second;
      day.first = std::isnan(row.night_c) ? day.first : tenths(row.night_c);
      day.second = std::isnan(row.day_c) ? day.second : tenths(row.day_c);
    }
  }
  return days;
}

// The plain series beside the raw files were made from these by other hands.
TEST_F(SampleFiles, RawFilesGiveTheSeriesMadeFromThem) {
  const auto acorn =
      by_date({read("raw/acorn-087031.minT.daily.txt"), read("raw/acorn-087031.maxT.daily.txt")});
  EXPECT_EQ(acorn, by_date({read("series/acorn-087031.csv")}));
  EXPECT_EQ(by_date({read("raw/knmi-260.etmgeg.txt")}), by_date({read("series/knmi-260.csv")}));
  // Of this one only observed days went into the series.
  const auto met = by_date({read("raw/silo-010648.met")});
  for (const auto& [date, day] : by_date({read("series/silo-010648.csv")})) {
    ASSERT_TRUE(met.contains(date)) << format_iso_date(date);
    EXPECT_TRUE(day.first == none || day.first == met.at(date).first) << format_iso_date(date);
    EXPECT_TRUE(day.second == none || day.second == met.at(date).second) << format_iso_date(date);
  }
}

TEST_F(SampleFiles, PaddingOfAMetFileIsListedAndNotUsed) {
  const Readings readings = read("raw/silo-010648.met");
  EXPECT_EQ(readings.findings.size(), 2U); // 2008, day 237: both elements
  EXPECT_EQ(format_iso_date(readings.findings.at(0).date), "2008-08-24");
  EXPECT_EQ(format_iso_date(readings.rows.back().date), "2008-08-23");
}

} // namespace
} // namespace nightsow::climate
