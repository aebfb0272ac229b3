#pragma once

#include "climate/seed_level.hpp"
#include "planner/model/bench_climate.hpp"
#include "planner/model/range_maximum.hpp"
#include "species-rules/drying.hpp"

#include <array>
#include <cstddef>
#include <memory>
#include <span>
#include <vector>

namespace nightsow::planner {

/// What the days of a course mean to wet seed and seedlings of any kind, one entry a day: what a
/// kind's own numbers are multiplied with, and sums up to and with each day.
struct FeltDays {
  std::vector<double> wet_ageing;      ///< of waiting seed: species_rules::wet_ageing
  std::vector<double> fungus;          ///< growth of damping off at the seed, 0..1
  std::vector<double> seedling_fungus; ///< the same at the seedlings
  std::vector<double> swing;           ///< how much of a swing seed feels, 0..1
  std::vector<double> coldest_hour_c;  ///< at the seed
  std::vector<double> hottest_hour_c;
  std::vector<double> heat_sums; ///< hazards of heat on wet seed
  std::vector<double> winter_growth_sums;
  std::vector<double> summer_growth_sums;
  std::vector<double> rest_sums; ///< of rest_rate
  RangeMaximum coldest_less_c;   ///< at the seedlings, less than nought: the largest is the coldest
  RangeMaximum hottest_c;        ///< at the seedlings
  /// Evaporation since the last water from open pots watered as usual, without grit and with it.
  std::array<std::shared_ptr<const RangeMaximum>, 2> since_water_mm;
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

  /// Null in a course made by hand: each seed season then works it out.
  std::shared_ptr<const FeltDays> felt;

  [[nodiscard]] int days() const { return static_cast<int>(night_c.size()); }

  [[nodiscard]] std::span<const float> hours_of(int day) const;
};

[[nodiscard]] FeltDays felt_days(const SeedCourse& course);

/// What goes from a pot with such a top a day, mm.
[[nodiscard]] std::vector<double> gone_a_day_mm(const SeedCourse& course,
                                                const species_rules::PotTop& top);

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
