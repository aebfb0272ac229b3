#pragma once

#include "planner/answers/decision.hpp"
#include "planner/answers/line_timing.hpp"

#include <optional>

namespace nightsow::planner {

/// A packet on one bench: when, and what comes of it.
struct PlacedLine {
  LineTiming timing;
  Decision decision;
  bool off_mat = false; ///< its kind gains by a mat elsewhere; here it is better off without
};

/// What a packet comes to on a bench in a season. A kind that gains by a mat is planned on it and
/// off it, each with a day of its own: the line is the one that stands, and its reasons tell the
/// plants of both. Hot starters stay on it unless they lose by it, others only where it gives much
/// more (much_better); where seeds are not counted the rule decides.
[[nodiscard]] PlacedLine placed_line(const LineInput& input,
                                     PacketProspects& known,
                                     BenchSeasons& seasons,
                                     const std::optional<climate::Season>& season);

/// The plants expected of a line; none where it is not sown this season.
[[nodiscard]] double plants_of(const PlacedLine& line);

} // namespace nightsow::planner
