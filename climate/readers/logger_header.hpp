#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/temperature_unit.hpp"

#include <chrono>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// A column that may hold the temperature.
struct LoggerChannel {
  std::size_t column = 0;
  std::string name; ///< as it stands there, trimmed
  std::optional<TemperatureUnit> unit;
};

/// The header of a table of readings within the day.
struct LoggerHeader {
  std::size_t line = 0; ///< from 1
  char separator = ',';
  std::vector<std::string> names;
  // One column of stamps, perhaps with the time of day in a second one; or year, month and day.
  std::optional<std::size_t> stamp;
  std::optional<std::size_t> time; ///< time of day beside `stamp` or the three below
  std::optional<std::size_t> minute;
  std::optional<std::size_t> year;
  std::optional<std::size_t> month;
  std::optional<std::size_t> day;
  std::optional<std::size_t> unit;            ///< a column of C and F
  std::optional<std::size_t> station;         ///< one station a file
  std::optional<std::chrono::seconds> offset; ///< east of UTC, by the header or the lines above it
  std::vector<LoggerChannel> channels;

  [[nodiscard]] bool complete() const {
    return !channels.empty() && (stamp || (year && month && day && time));
  }
};

/// The first line that names times and at least one temperature that is neither a minimum nor a
/// maximum, under the separators comma, semicolon and tab. `chosen`: the name of a column that the
/// person means, which then counts as a temperature whatever it is called.
[[nodiscard]] std::optional<LoggerHeader> find_logger_header(const Opening& opening,
                                                             std::string_view chosen);

/// Whether a row names a time and a temperature, as a header does.
[[nodiscard]] bool is_header_row(std::span<const std::string_view> fields);

/// The channel to read. Two that differ in nothing but their unit are one, and °C is taken.
/// Throws InputError, with the channels listed, when there are several and none is chosen, and when
/// the chosen one is not there.
[[nodiscard]] LoggerChannel choose_channel(const LoggerHeader& header,
                                           std::string_view chosen,
                                           std::string_view file);

} // namespace nightsow::climate
