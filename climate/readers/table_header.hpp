#pragma once

#include "climate/readers/column_name.hpp"
#include "climate/readers/line_reader.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// The header line of a separated table, understood.
struct TableHeader {
  std::size_t line = 0; ///< from 1
  char separator = ',';
  std::vector<std::string> names; ///< as they stand there, trimmed
  std::vector<ColumnName> columns;

  std::optional<std::size_t> date;
  std::optional<std::array<std::size_t, 3>> year_month_day; ///< used when there is no `date`
  std::optional<std::size_t> night;
  std::optional<std::size_t> day;
  std::vector<std::string> rivals; ///< names of which only one can be meant; empty is good

  [[nodiscard]] bool has_dates() const { return date || year_month_day; }

  [[nodiscard]] bool complete() const { return has_dates() && (night || day); }

  /// The first column of that meaning.
  [[nodiscard]] std::optional<std::size_t> column_of(ColumnMeaning meaning) const;
};

/// The fields of one line, trimmed. Empty when its quotes do not pair.
[[nodiscard]] std::vector<std::string> fields_of(std::string_view line, char separator);

/// The line read as a header, whatever it gives.
[[nodiscard]] TableHeader read_header(std::string_view line, std::size_t number, char separator);

/// The first line that names dates and daily minima or maxima, under the separators comma,
/// semicolon and tab. Empty when there is none.
[[nodiscard]] std::optional<TableHeader> find_header(const Opening& opening);

/// The line that comes nearest to a header: the one with most columns understood. Lines without any
/// give the first line that is not blank.
[[nodiscard]] TableHeader nearest_to_a_header(const Opening& opening);

/// "comma", "semicolon", "tab".
[[nodiscard]] std::string_view separator_name(char separator);

} // namespace nightsow::climate
