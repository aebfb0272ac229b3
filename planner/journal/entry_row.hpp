#pragma once

#include "climate/base/csv.hpp"
#include "planner/garden/loose_header.hpp"
#include "planner/journal/entry_columns.hpp"
#include "planner/journal/entry_table.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// The cells of one row by column, and what is wrong with them.
class EntryRow {
public:
  /// Lists in `faults` what it cannot take; `where` names the file.
  EntryRow(const CsvReader& row,
           const LooseHeader& header,
           std::string_view where,
           std::vector<Problem>& faults);

  [[nodiscard]] bool blank() const;

  [[nodiscard]] std::size_t line() const { return line_; }

  /// In its line, in bytes from 1; 0: the table has no such column.
  [[nodiscard]] std::size_t place(EntryColumn column) const;

  /// Without blanks at both ends.
  [[nodiscard]] std::string_view cell(EntryColumn column) const;

  // What stands in a cell; a value of no meaning when it is listed as a fault. With `otherwise` the
  // cell may be empty.

  [[nodiscard]] int number(EntryColumn column,
                           int least,
                           std::optional<int> otherwise = std::nullopt) const;
  [[nodiscard]] Date day(EntryColumn column) const;
  [[nodiscard]] std::optional<Date> maybe_day(EntryColumn column) const;
  /// As written, also blanks and line breaks; no other control characters.
  [[nodiscard]] std::string text(EntryColumn column) const;
  [[nodiscard]] std::string needed_text(EntryColumn column) const;
  /// The place of the word in the list; hyphens and blanks count as '_', capitals as small.
  [[nodiscard]] std::size_t word(EntryColumn column,
                                 std::span<const std::string_view> allowed,
                                 std::optional<std::size_t> otherwise = std::nullopt) const;

  /// Of this row and those before.
  [[nodiscard]] std::size_t fault_count() const { return faults_.size(); }

  void refuse(EntryColumn column, std::string expected) const;
  void refuse(EntryColumn column, std::string found, std::string expected) const;

private:
  std::string_view where_;
  std::vector<Problem>& faults_;
  std::size_t line_ = 0;
  std::array<std::string_view, entry_column_count> cells_{};
  std::array<std::size_t, entry_column_count> places_{};
};

} // namespace nightsow::planner
