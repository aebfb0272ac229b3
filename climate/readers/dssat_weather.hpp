#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// DSSAT weather files (.WTH): a line "@DATE SRAD TMAX TMIN ..." names the columns, and values
/// stand under their names, ending where these end; empty ones are possible, so that blanks alone
/// do not part them. Dates are YYDDD or YYYYDDD with the day of the year.
/// Lines that begin with '!', '*' or '$' are no rows.

/// Two digits of a year are 1936 to 2035, as the model itself has them (from memory).
inline constexpr int last_short_year = 2035;

/// Why the file is one of these; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_dssat_weather(const Opening& opening);

/// Requires: recognised.
[[nodiscard]] Readings read_dssat_weather(const Opening& opening, std::string_view name);

} // namespace nightsow::climate
