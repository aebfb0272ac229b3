#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// Met Office MIDAS daily temperatures as BADC-CSV: lines of "key,G|column,value", a line "data",
/// the columns' names, rows, a line "end data".
///
/// Rows are of 24 hours or of 12, stamped at their end. A day runs from 9 to 9 and has the date of
/// its end; where no row of 24 hours gives an element, the two of 12 are joined. One of 12 alone
/// tells not the whole day: it is counted in a note and not used.

/// Why the file is one of these; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_midas(const Opening& opening);

/// Requires: recognised. Throws InputError when the columns are not named, or stations are mixed
/// and none was asked for.
[[nodiscard]] Readings read_midas(const Opening& opening, std::string_view name);

} // namespace nightsow::climate
