#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/reading_choices.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// Archives and forecasts in the manner of Open-Meteo as CSV: a line of names and one of values for
/// each place, a blank line, then a block of days or of hours with its own header, units in the
/// names; perhaps a further block behind another blank line. Several places are told apart by
/// location_id. Daily minima and maxima are taken where they are there, else the hours.

/// Why the file is one of these; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_open_meteo_csv(const Opening& opening);

/// Requires: recognised. Throws InputError when several places are given and none is chosen by
/// `choices.station`, when no block holds temperatures, when the distance from UTC is over 18
/// hours, and for hours as add_nights_and_days does.
[[nodiscard]] Readings read_open_meteo_csv(const Opening& opening,
                                           std::string_view name,
                                           const ReadingChoices& choices);

} // namespace nightsow::climate
