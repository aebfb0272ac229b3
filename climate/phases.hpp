#pragma once

#include "climate/base/celsius.hpp"
#include "climate/base/date.hpp"
#include "climate/smooth_year.hpp"

#include <optional>

namespace nightsow::climate {

/// The turning points of the site's own year of nights, the same month and day in every season. No
/// month and no hemisphere is known here; where summer lies follows from the readings.
struct Phases {
  date::month_day hottest{};     ///< H, the hottest night
  date::month_day limb_begins{}; ///< the smooth night has fallen by a tenth of its swing
  date::month_day coldest{};
  date::month_day warming_middle{};    ///< the rising smooth night passes the mean of its extremes
  date::month_day hot_season_begins{}; ///< first day within a tenth of the swing of the hottest
  Celsius hottest_night;
  Celsius coldest_night;

  [[nodiscard]] CelsiusDelta swing() const { return hottest_night - coldest_night; }
};

/// Why a place has no phases.
enum class NoPhases { several_peaks, swing_too_small };

struct PhasesOrReason {
  std::optional<Phases> phases;
  NoPhases reason = NoPhases::several_peaks; ///< meaningful when there are no phases
  /// Of the highest point of the curve, phases or not: years have to be cut somewhere.
  date::month_day hottest{};
  CelsiusDelta swing;
};

/// Phases exist when the curve has exactly one maximum and one minimum in the year and swings by at
/// least 4 K.
[[nodiscard]] PhasesOrReason find_phases(const SmoothCurve& night, int target_year);

} // namespace nightsow::climate
