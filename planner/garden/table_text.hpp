#pragma once

#include "climate/base/problem.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// A table as text, ready to be walked by CsvReader.
struct TableText {
  std::string text; ///< UTF-8
  char separator = ',';
};

/// Takes what spreadsheets save: comma, semicolon or tab, whichever stands most often in the first
/// line that is not blank; UTF-8, or Windows-1252, which is noted in `problems`. Throws InputError,
/// naming `where`, for a spreadsheet's own file, UTF-16 and what is no text.
[[nodiscard]] TableText table_text_of(std::string_view text,
                                      std::string_view where,
                                      std::vector<Problem>& problems);

/// Throws InputError for a table without a line in it.
[[noreturn]] void refuse_empty_table(std::string_view where);

} // namespace nightsow::planner
