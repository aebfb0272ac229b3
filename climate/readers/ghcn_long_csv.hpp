#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// GHCN-Daily as long CSV, one element and day a row: ID,YYYYMMDD,ELEMENT,VALUE,M,Q,S,TIME, values
/// in tenths of °C. The header line may be there or not, and so may the station; columns behind the
/// value may be missing.

/// Why the file is one of these; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_ghcn_long_csv(const Opening& opening);

/// Requires: recognised. Throws InputError when stations are mixed.
[[nodiscard]] Readings read_ghcn_long_csv(const Opening& opening, std::string_view name);

} // namespace nightsow::climate
