#pragma once

#include <string>
#include <string_view>

namespace nightsow::climate {

/// Refuses what no reader of lines should see.
/// Throws InputError on an empty text, a packed file, a web page, UTF-16, a NUL byte and, but in
/// JSON, a line over 1 MiB, with line and column where they help.
void check_text(std::string_view text, std::string_view name);

/// A piece of a file made fit for a message: valid UTF-8 without control characters, cut to about
/// `longest` bytes.
[[nodiscard]] std::string printable(std::string_view text, std::size_t longest = 60);

} // namespace nightsow::climate
