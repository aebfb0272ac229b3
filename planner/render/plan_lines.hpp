#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

// What is said of one packet of a plan, in the cells of its line and in the lines under it.

/// "Sarcocaulon multifidum (Monsonia multifida)": as written, and the accepted name where it
/// differs.
[[nodiscard]] std::string taxon_cell(const std::string& taxon, const std::string& accepted);

/// "40"; "some" when nobody has counted.
[[nodiscard]] std::string seeds_cell(const Sowing& sowing);

/// Cool nights so far: "13 °C: 3 of 10".
[[nodiscard]] std::string gate_cell(const Sowing& sowing, const TextStyle& style);

/// "12 Apr (1-26 Apr)", or "from 3 Nov" where a window opens on a known day.
[[nodiscard]] std::string first_water_cell(const Sowing& sowing, Date today);

/// Whole lines under the row: what is lost by waiting, why, and all the rest when asked for.
[[nodiscard]] std::string below_sowing(const Sowing& sowing, Date today, const TextStyle& style);

} // namespace nightsow::planner
