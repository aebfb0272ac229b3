#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// INTA (Argentina) .DAT: no header, fields of fixed width that touch each other: station 5
/// characters, year 4, month 2, day 2, maximum 5, minimum 5, °C; -99.9 where there is none. What
/// stands behind is not used.

/// Why the file is one of these; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_inta_dat(const Opening& opening);

/// Requires: recognised. Throws InputError when stations are mixed and none was asked for.
[[nodiscard]] Readings read_inta_dat(const Opening& opening, std::string_view name);

} // namespace nightsow::climate
