#include "climate/base/file.hpp"
#include "climate/base/quantile.hpp"
#include "climate/merge_readings.hpp"
#include "climate/past_seasons.hpp"
#include "climate/readers/read_readings.hpp"
#include "climate/screen.hpp"
#include "climate/smooth_year.hpp"
#include "tests/support/source_folder.hpp"

#include <gtest/gtest.h>

#include <array>
#include <filesystem>

namespace nightsow::climate {
namespace {

// Real stations (open daily records), figures measured on them beforehand by an independent
// program: swing of the smooth nights, and the share of seasons in which `holds` falls within three
// days of its first allowed day. The readings are not part of the project; without them the test is
// skipped.
struct Place {
  const char* file;
  double limit_c;
  double day_limit_c;
  double swing_k;
  double share_at_once;
  bool binds;
};

std::filesystem::path series_file(const char* name) {
  return support::shared_weather() / "series" / name;
}

DailySeries series_of(const std::filesystem::path& file) {
  const std::array readings{read_readings(read_whole_file(file, "the test"), file.string())};
  DailySeries series = screen(merge_readings(readings)).series;
  return series;
}

class MeasuredPlaces : public testing::TestWithParam<Place> {};

TEST_P(MeasuredPlaces, BindOrNotAsMeasured) {
  const std::filesystem::path file = series_file(GetParam().file);
  if (!std::filesystem::exists(file)) {
    GTEST_SKIP() << "no readings of this station here";
  }
  DailySeries series = series_of(file);
  const SmoothYear smooth = *fit_smooth_year(series);
  const PhasesOrReason turning = find_phases(smooth.night, 2026);
  ASSERT_TRUE(turning.phases);
  EXPECT_NEAR(turning.swing.kelvin(), GetParam().swing_k, 0.06);
  fill_short_holes(series);
  const NightLimit limit{.at_or_under = Celsius{GetParam().limit_c},
                         .day_limit = Celsius{GetParam().day_limit_c}};
  const Binding binding =
      climate::binding(past_seasons(to_bench(series, "open", {}), *turning.phases, limit));
  EXPECT_EQ(binding.binds, GetParam().binds);
  EXPECT_NEAR(
      1.0 - static_cast<double>(binding.late) / binding.seasons, GetParam().share_at_once, 0.015);
}

INSTANTIATE_TEST_SUITE_P(
    OpenRecords,
    MeasuredPlaces,
    testing::Values(Place{"acorn-023090.csv", 15, 25, 9.8, 0.09, true},    // Adelaide
                    Place{"silo-078031.csv", 13, 25, 9.49, 0.21, true},    // Nhill
                    Place{"dmc-temuco.csv", 13, 25, 5.2, 0.95, false},     // Temuco
                    Place{"knmi-260.csv", 13, 25, 12.59, 0.64, false},     // De Bilt
                    Place{"aq-norfolk.csv", 13, 25, 11.42, 0.83, false})); // Norfolk

TEST(MeasuredAdelaide, StirsInTheHeatButHoldsAtLeastThirtyDaysLater) {
  const std::filesystem::path file = series_file("acorn-023090.csv");
  if (!std::filesystem::exists(file)) {
    GTEST_SKIP() << "no readings of this station here";
  }
  DailySeries series = series_of(file);
  const Phases phases = *find_phases(fit_smooth_year(series)->night, 2026).phases;
  fill_short_holes(series);
  const BenchAir bench = to_bench(series, "open", {});
  const NightLimit limit{.at_or_under = Celsius{15.0}, .day_limit = Celsius{25.0}};
  std::vector<double> stirs;
  std::vector<double> holds;
  int relapsing = 0;
  for (const PastSeason& past : past_seasons(bench, phases, limit)) {
    if (past.usable && past.words.stirs.day && past.words.holds.day) {
      stirs.push_back(*past.words.stirs.day);
      holds.push_back(*past.words.holds.day);
      relapsing += relapses(bench.air.nights_from(past.season.hottest, nights_searched),
                            limit,
                            *past.words.stirs.day)
                       ? 1
                       : 0;
    }
  }
  EXPECT_NEAR(quantile_type8(stirs, 0.5), 15.0, 2.0);
  EXPECT_NEAR(quantile_type8(holds, 0.5), 55.0, 2.0);
  EXPECT_NEAR(static_cast<double>(relapsing) / static_cast<double>(stirs.size()), 0.9, 0.03);
}

TEST(MeasuredDarwin, HasTwoPeaksAndThereforeNoPhases) {
  const std::filesystem::path file = series_file("acorn-014015.csv");
  if (!std::filesystem::exists(file)) {
    GTEST_SKIP() << "no readings of this station here";
  }
  const PhasesOrReason turning = find_phases(fit_smooth_year(series_of(file))->night, 2026);
  EXPECT_FALSE(turning.phases);
  EXPECT_EQ(turning.reason, NoPhases::several_peaks);
  EXPECT_NEAR(turning.swing.kelvin(), 6.3, 0.06);
}

} // namespace
} // namespace nightsow::climate
