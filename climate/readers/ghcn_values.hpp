#pragma once

#include "climate/daily_series.hpp"
#include "climate/readers/readings.hpp"

#include <cmath>
#include <cstdint>
#include <optional>
#include <string_view>

namespace nightsow::climate {

// What the layouts of GHCN-Daily (NOAA NCEI) share: station ids of eleven characters, elements of
// four, whole tenths of °C, -9999 for missing, and a quality flag that is blank when all is well.

enum class GhcnElement { other, night, day };

/// TMIN is the night, TMAX the day.
[[nodiscard]] GhcnElement ghcn_element(std::string_view code);

/// Two capital letters and nine more capitals, digits, '_' or '-'.
[[nodiscard]] bool is_ghcn_station(std::string_view id);

/// Four capitals or digits.
[[nodiscard]] bool is_ghcn_element(std::string_view code);

/// NaN for -9999.
[[nodiscard]] inline float celsius_of_tenths(int tenths) {
  constexpr int ghcn_missing = -9999;
  return tenths == ghcn_missing ? missing_c : static_cast<float>(tenths / 10.0);
}

/// Tenths of °C as °C; NaN for -9999, NA or nothing. Empty when the field is no whole number.
[[nodiscard]] std::optional<float> read_tenths(std::string_view field);

/// Adds a row that holds one element; nothing for NaN and other elements.
inline void add_ghcn_row(
    Readings& readings, GhcnElement element, Date date, float value, std::size_t line) {
  if (element == GhcnElement::other || std::isnan(value)) {
    return;
  }
  const bool night = element == GhcnElement::night;
  readings.rows.push_back({date,
                           night ? value : missing_c,
                           night ? missing_c : value,
                           static_cast<std::uint32_t>(line)});
}

} // namespace nightsow::climate
