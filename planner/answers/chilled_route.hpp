#pragma once

#include "planner/answers/placed_line.hpp"

#include <optional>

namespace nightsow::planner {

/// A packet in the garden's first chilled place, with what it gives.
struct ChilledLine {
  LineInput input; ///< as on its own bench, but for the bench
  PlacedLine line;
};

/// Compares a chilled place with the packet's own bench, for cool starters whose seeds are counted,
/// where the garden has such a place and the packet does not stand there already. The comparison is
/// added to the routes of `own`; not empty where the chilled place gives much more (much_better),
/// or a saved plan chose it and the own bench is not worth moving for.
[[nodiscard]] std::optional<ChilledLine> chilled_line(const LineInput& input,
                                                      PacketProspects& known,
                                                      BenchSeasons& seasons,
                                                      const climate::Season& season,
                                                      PlacedLine& own);

} // namespace nightsow::planner
