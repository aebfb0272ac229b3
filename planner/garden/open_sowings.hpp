#pragma once

#include "planner/garden/records.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// So long after the last entry about it a sowing counts as looked after (judgement: a pot that
/// waits for its next cool season is looked at once a year at least).
inline constexpr int open_days = 400;

/// A sowing as it stands today.
struct OpenSowing {
  RecordedSowing sowing;
  std::string bench; ///< after its moves; may be empty
  std::optional<Watering> last_watering;
  std::optional<SeedlingCount> last_count;

  /// Its seed has had water.
  [[nodiscard]] bool wetted() const;
  /// It was left dry on purpose, and not wetted since.
  [[nodiscard]] bool resting() const;
};

/// What closed a sowing; null while it is looked after. The records must outlive it.
[[nodiscard]] const Closing* closing_of(const Records& records, EntryId sowing);

/// The last day of which something is told about a sowing, its closing left out.
[[nodiscard]] Date last_day_told(const Records& records, const RecordedSowing& sowing);

/// The sowings that are not closed and of which something was written down within the last
/// `open_days`, in tray order: by the benches in their order, others behind them, then by number.
/// Requires: records up to today.
[[nodiscard]] std::vector<OpenSowing> open_sowings(const Records& records,
                                                   const std::vector<std::string>& benches,
                                                   Date today);

} // namespace nightsow::planner
