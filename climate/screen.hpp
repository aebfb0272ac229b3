#pragma once

#include "climate/daily_series.hpp"
#include "climate/finding.hpp"
#include "climate/merge_readings.hpp"

#include <vector>

namespace nightsow::climate {

struct ScreenedReadings {
  DailySeries series;            ///< with the ignored values missing
  std::vector<Finding> findings; ///< those of merging first, by date within a kind and element
};

/// Looks for readings that cannot be, or hardly, with the checks of screen_checks.hpp and in this
/// order, each on what the ones before left: outside the world's measured extremes; naught;
/// streaks; gaps; outliers; spikes; ranges over 40 K; and last, dates whose night lies above their
/// day (then neither is used, since nobody can tell which is wrong). Everything found is ignored,
/// save streaks of fewer than `stuck_streak` values: those are used, and said. Judges by the whole
/// series it is given: cut at today first, never after.
[[nodiscard]] ScreenedReadings screen(MergedReadings merged);

} // namespace nightsow::climate
