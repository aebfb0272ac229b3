#pragma once

#include "climate/base/date.hpp"
#include "climate/base/problem.hpp"
#include "planner/garden/open_sowings.hpp"

#include <string_view>
#include <vector>

namespace nightsow::planner {

/// What a walk along the pots brought.
struct SheetRead {
  std::vector<SeedlingCount> counts; ///< of those looked at, in tray order
  std::vector<Problem> faults;       ///< by line; with any, nothing is to be entered
};

/// Reads numbers in tray order, one line a sowing: "7" seedlings alive, "7 2" with two dead since
/// the count before, an empty line or "-" where nobody looked. Or lines that name the sowing,
/// "12: 7", in any order. Lines that begin with '#' are passed over. Without names there must be
/// as many lines as sowings. `where` names the text in faults.
[[nodiscard]] SheetRead read_sheet(std::string_view text,
                                   std::string_view where,
                                   const std::vector<OpenSowing>& open,
                                   Date on);

} // namespace nightsow::planner
