// Seattle, 2012-2015, as Debian's python3-vega-datasets installs it: a public daily file that this
// project had no hand in.
#include "climate/base/file.hpp"
#include "climate/merge_readings.hpp"
#include "climate/readers/read_readings.hpp"
#include "climate/screen.hpp"

#include <gtest/gtest.h>

#include <cstdio>
#include <filesystem>
#include <map>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace nightsow::climate {
namespace {

// The build may know better where the package lies (see tests/CMakeLists.txt).
#ifdef NIGHTSOW_VEGA_SEATTLE
constexpr const char* seattle_file = NIGHTSOW_VEGA_SEATTLE;
#else
constexpr const char* seattle_file =
    "/usr/lib/python3/dist-packages/vega_datasets/_data/seattle-weather.csv";
#endif

#ifdef NIGHTSOW_REQUIRE_DATASETS
constexpr bool dataset_required = true;
#else
constexpr bool dataset_required = false;
#endif

class VegaSeattle : public ::testing::Test {
protected:
  void SetUp() override {
    if (std::filesystem::exists(seattle_file)) {
      text_ = read_whole_file(seattle_file, "the test");
    } else if (dataset_required) {
      FAIL() << "install python3-vega-datasets: there is no " << seattle_file;
    } else {
      GTEST_SKIP() << "python3-vega-datasets is not installed: there is no " << seattle_file;
    }
  }

  [[nodiscard]] Readings readings() const { return read_readings(text_, "seattle-weather.csv"); }

  [[nodiscard]] const std::string& text() const { return text_; }

private:
  std::string text_;
};

// What a month adds up to.
struct MonthSum {
  double nights = 0.0;
  double days = 0.0;
  int count = 0;
};

using MonthSums = std::map<std::pair<int, int>, MonthSum>;

// date,precipitation,temp_max,temp_min,...; one release writes 2012/01/01, the next 2012-01-01.
MonthSums plain_sums(const std::string& text) {
  MonthSums sums;
  std::istringstream lines{text};
  std::string line;
  while (std::getline(lines, line)) {
    int year = 0;
    int month = 0;
    double day_c = 0.0;
    double night_c = 0.0;
    if (std::sscanf(
            line.c_str(), "%d%*[-/]%d%*[-/]%*d,%*f,%lf,%lf", &year, &month, &day_c, &night_c) ==
        4) {
      MonthSum& sum = sums[{year, month}];
      sum.nights += night_c;
      sum.days += day_c;
      ++sum.count;
    }
  }
  return sums;
}

MonthSums sums_of(const DailySeries& series) {
  MonthSums sums;
  for (std::size_t i = 0; i < series.size(); ++i) {
    const date::year_month_day date{series.date_of(i)};
    MonthSum& sum = sums[{static_cast<int>(date.year()),
                          static_cast<int>(static_cast<unsigned>(date.month()))}];
    sum.nights += static_cast<double>(series.night_c()[i]);
    sum.days += static_cast<double>(series.day_c()[i]);
    ++sum.count;
  }
  return sums;
}

TEST_F(VegaSeattle, IsRecognisedByItsContent) {
  const Readings seattle = readings();
  EXPECT_EQ(seattle.format, "daily table");
  EXPECT_EQ(seattle.unit, "°C");
  EXPECT_EQ(seattle.rows_faulty, 0U);
}

TEST_F(VegaSeattle, HoldsFourYearsWithoutAGap) {
  const Readings seattle = readings();
  EXPECT_EQ(seattle.rows.size(), 1461U);
  const DailySeries series = merge_readings(std::vector{seattle}).series;
  EXPECT_EQ(series.size(), 1461U);
  EXPECT_EQ(format_iso_date(series.first()), "2012-01-01");
  EXPECT_EQ(format_iso_date(series.last()), "2015-12-31");
}

TEST_F(VegaSeattle, PassesTheScreening) {
  EXPECT_TRUE(screen(merge_readings(std::vector{readings()})).findings.empty());
}

TEST_F(VegaSeattle, EveryMonthlyMeanIsThatOfAPlainSum) {
  const MonthSums plain = plain_sums(text());
  const MonthSums ours = sums_of(merge_readings(std::vector{readings()}).series);
  ASSERT_EQ(plain.size(), 48U);
  ASSERT_EQ(ours.size(), 48U);
  for (const auto& [month, sum] : plain) {
    const MonthSum& our = ours.at(month);
    EXPECT_EQ(our.count, sum.count);
    EXPECT_NEAR(our.nights / our.count, sum.nights / sum.count, 1e-5)
        << month.first << '-' << month.second;
    EXPECT_NEAR(our.days / our.count, sum.days / sum.count, 1e-5)
        << month.first << '-' << month.second;
  }
}

} // namespace
} // namespace nightsow::climate
