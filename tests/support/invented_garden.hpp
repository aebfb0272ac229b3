#pragma once

#include "climate/base/date.hpp"
#include "climate/merge_readings.hpp"
#include "planner/garden/garden.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/packet.hpp"
#include "tests/support/invented_series.hpp"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::support {

/// Hottest nights of the two halves of the Earth, as InventedClimate takes them. Whatever a test
/// says of a season has to hold on both.
inline constexpr int hottest_in_the_south = 36;
inline constexpr int hottest_in_the_north = 218;

/// A garden without files. Its readings run for 29 years, past today, and begin as many days before
/// a hottest night in the one half as in the other, so that both have the same weather. Of
/// `climate`, `first` and `years` are left aside.
struct InventedGarden {
  InventedClimate climate{.night_sd_k = 2.0};
  double degrees_from_equator = 34.0; ///< on which side follows from the hottest night
  /// Today, counted from the hottest night of 2026 as the cosine has it.
  int days_after_hottest = 60;
  int readings_end_before_today = 0;     ///< so many days
  std::vector<planner::Bench> benches{}; ///< none: one open bench
  std::vector<planner::HeatMat> mats{};
  std::vector<std::string> packets{}; ///< see packet_from
  std::vector<std::string> sowing_days{};
  std::vector<planner::AwayPeriod> away{};
};

/// Nights in early autumn near 18 °C, 8 in midwinter, steady; mild days.
[[nodiscard]] InventedClimate mild_coast();
/// The hottest nights near 12 °C, days near 20.
[[nodiscard]] InventedClimate cool_summers();
/// The hottest nights near 17 °C with many ups and downs, hot days.
[[nodiscard]] InventedClimate warm_summers();
/// Nights near 24 °C the whole year.
[[nodiscard]] InventedClimate tropics();

[[nodiscard]] Date hottest_night_of(const InventedGarden& garden);
[[nodiscard]] Date today_of(const InventedGarden& garden);

/// As it would have been read from a folder, days after today included.
[[nodiscard]] planner::GardenFolder folder_of(const InventedGarden& garden);
/// The same with readings from elsewhere.
[[nodiscard]] planner::GardenFolder folder_of(const InventedGarden& garden,
                                              climate::MergedReadings station,
                                              Date today);
/// As it is known today.
[[nodiscard]] planner::LoadedGarden garden_of(const InventedGarden& garden);

/// Merged readings of one file that holds the series.
[[nodiscard]] climate::MergedReadings merged(const climate::DailySeries& series);

/// A packet in short: "Bulbine annua, 40 seeds, harvested 2025-11". Parts behind the taxon, in any
/// order: "40 seeds" (or ~40, 30-60, 0.2g), "harvested 2025-11" or "harvested 400 days ago",
/// "received …" in the same two forms, "stored shelf to 2026-03-01; fridge", "on cold frame" (the
/// bench), "as b1" (the id; otherwise made of the taxon). Throws std::invalid_argument on anything
/// else.
[[nodiscard]] planner::Packet packet_from(std::string_view text, Date today);

/// The catalogue of the program, read once.
[[nodiscard]] std::shared_ptr<const species_rules::Catalogue> embedded_catalogue();

[[nodiscard]] planner::Bench open_bench();
[[nodiscard]] planner::Bench bench_with(std::string name, double night_k, double day_k);
[[nodiscard]] planner::HeatMat mat_with(double rise_k, double thermostat_c);

} // namespace nightsow::support
