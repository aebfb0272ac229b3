#pragma once

#include "climate/readers/readings.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace nightsow::climate {

/// How temperatures stand in a file.
enum class TemperatureUnit { celsius, fahrenheit, tenths_of_celsius };

/// "°C", "°F", "tenths of °C".
[[nodiscard]] std::string_view unit_name(TemperatureUnit unit);

/// Whether a number is one of the codes that stand for "no value": -99, -99.9, -999, -999.9, -9999,
/// -9999.9, 9999, 9999.9, 99999, 99999.9, -99999. In tenths of °C -99 and -99.9 are temperatures.
/// Ask before any conversion: -99999 °F is no temperature of -55572 °C.
[[nodiscard]] bool is_missing_code(float value, TemperatureUnit unit);

/// NaN stays NaN, and a missing code becomes NaN.
[[nodiscard]] float to_celsius(float value, TemperatureUnit unit);

/// What the values of a whole file look like, missing codes left out.
struct ValueSpread {
  std::size_t values = 0;
  bool whole_numbers = true;
  float lowest = 0.0F;  ///< meaningful when there are values
  float highest = 0.0F; ///< meaningful when there are values
  bool too_hot_for_celsius = false;
  bool too_hot_for_fahrenheit = false;
  bool as_wide_as_tenths = false; ///< nights and days too far apart, or too cold, for degrees
};

/// `rows` hold the numbers as they stand in the file.
[[nodiscard]] ValueSpread spread_of(std::span<const Reading> rows);

/// The unit that the values themselves tell. Celsius where nothing speaks against it. Empty when
/// no unit fits.
[[nodiscard]] std::optional<TemperatureUnit> unit_by_values(const ValueSpread& spread);

/// "values from -12.5 to 38", for people.
[[nodiscard]] std::string describe(const ValueSpread& spread);

/// Turns the numbers of a file into °C, rows without any value are dropped.
void convert_rows(std::vector<Reading>& rows, TemperatureUnit night, TemperatureUnit day);

} // namespace nightsow::climate
