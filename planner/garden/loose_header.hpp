#pragma once

#include "climate/base/csv.hpp"
#include "climate/base/problem.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// What a column is called: its own name, and the names that people write instead.
struct ColumnName {
  std::string_view name;
  std::string_view also; ///< without blanks and signs, one blank between two
};

struct LooseHeader {
  /// For every cell of the header the place of its column in the list; empty: not used.
  std::vector<std::optional<std::size_t>> columns;
  std::vector<Problem> problems; ///< guesses, and columns that are not used

  [[nodiscard]] bool has(std::size_t column) const;
};

/// Finds the columns in the reader's present record. Capitals, blanks and signs do not matter. The
/// columns' own names come first, then other known names, then near misses.
[[nodiscard]] LooseHeader match_names(const CsvReader& header,
                                      std::span<const ColumnName> names,
                                      std::string_view where);

} // namespace nightsow::planner
