#include "climate/backtest.hpp"
#include "climate/base/file.hpp"
#include "climate/merge_readings.hpp"
#include "climate/readers/read_readings.hpp"
#include "climate/screen.hpp"
#include "climate/smooth_year.hpp"
#include "tests/support/source_folder.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <filesystem>
#include <vector>

// The same sums run on invented years elsewhere; with the sanitizers these take many minutes.
#if defined(__SANITIZE_ADDRESS__)
#define NIGHTSOW_SANITIZED
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define NIGHTSOW_SANITIZED
#endif
#endif

namespace nightsow::climate {
namespace {

// All open station records at hand with thirty years or so, pooled. What is wanted of the outlook
// was set beforehand: by how much its fair CRPS is lower than that of the past dates still possible
// on the day of issue, and that its 80 % interval covers 77 to 83 % of what came. The readings are
// not part of the project; without them the test is skipped.
struct Wanted {
  int lead_days;
  double least_skill;
};

constexpr std::array wanted{
    Wanted{45, 0.005}, Wanted{30, 0.025}, Wanted{15, 0.045}, Wanted{7, 0.09}};
constexpr std::size_t least_days = 29 * 365;

struct Pooled {
  int cases = 0;
  double outlook = 0.0;
  double possible = 0.0;
  double covered = 0.0;
};

struct PooledRelapse {
  double outlook = 0.0;
  double climate = 0.0;
};

std::vector<std::filesystem::path> series_files() {
  const std::filesystem::path folder = support::shared_weather() / "series";
  std::vector<std::filesystem::path> files;
  if (std::filesystem::exists(folder)) {
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
      if (entry.path().filename() != "index.csv") {
        files.push_back(entry.path());
      }
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::optional<Backtest> backtest_of(const std::filesystem::path& file) {
  const std::array readings{read_readings(read_whole_file(file, "the test"), file.string())};
  const DailySeries series = screen(merge_readings(readings)).series;
  if (series.size() < least_days) {
    return std::nullopt;
  }
  const std::optional<SmoothYear> smooth = fit_smooth_year(series);
  const PhasesOrReason turning = find_phases(smooth->night, 2026);
  if (!turning.phases) {
    return std::nullopt;
  }
  return backtest(series, *turning.phases);
}

void add(const LeadScores& lead, Pooled& pooled) {
  pooled.cases += lead.cases;
  pooled.outlook += lead.cases * lead.crps_outlook;
  pooled.possible += lead.cases * lead.crps_possible;
  pooled.covered += lead.cases * lead.coverage_80;
}

TEST(OutlookOfRealStations, BeatsThePastDatesStillPossibleAndCoversWhatItSays) {
#ifdef NIGHTSOW_SANITIZED
  GTEST_SKIP() << "takes too long with sanitizers";
#endif
  std::array<Pooled, backtest_leads.size()> pooled;
  std::array<PooledRelapse, 2> relapse;
  int stations = 0;
  for (const std::filesystem::path& file : series_files()) {
    const std::optional<Backtest> tested = backtest_of(file);
    if (!tested || tested->gates_c.empty()) {
      continue;
    }
    ++stations;
    for (std::size_t lead = 0; lead < pooled.size(); ++lead) {
      add(tested->events[0].leads[lead], pooled[lead]);
    }
    for (std::size_t event = 0; event < relapse.size(); ++event) {
      const RelapseScores& scores = tested->events[event].relapse;
      relapse[event].outlook += scores.cases * scores.brier;
      relapse[event].climate += scores.cases * scores.brier_climate;
    }
  }
  if (stations == 0) {
    GTEST_SKIP() << "no readings of stations here";
  }
  EXPECT_GE(stations, 20);
  for (std::size_t lead = 0; lead < pooled.size(); ++lead) {
    SCOPED_TRACE(wanted[lead].lead_days);
    ASSERT_EQ(backtest_leads[lead], wanted[lead].lead_days);
    const double skill = 1.0 - pooled[lead].outlook / pooled[lead].possible;
    const double covered = pooled[lead].covered / pooled[lead].cases;
    EXPECT_GE(skill, wanted[lead].least_skill);
    EXPECT_GE(covered, 0.77);
    EXPECT_LE(covered, 0.83);
    std::printf("%d days before: %d cases, better by %.2f %%, %.1f %% within 8 in 10\n",
                wanted[lead].lead_days,
                pooled[lead].cases,
                100.0 * skill,
                100.0 * covered);
  }
  for (const PooledRelapse& event : relapse) {
    EXPECT_LT(event.outlook, event.climate);
  }
}

} // namespace
} // namespace nightsow::climate
