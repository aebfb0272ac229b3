#pragma once

#include "climate/seed_level.hpp"
#include "planner/model/bench_climate.hpp"

#include <cstddef>
#include <span>
#include <vector>

namespace nightsow::planner {

/// What the days of a course mean to wet seed and seedlings of any kind, one entry a day: what a
/// kind's own numbers are multiplied with.
struct FeltDays {
  std::vector<double> wet_ageing;      ///< of waiting seed: species_rules::wet_ageing
  std::vector<double> fungus;          ///< growth of damping off at the seed, 0..1
  std::vector<double> seedling_fungus; ///< the same at the seedlings
  std::vector<double> swing;           ///< how much of a swing seed feels, 0..1
  std::vector<double> coldest_hour_c;  ///< at the seed
  std::vector<double> hottest_hour_c;
};

/// One possible course of days at one bench, as wet seed and seedlings meet it. All rows have one
/// entry a day; `hour_c` has 24. A mat warms seed; seedlings are taken off it.
struct SeedCourse {
  Date first{};
  std::vector<double> night_c; ///< air at the bench, on a mat where there is one at night: nights
                               ///< are counted in it
  std::vector<float> hour_c;   ///< at the seed
  std::vector<double> mean_c;  ///< at the seed
  std::vector<double> swing_k;
  std::vector<double> heat_half_lives; ///< of wet seed, spent on the day
  std::vector<double> seedling_mean_c;
  std::vector<double> coldest_c; ///< at the seedlings
  std::vector<double> hottest_c; ///< at the seedlings: mean of the six hottest of the last 48 hours
  std::vector<double> evaporation_mm; ///< from an uncovered pot, its shade counted
  std::vector<double> winter_growth;  ///< good days, 0..1
  std::vector<double> summer_growth;
  std::vector<double> seven_day_mean_c; ///< air at the bench
  std::vector<double> rest_rate;        ///< towards the first rest of winter growers

  FeltDays felt; ///< empty in a course made by hand: each seed season then works it out

  [[nodiscard]] int days() const { return static_cast<int>(night_c.size()); }

  [[nodiscard]] std::span<const float> hours_of(int day) const;
};

[[nodiscard]] FeltDays felt_days(const SeedCourse& course);

/// `wanted` courses through consecutive seasons of a bench, taken evenly from their members (fewer
/// when there are fewer). The station's range of a day, which tells the sun, is the bench's less
/// what the bench adds; where the bench is kept at one temperature, days count as half clear.
/// Maxima that nobody has are taken as 9 K above the night (common practice, no source).
/// Requires: seasons that follow each other, each with members.
[[nodiscard]] std::vector<SeedCourse> seed_courses(const BenchClimate& climate,
                                                   std::span<const BenchSeason* const> seasons,
                                                   const climate::SeedPlace& place,
                                                   int wanted);

} // namespace nightsow::planner
