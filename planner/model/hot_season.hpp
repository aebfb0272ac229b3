#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/garden.hpp"
#include "planner/model/bench_climate.hpp"
#include "planner/model/first_rest.hpp"

#include <optional>

namespace nightsow::planner {

/// When a hot-season starter is sown, and how warm its nights are then.
struct HotWindow {
  Date opens{};
  Date closes{};                     ///< included; never before `opens`
  double night_c = 0.0;              ///< smooth hottest night at the bench
  std::optional<double> mat_night_c; ///< the same on the garden's mat
  bool warm_without_mat = false;     ///< nights reach the limit by themselves
  bool warm_with_mat = false;
  bool season_too_short = false; ///< not enough growth before the first rest even when sown early
  FirstRest rest;                ///< what ends the time to grow
};

struct HotNeeds {
  double warm_night_c = 0.0;
  double growth_needed_days = 0.0;
  int emergence_days = 0;
  double rest_sum = 0.0;
  GrowingSeason grows = GrowingSeason::summer;
  bool uses_mat = false; ///< the mat helps this kind
  species_rules::FirstRestWay first_rest = species_rules::FirstRestWay::dry;
};

/// The window of a season: from the first day, not before the middle of the warming limb, on which
/// smooth nights (mat counted) are warm enough - for winter growers not before the hot season
/// begins, else their seedlings meet it too young - to the end of the hot season or the last day
/// that leaves the growth needed before the first rest, whichever comes first. Nights that are
/// never warm enough: the hot season itself.
[[nodiscard]] HotWindow hot_window(const BenchClimate& climate,
                                   const climate::Season& season,
                                   const HotNeeds& needs,
                                   const std::optional<HeatMat>& mat);

/// Night on a mat: max(T, min(T + rise, thermostat)).
[[nodiscard]] double night_on_mat_c(double night_c, const HeatMat& mat);

} // namespace nightsow::planner
