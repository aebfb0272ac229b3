#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// Any daily table of separated fields with a header line: comma, semicolon or tab; columns found
/// by their names, in any order, the header on any of the first hundred lines; dates in one column
/// or in three; minima, maxima or both; °C, °F or tenths of °C.
///
/// A decimal comma is read behind semicolons, tabs and inside quotes. The unit is taken from the
/// columns' names, else from the values, which is then a note among the problems.

/// Why the file is such a table; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_daily_table(const Opening& opening);

/// Requires: recognised.
/// Throws InputError when the file mixes stations, gives several rows a day for times of day,
/// leaves open whether 3/4 is in March or in April or which column is meant, or holds values of no
/// known unit.
[[nodiscard]] Readings read_daily_table(const Opening& opening, std::string_view name);

} // namespace nightsow::climate
