#pragma once

#include "climate/base/csv.hpp"
#include "climate/readers/line_reader.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// The separator that stands for a run of blanks and tabs of any length.
inline constexpr char runs_of_blanks = ' ';

/// The fields of one line, untrimmed views into it, parted by runs of blanks and tabs.
[[nodiscard]] std::vector<std::string_view> split_at_blanks(std::string_view line);

/// Walks the rows of a table from one of its lines on, whatever parts the fields. Quotes are
/// understood where the separator is a comma, a semicolon or a tab.
class RowReader {
public:
  /// Begins with line `first_line`, counted from 1; it must be one of the opening's lines, or 1.
  /// The opening's text must outlive the reader.
  RowReader(const Opening& opening, std::size_t first_line, char separator, std::string_view where);

  /// Moves to the next row that is not blank; false at the end.
  [[nodiscard]] bool next();

  [[nodiscard]] std::span<const std::string_view> fields() const { return fields_; }

  /// The true line of the file.
  [[nodiscard]] std::size_t line() const;

  /// The column, from 1, in bytes, at which field `index` of the present row begins.
  [[nodiscard]] std::size_t column(std::size_t index) const;

private:
  bool blanks_;
  std::size_t lines_before_;
  CsvReader csv_;
  LineReader lines_;
  std::vector<std::string_view> split_;
  std::span<const std::string_view> fields_;
};

} // namespace nightsow::climate
