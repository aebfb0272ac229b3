#pragma once

#include "climate/daily_series.hpp"
#include "climate/finding.hpp"
#include "climate/merge_readings.hpp"

#include <vector>

namespace nightsow::climate {

struct ScreenedReadings {
  DailySeries series;            ///< with the ignored values missing
  std::vector<Finding> findings; ///< those of merging first, by date within a kind
};

/// Basic screening: values outside the world's measured extremes, and dates whose night lies above
/// their day (neither of the two is used, since nobody can tell which is wrong).
[[nodiscard]] ScreenedReadings screen(MergedReadings merged);

} // namespace nightsow::climate
