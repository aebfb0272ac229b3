#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

/// The days of first water that lose little against the best: both included.
struct WaterWindow {
  Date from{};
  Date best{};
  Date to{};
  double plants_share = 0.0; ///< on the best day
};

/// The days about the best one on which no more is lost than a twentieth of its plants or half a
/// plant, whichever is more, though never more than a fifth. `shares` of the seeds sown have one
/// entry a day from `first` on; `seeds` is empty where they are not counted. Empty when next to
/// nothing is to be expected on any day.
[[nodiscard]] std::optional<WaterWindow> water_window(Date first,
                                                      const std::vector<double>& shares,
                                                      std::optional<double> seeds);

} // namespace nightsow::planner
