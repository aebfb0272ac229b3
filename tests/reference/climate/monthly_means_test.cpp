// Monthly means of three series of the workshop (../shared/weather), all the way from the file to
// the report, beside an independent computation: monthly_means.py, recorded with Python 3.11.2,
// pandas 1.5.3 and numpy 1.24.2. Elsewhere these tests are skipped.
#include "climate/base/file.hpp"
#include "climate/merge_readings.hpp"
#include "climate/readers/read_readings.hpp"
#include "planner/answers/climate_report.hpp"
#include "tests/support/invented_garden.hpp"
#include "tests/support/source_folder.hpp"

#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <string>
#include <vector>

namespace nightsow {
namespace {

namespace fs = std::filesystem;

struct MonthlyMeans {
  const char* file;
  std::array<double, 12> night_c;
  std::array<double, 12> day_c;
  std::array<int, 12> nights;
};

// source: output of monthly_means.py. Kyoto, De Bilt and Adelaide.
const std::vector<MonthlyMeans> computed{
    {"raw/ghcnd-JA000047759.csv",
     {{0.4160,
       0.7101,
       3.2649,
       8.6547,
       13.5252,
       18.3353,
       22.9175,
       23.8531,
       19.8032,
       13.0182,
       7.1387,
       2.4786}},
     {{8.8263,
       9.7305,
       13.5953,
       19.8691,
       24.6744,
       27.6663,
       31.7387,
       33.3102,
       28.8147,
       22.8770,
       17.1783,
       11.5978}},
     {{1807, 1634, 1766, 1745, 1834, 1766, 1859, 1807, 1724, 1755, 1711, 1780}}},
    {"series/knmi-260.csv",
     {{0.4481,
       0.2736,
       2.2131,
       4.2048,
       7.8416,
       10.6325,
       12.8588,
       12.3305,
       9.9582,
       7.0396,
       3.6918,
       1.5035}},
     {{5.7347,
       6.5929,
       10.1605,
       14.2210,
       18.1330,
       20.5447,
       22.8294,
       22.5773,
       19.2454,
       14.7967,
       9.6969,
       6.6149}},
     {{1240, 1130, 1240, 1200, 1240, 1200, 1240, 1240, 1200, 1240, 1200, 1240}}},
    {"series/acorn-023090.csv",
     {{16.6804,
       16.6604,
       15.2945,
       11.7052,
       10.1854,
       7.5143,
       7.0833,
       7.9345,
       9.3989,
       10.8224,
       13.6235,
       15.3126}},
     {{29.0836,
       29.2751,
       26.7832,
       22.2990,
       19.1634,
       15.9054,
       15.1152,
       16.5813,
       18.9016,
       21.4560,
       25.1075,
       27.4659}},
     {{3332, 3042, 3338, 3228, 3306, 3233, 3339, 3345, 3229, 3338, 3225, 3333}}}};

class MonthlyMeansOfSeries : public testing::TestWithParam<MonthlyMeans> {};

TEST_P(MonthlyMeansOfSeries, AreThoseComputedWithoutUs) {
  const fs::path folder = support::shared_weather();
  if (!fs::is_directory(folder)) {
    GTEST_SKIP() << "there is no " << folder << " here";
  }
  const MonthlyMeans& wanted = GetParam();
  const std::string text = read_whole_file(folder / wanted.file, "the test");
  const climate::Readings readings = climate::read_readings(text, wanted.file);
  const climate::MergedReadings merged = climate::merge_readings(std::vector{readings});
  const Date last = merged.series.last();
  const planner::LoadedGarden garden = planner::as_of(support::folder_of({}, merged, last), last);
  const planner::ClimateAnswer answer = planner::climate_report(garden, {});
  ASSERT_EQ(answer.months.size(), 12U);
  for (std::size_t month = 0; month < answer.months.size(); ++month) {
    // Reported to a tenth.
    EXPECT_NEAR(answer.months[month].night_c.value(), wanted.night_c.at(month), 0.0501);
    EXPECT_NEAR(answer.months[month].day_c.value(), wanted.day_c.at(month), 0.0501);
    EXPECT_EQ(answer.months[month].nights, wanted.nights.at(month)) << month;
  }
}

INSTANTIATE_TEST_SUITE_P(KyotoDeBiltAdelaide, MonthlyMeansOfSeries, testing::ValuesIn(computed));

} // namespace
} // namespace nightsow
