#pragma once

#include "climate/base/csv.hpp"
#include "climate/readers/readings.hpp"

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// Where the fields of a table stand whose rows may be plain.
struct PlainLayout {
  char separator = ',';
  std::size_t columns = 0; ///< as many as a plain row has
  std::size_t date = 0;
  std::optional<std::size_t> night;
  std::optional<std::size_t> day;
};

/// How far plain rows went.
struct PlainRun {
  std::size_t bytes = 0;
  std::size_t rows = 0; ///< one a line
};

/// Reads rows from the beginning of the text, which begins a line, for as long as they are plain:
/// the layout's number of fields, no quotes, the date YYYY-MM-DD and nothing behind it,
/// temperatures as figures of up to six digits and four decimals with a point, or nothing. Nearly
/// all rows of nearly all tables are; each is read several times as fast as by fields. The first
/// row that is not is left for others, and nothing of it is kept. Values are as in the file, NaN
/// where a field is empty.
[[nodiscard]] PlainRun read_plain_rows(std::string_view text,
                                       const PlainLayout& layout,
                                       std::size_t first_line,
                                       std::vector<Reading>& rows);

/// For a reader of fields: after a row of its own it lets the plain ones that follow be read here.
/// A table that has none of them is not asked for ever.
class PlainRows {
public:
  /// Without a layout no row is plain.
  explicit PlainRows(std::optional<PlainLayout> layout) : layout_(layout) {}

  /// Moves `rows` behind the plain rows, of which the first stands on `next_line` of the file.
  void read(CsvReader& rows, std::size_t next_line, Readings& readings);

private:
  std::optional<PlainLayout> layout_;
  int tries_in_vain_ = 0;
};

} // namespace nightsow::climate
