#pragma once

#include "planner/garden/garden.hpp"

#include <string_view>

namespace nightsow::planner {

/// Reads the text of garden.json (// comments allowed). Only latitude, longitude and one source of
/// readings are required. `where` names the file in messages.
/// Throws InputError, with line and column, on the first fault: bad JSON, an unknown key (with the
/// nearest known one), a wrong type or a value out of its bounds, a bench named by readings or mats
/// that is not there, an unknown time zone.
[[nodiscard]] Garden read_garden_file(std::string_view text, std::string_view where);

} // namespace nightsow::planner
