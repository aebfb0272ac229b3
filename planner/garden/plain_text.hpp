#pragma once

#include <string>
#include <string_view>

namespace nightsow::planner {

/// ASCII letters only; everything else stays.
[[nodiscard]] std::string lower_case(std::string_view text);

/// "Bulbine annua" is bulbine-annua: lower case, words joined by '-', no signs but letters and
/// digits; an apostrophe joins, × is x, letters beyond ASCII stay.
[[nodiscard]] std::string slug(std::string_view text);

/// Whether the bytes are UTF-8 (RFC 3629).
[[nodiscard]] bool is_utf8(std::string_view text);

/// Latin-1 and the Windows code page that spreadsheets call by the same name.
[[nodiscard]] std::string utf8_from_windows_1252(std::string_view text);

} // namespace nightsow::planner
