#pragma once

#include "planner/model/assign.hpp"

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace nightsow::planner {

// The limits of a laying as places of so many pots, numbered, and what each choice takes of them.

/// A limit in the one place where it binds: a day's pots, a bench, or a mat on a day.
struct LimitedPlace {
  MissingPlaces::Limit limit = MissingPlaces::Limit::pots_a_day;
  int which = 0; ///< the day, or the index of bench or mat
  int day = 0;   ///< of a mat

  auto operator<=>(const LimitedPlace&) const = default;
};

struct PotsTaken {
  std::size_t place = 0; ///< index into `places`
  int pots = 0;
};

/// Only limits that there are have places.
struct LayingRoom {
  std::vector<LimitedPlace> places;
  std::vector<int> room; ///< of each place
  /// Of each sowing and each of its choices. A sowing of more pots than a day's takes the day.
  std::vector<std::vector<std::vector<PotsTaken>>> taken;
};

[[nodiscard]] LayingRoom laying_room(const std::vector<SowingToLay>& sowings,
                                     const LayingLimits& limits);

/// The index of each sowing's choice; empty: left over.
using Picks = std::vector<std::optional<std::size_t>>;

[[nodiscard]] double value_of(const std::vector<SowingToLay>& sowings, const Picks& picks);

/// The pots that stand in each place.
[[nodiscard]] std::vector<int> pots_used(const LayingRoom& room, const Picks& picks);

} // namespace nightsow::planner
