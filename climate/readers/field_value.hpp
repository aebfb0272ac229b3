#pragma once

#include <optional>
#include <string_view>

namespace nightsow::climate {

/// A decimal number: optional sign, digits with at most one point or comma among them, optional
/// exponent. Blanks around it are passed over. Empty when the field holds anything else.
[[nodiscard]] std::optional<double> read_decimal(std::string_view field);

/// A whole number: optional minus, digits. Blanks around it are passed over.
[[nodiscard]] std::optional<int> read_whole(std::string_view field);

/// Whether the field says in words that there is no value: nothing, "-", NA, N/A, NaN, null, none,
/// in upper or lower case. Codes such as -9999 are numbers; see is_missing_code.
[[nodiscard]] bool is_missing_word(std::string_view field);

/// A temperature as it stands in the file, in the file's unit, missing codes included; NaN for a
/// missing word. Empty when the field is neither.
[[nodiscard]] std::optional<float> read_temperature(std::string_view field);

} // namespace nightsow::climate
