#pragma once

#include "planner/render/text_style.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

enum class Align { left, right };

struct Column {
  std::string heading;
  Align align = Align::left;
  bool wraps = false; ///< gives way first when the table is too wide, by breaking its lines
};

struct TableRow {
  std::vector<std::string> cells; ///< as many as there are columns
  std::string below{};            ///< whole lines to print under the row, as they are
  std::string above{};            ///< whole lines to print over it
};

/// Columns that UTF-8 text takes on the screen: its code points.
[[nodiscard]] std::size_t columns_of(std::string_view text);

/// The text, cut and ended with "…" where it is wider.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t columns);

/// Lines of at most that many columns, broken between words, a number never from its unit; longer
/// words are cut, behind a hyphen where there is one. At least one line. Control characters count
/// as spaces.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t columns);

/// The text as lines within `text_width`: `lead` before the first, as many spaces before the
/// others.
[[nodiscard]] std::string paragraph(std::string_view lead, std::string_view text);

/// Headings, then rows, two spaces between columns, no lines drawn, `indent` spaces in front.
/// Columns that wrap give way first, then the widest are shortened, until all fits `text_width`.
/// Empty without rows.
[[nodiscard]] std::string table_text(const std::vector<Column>& columns,
                                     const std::vector<TableRow>& rows,
                                     const TextStyle& style,
                                     std::size_t indent = 2);

/// A line on its own, bold where the terminal shows it.
[[nodiscard]] std::string heading_text(std::string_view text, const TextStyle& style);

} // namespace nightsow::planner
