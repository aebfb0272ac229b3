#pragma once

#include <string_view>

namespace nightsow::planner {

/// Throws InputError on what a spreadsheet saves when it is not asked for CSV: its own file,
/// UTF-16, anything that is no text.
void refuse_other_files(std::string_view text, std::string_view where);

/// The same of a file in which not one record stands.
[[noreturn]] void refuse_empty_sheet(std::string_view where);

/// The separator that stands most often in the first line that is not blank, quoted parts left out:
/// comma, semicolon or tab.
[[nodiscard]] char find_separator(std::string_view text);

} // namespace nightsow::planner
