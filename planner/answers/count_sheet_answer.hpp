#pragma once

#include "climate/base/date.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// A line of the sheet to pencil counts in.
struct SheetRow {
  std::int64_t sowing = 0; ///< its entry in the journal
  std::string packet;      ///< empty: of none
  std::string taxon;
  std::string bench; ///< where it stands now; may be empty
  Date sown{};
  int seeds = 0;
  int pots = 0;
  bool wetted = false; ///< had its first water
  bool resting = false;
  std::optional<int> last_seen;
  std::optional<Date> last_on;
};

struct CountSheetAnswer {
  Date today{};
  std::vector<SheetRow> rows; ///< in tray order
};

} // namespace nightsow::planner
