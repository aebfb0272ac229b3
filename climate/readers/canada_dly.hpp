#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// Environment Canada's old .DLY files of fixed width, one element and month a line: station 7
/// characters, year 4, month 2, element 3 (001 maximum, 002 minimum), then 31 times a value of 6
/// characters in tenths of °C and a flag of one; -99999M is missing, E is estimated and used.

/// Why the file is one of these; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_canada_dly(const Opening& opening);

/// Requires: recognised. Throws InputError when stations are mixed and none was asked for.
[[nodiscard]] Readings read_canada_dly(const Opening& opening, std::string_view name);

} // namespace nightsow::climate
