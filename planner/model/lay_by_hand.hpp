#pragma once

#include "planner/model/laying_room.hpp"

namespace nightsow::planner {

// Laying without a solver: what stands in where it finds nothing, and what it has to beat.

/// What is worth most first, each on its best day with room; then bettered, see `bettered`.
[[nodiscard]] Picks lay_by_hand(const std::vector<SowingToLay>& sowings, const LayingRoom& room);

/// The picks with what is left over put where there is room, then bettered step by step while that
/// gives more: one sowing on a better day with room, or one that makes way for another.
/// Requires: the picks keep within the room. The result does, too.
[[nodiscard]] Picks bettered(const std::vector<SowingToLay>& sowings,
                             const LayingRoom& room,
                             Picks picks);

/// What would have to give so that nothing is left over: so many pots more let all be laid. The
/// fewest that are found by laying what is left over where least is missing and moving others out
/// of its way; a mat's places count once, however many days they are wanted.
[[nodiscard]] std::vector<MissingPlaces> missing_places(const std::vector<SowingToLay>& sowings,
                                                        const LayingRoom& room,
                                                        const Picks& picks);

} // namespace nightsow::planner
