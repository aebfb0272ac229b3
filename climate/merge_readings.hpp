#pragma once

#include "climate/daily_series.hpp"
#include "climate/finding.hpp"
#include "climate/readers/readings.hpp"

#include <cstdint>
#include <span>
#include <vector>

namespace nightsow::climate {

/// Where a value of the merged series stood: index of the file in the given order, and line.
struct ReadingPlace {
  std::uint32_t file = 0;
  std::uint32_t line = 0;
};

struct MergedReadings {
  DailySeries series;
  std::vector<std::string> files;
  std::vector<ReadingPlace> night_place; ///< one a day of the series
  std::vector<ReadingPlace> day_place;
  std::vector<Finding> findings;
};

/// Joins files into one series, element by element, by date. In one file equal duplicates count
/// once, unequal ones make the value missing; both are findings. Between files the one listed first
/// wins, and a difference over 1 K is a finding. Findings of the files come first.
/// No rows at all give an empty series.
[[nodiscard]] MergedReadings merge_readings(std::span<const Readings> files);

} // namespace nightsow::climate
