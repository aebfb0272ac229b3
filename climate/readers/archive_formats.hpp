#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/readings.hpp"
#include "climate/readers/table_format.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace nightsow::climate {

/// The archives whose files are tables of text, in the order in which they are asked: those with
/// fixed marks first, those that only the shape of their rows tells last.
[[nodiscard]] std::span<const TableFormat> archive_formats();

/// Reads a file of one of these archives; empty when it is of none.
/// Throws InputError as read_table does.
[[nodiscard]] std::optional<Readings> read_archive(const Opening& opening, std::string_view name);

} // namespace nightsow::climate
