#pragma once

#include "climate/readers/readings.hpp"
#include "climate/readers/table_format.hpp"

#include <string_view>

namespace nightsow::climate {

/// Reads a file of a format that is a table of text. Missing codes are told before any conversion.
/// A value that its own source marks as not to be used becomes a finding; marks that only doubt are
/// counted in a note, and the value is used.
/// Requires: recognised (table_format.hpp).
/// Throws InputError when the file names no minima or maxima, when stations are mixed and none of
/// them was asked for, and when neither the file nor its name tells minima from maxima.
[[nodiscard]] Readings read_table(const TableFormat& format,
                                  const Opening& opening,
                                  std::string_view name);

/// Which element a file holds, by its own name, for the few formats that say it nowhere else:
/// "tmin.txt", "mintemp_daily_totals.txt".
/// Throws InputError when the name tells neither, or tells both.
[[nodiscard]] Element element_by_file_name(std::string_view name);

} // namespace nightsow::climate
