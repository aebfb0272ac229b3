#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/reading_choices.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// Readings as JSON, told apart by their keys: archives and forecasts in the manner of Open-Meteo
/// ("daily" or "hourly" arrays beside "..._units"), NASA POWER ("properties"/"parameter") and AEMET
/// (a list of days, "fecha").

/// Whether the text begins as JSON does.
[[nodiscard]] bool is_json(std::string_view text);

/// Why the file is read as JSON; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_json(const Opening& opening);

/// Requires: recognised. `choices.station` picks one of several places.
/// Throws InputError on bad JSON, on JSON of none of these kinds, when several places are given and
/// none is chosen, on arrays of unequal length, on a distance from UTC of over 18 hours, and for
/// hourly values as add_nights_and_days does.
[[nodiscard]] Readings read_json(const Opening& opening,
                                 std::string_view name,
                                 const ReadingChoices& choices);

} // namespace nightsow::climate
