#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// GHCN-Daily as wide CSV, one day a row: the archive's own "access" files
/// (STATION,DATE,...,TMAX,TMAX_ATTRIBUTES, tenths of °C) and the order form's
/// (STATION,NAME,DATE,...,TMAX,TMIN, whole °F or °C with a decimal; the file does not say which, so
/// the values decide, and a note says so).

/// Why the file is one of these; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_ghcn_wide_csv(const Opening& opening);

/// Requires: recognised. Throws InputError when stations are mixed.
[[nodiscard]] Readings read_ghcn_wide_csv(const Opening& opening, std::string_view name);

/// Whether the file is wide GHCN without its header line: nobody can tell which column is which.
[[nodiscard]] bool is_ghcn_wide_without_header(const Opening& opening);

} // namespace nightsow::climate
