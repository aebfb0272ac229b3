#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/spread.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// How a packet is sown, in the words of the rules.
struct How {
  std::optional<int> seeds_to_sow; ///< the packet, or what the plants wanted need
  std::optional<int> pots;
  std::optional<int> seeds_per_pot;
  std::optional<std::string> pot_depth;
  std::optional<std::string> cover;
  std::optional<std::string> mat;
  std::optional<std::string> humidity_cover;
  std::optional<std::string> light;
  std::optional<std::string> transplant;
  std::optional<std::string> first_rest; ///< dry, barely_moist, none (evergreen), dies (annual)
  std::optional<std::string> nick;       ///< nicking or rubbing the seed coat first
  std::optional<int> first_look_days;
  std::optional<int> main_look_days;
  std::optional<int> last_look_days;
};

/// Where the seeds sown end that do not become plants; with the plants they sum to the seeds sown.
struct LostSeeds {
  double dead = 0.0;
  double not_ripe = 0.0;
  double nights_too_warm = 0.0;
  double deferred = 0.0;
  double lost_wet = 0.0;
  double dried = 0.0;
  double heat = 0.0;
  double frost = 0.0;
  double too_late = 0.0;
  double rest = 0.0;
};

/// What to expect of the seeds sown, with first water on one day.
struct Expected {
  Date first_water{};
  NumberSpread seedlings; ///< up before the first rest; of evergreens before the season ends
  std::optional<Date> first;
  std::optional<Date> half;
  /// Alive after the first rest; evergreens at the height of the next hot season, annuals grown
  /// up to flower.
  NumberSpread plants;
  std::vector<double> plant_shares; ///< of the seeds, one of each possible season and rule
  LostSeeds losses;
  std::optional<double>
      week_costs; ///< share of the plants lost by a week's delay; empty: no plants
};

} // namespace nightsow::planner
