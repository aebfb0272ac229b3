#pragma once

#include "climate/readers/line_reader.hpp"

#include <string_view>

namespace nightsow::climate {

/// Known formats that are not read yet, and what comes with archives' readings and holds none. They
/// are told apart so that none of them is taken for something else, and the message can name them.
/// Throws InputError, with what to do, when the file is one of them.
void refuse_unread_format(const Opening& opening, std::string_view name);

/// Refuses a file of no known format: shows its first lines as they were understood and says what
/// is missing.
[[noreturn]] void refuse_unknown_format(const Opening& opening, std::string_view name);

} // namespace nightsow::climate
