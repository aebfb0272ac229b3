#pragma once

#include "planner/answers/heads.hpp"
#include "planner/answers/reason.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_seasons.hpp"
#include "planner/model/readings_guard.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

[[nodiscard]] GardenHead garden_head(const Garden& garden);
[[nodiscard]] PhasesHead phases_head(const StationClimate& station, const climate::Season& season);

/// `seasons`: usable past seasons of the station.
[[nodiscard]] ReadingsHead readings_head(const LoadedGarden& garden, int seasons);

/// Usable past seasons before the given one (all, when none is given); 0 without phases.
[[nodiscard]] int usable_seasons(const StationClimate& station,
                                 const std::optional<climate::Season>& before);

/// Throws InputError, saying what is needed, when there is no usable season before the given one.
void require_past_season(const LoadedGarden& garden, const climate::Season& season, int usable);

/// Throws UsageError for a season that begins more than a year after the last reading and today, or
/// ends before the first: nobody can tell it.
void require_season_told(const LoadedGarden& garden, const climate::Season& season);

/// What must be said before any answer: stale or suspect readings, few seasons, readings that lean
/// on normals, no cooling limb, a
/// bench nobody has measured or whose logger stood in the sun, the station's height, and everything
/// that was wrong with the files.
[[nodiscard]] std::vector<Reason> warnings_of(const LoadedGarden& garden,
                                              const StationClimate& station,
                                              int seasons);

/// Requires: guard.last.
[[nodiscard]] Reason readings_stale_reason(const ReadingsGuard& guard);

/// Says how many of the doubtful readings are the bench's own logger's, where any is.
[[nodiscard]] Reason readings_suspect_reason(const ReadingsGuard& guard);

/// How the air of a bench was reached; empty where it is the station's.
[[nodiscard]] std::optional<Reason> bench_reason(const climate::BenchAir& air, const Bench& bench);

/// The season asked for, else the one whose planning year holds today. Empty without phases.
[[nodiscard]] std::optional<climate::Season> chosen_season(const StationClimate& station,
                                                           Date today,
                                                           std::optional<int> asked);

/// Why the place has no phases.
[[nodiscard]] Reason no_cooling_limb_reason(const StationClimate& station);

} // namespace nightsow::planner
