#include "climate/base/file.hpp"
#include "climate/lean_on_normals.hpp"
#include "climate/merge_readings.hpp"
#include "climate/readers/read_readings.hpp"
#include "climate/screen.hpp"
#include "tests/support/source_folder.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::climate {
namespace {

// All open station records at hand with fifty years, pooled: the nights of the last few years,
// those of a climate table (thirty years that ended ten years before), and what the ten years to
// come were like. The readings are not part of the project; without them the test is skipped.
constexpr std::size_t year = 365;
constexpr std::size_t table_from = 40 * year;
constexpr std::size_t table_to = 10 * year;
constexpr std::size_t to_come = 10 * year;

struct Errors {
  int cases = 0;
  double record = 0.0;
  double normals = 0.0;
  double leaned = 0.0;
};

DailySeries series_of(const std::filesystem::path& file) {
  const std::array readings{read_readings(read_whole_file(file, "the test"), file.string())};
  return screen(merge_readings(readings)).series;
}

bool is_nearly_whole(std::span<const float> values) {
  const auto there =
      std::count_if(values.begin(), values.end(), [](float value) { return !std::isnan(value); });
  return static_cast<double>(there) >= 0.8 * static_cast<double>(values.size());
}

std::optional<SmoothCurve> curve_over(const DailySeries& series, std::size_t from, std::size_t to) {
  const std::span<const float> part = series.night_c().subspan(from, to - from);
  return is_nearly_whole(part) ? fit_smooth_curve(series.date_of(from), part) : std::nullopt;
}

std::optional<SmoothCurve> table_over(const DailySeries& series, std::size_t from, std::size_t to) {
  std::array<double, 12> sums{};
  std::array<double, 12> days{};
  for (std::size_t i = from; i < to; ++i) {
    const std::size_t month =
        static_cast<unsigned>(date::year_month_day{series.date_of(i)}.month()) - 1;
    if (!std::isnan(series.night_c()[i])) {
      sums.at(month) += static_cast<double>(series.night_c()[i]);
      days.at(month) += 1.0;
    }
  }
  for (std::size_t month = 0; month < sums.size(); ++month) {
    sums.at(month) /= days.at(month);
  }
  return is_nearly_whole(series.night_c().subspan(from, to - from))
             ? std::optional{curve_of_normals(sums)}
             : std::nullopt;
}

// Mean square over a year.
double error_of(const SmoothCurve& curve, const SmoothCurve& truth, Date first) {
  double sum = 0.0;
  for (std::size_t i = 0; i < year; i += 5) {
    const Date date = first + Days{static_cast<int>(i)};
    const double error = curve.season_c(date) - truth.season_c(date);
    sum += error * error;
  }
  return sum / static_cast<double>(year / 5);
}

void add_cases(const DailySeries& series, std::size_t years, Errors& errors) {
  for (std::size_t now = table_from; now + to_come <= series.size(); now += 2 * year) {
    const auto record = curve_over(series, now - years * year, now);
    const auto truth = curve_over(series, now, now + to_come);
    const auto table = table_over(series, now - table_from, now - table_to);
    if (!record || !truth || !table) {
      continue;
    }
    const Date first = series.date_of(now);
    ++errors.cases;
    errors.record += error_of(*record, *truth, first);
    errors.normals += error_of(*table, *truth, first);
    errors.leaned += error_of(leaned(*record, *table, years_of(*record)), *truth, first);
  }
}

TEST(ShortRecordsOfRealStations, AreNearerToWhatComesWhenTheyLeanOnATable) {
  const std::filesystem::path folder = support::shared_weather() / "series";
  if (!std::filesystem::exists(folder)) {
    GTEST_SKIP() << "the shared weather series are not here";
  }
  constexpr std::array<std::size_t, 5> lengths{1, 2, 3, 5, 9};
  std::array<Errors, lengths.size()> errors{};
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().filename() != "index.csv") {
      const DailySeries series = series_of(entry.path());
      for (std::size_t i = 0; i < lengths.size(); ++i) {
        add_cases(series, lengths.at(i), errors.at(i));
      }
    }
  }
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    const Errors& of = errors.at(i);
    ASSERT_GT(of.cases, 200);
    const auto rms = [&](double sum) { return std::sqrt(sum / of.cases); };
    std::printf("%zu years: %d cases, record %.2f K, table %.2f K, leaned %.2f K\n",
                lengths.at(i),
                of.cases,
                rms(of.record),
                rms(of.normals),
                rms(of.leaned));
    EXPECT_LT(rms(of.leaned), rms(of.record)) << lengths.at(i);
    EXPECT_LT(rms(of.leaned), rms(of.normals)) << lengths.at(i);
  }
}

} // namespace
} // namespace nightsow::climate
