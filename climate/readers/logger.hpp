#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/reading_choices.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// Readings within the day, as loggers and station networks export them: separated fields under a
/// header, behind a preamble of any kind; a stamp in one field, date and time in two, or year,
/// month, day and hour in four; any form that read_stamp knows, or seconds since 1970. The
/// temperature in °C or °F by its name, by a column of units, or by its values. A decimal comma
/// that splits a field in two is joined again; rows without a temperature are events; what follows
/// the last reading is a footer.

/// Why the file is such a record; empty when it is not. `choices.column` may name the channel.
[[nodiscard]] std::vector<std::string> recognise_logger(const Opening& opening,
                                                        const ReadingChoices& choices);

/// Requires: recognised.
/// Throws InputError when the channel, the order of day and month, or the time zone is left open,
/// with the question; and as add_nights_and_days does.
[[nodiscard]] Readings read_logger(const Opening& opening,
                                   std::string_view name,
                                   const ReadingChoices& choices);

} // namespace nightsow::climate
