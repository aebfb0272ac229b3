#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/readings.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// GHCN-Daily as NOAA NCEI gives it, one element and month a line, in two layouts: the .dly files
/// of fixed width (lines may be cut short of their trailing blanks), and the same as quoted CSV
/// with a header id,year,month,element,VALUE1,MFLAG1,QFLAG1,SFLAG1,...

/// Why the file is one of these; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_ghcn_dly(const Opening& opening);
[[nodiscard]] std::vector<std::string> recognise_ghcn_month_csv(const Opening& opening);

/// Require: recognised. Throw InputError when stations are mixed.
[[nodiscard]] Readings read_ghcn_dly(const Opening& opening, std::string_view name);
[[nodiscard]] Readings read_ghcn_month_csv(const Opening& opening, std::string_view name);

} // namespace nightsow::climate
