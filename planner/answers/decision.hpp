#pragma once

#include "planner/answers/expectation.hpp"
#include "planner/answers/line_timing.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// What the expected plants make of a packet's timing by nights.
struct Decision {
  std::string route; ///< as in Sowing; empty: nothing to compare
  std::vector<RouteAnswer> routes;
  Keeping keeping; ///< until first water
  std::optional<Expected> expected;
  std::optional<int> keep_back;
};

/// Compares the ways to keep and sow a packet by the plants expected after the first rest, and
/// moves its timing into the window of the best: the day to act is the later of what nights allow
/// and the first day of the window. A packet that the next season serves better is `missed`, one
/// that it does not is missed no longer. A packet whose first water has no date is left as it is.
/// `known`: of this packet.
/// Requires: timing of this season, not `never`.
[[nodiscard]] Decision decide(const LineInput& input,
                              PacketProspects& known,
                              BenchSeasons& seasons,
                              const climate::Season& season,
                              LineTiming& timing);

} // namespace nightsow::planner
