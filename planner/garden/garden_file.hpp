#pragma once

#include "planner/garden/garden.hpp"

#include <string_view>

namespace nightsow::planner {

/// What a garden needs that has not enough of it, and how it is given; for every refusal.
inline constexpr std::string_view needed_readings =
    "daily minima and maxima of one whole season at least, from one hottest night to the next (in "
    "doubt two years); five years or more to plan by; where there are none at all, monthly_normals";
inline constexpr std::string_view how_to_name_readings =
    "put the file into the garden's folder readings/ and name it in garden.json: "
    R"("readings": [ {"file": "readings/station.csv"} ]; )"
    R"(or write instead "monthly_normals": {"night_c": […], "day_c": […]}, twelve values each)";

/// Reads the text of garden.json (// comments allowed). Only latitude, longitude and one source of
/// readings are required. `where` names the file in messages.
/// Throws InputError, with line and column, on the first fault: bad JSON, an unknown key (with the
/// nearest known one), a wrong type or a value out of its bounds, a bench named by readings or mats
/// that is not there, an unknown time zone.
[[nodiscard]] Garden read_garden_file(std::string_view text, std::string_view where);

} // namespace nightsow::planner
