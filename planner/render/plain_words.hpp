#pragma once

#include <string>
#include <string_view>

namespace nightsow::planner {

/// A word of the rules, of JSON or of a reason as growers would say it. `key` is the field that it
/// belongs to, as in rule files; it may be empty. A word that needs no other stays, "_" shown as a
/// space; text that is no such word (capitals, several words) stays as it is.
[[nodiscard]] std::string plain_word(std::string_view key, std::string_view word);

/// The text with a capital first letter (ASCII).
[[nodiscard]] std::string with_capital(std::string text);

} // namespace nightsow::planner
