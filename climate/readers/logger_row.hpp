#pragma once

#include "climate/readers/clock_stamp.hpp"
#include "climate/readers/line_reader.hpp"
#include "climate/readers/logger_header.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace nightsow::climate {

using Fields = std::span<const std::string_view>;

/// How the rows of one logger's file are read.
struct LoggerLayout {
  LoggerHeader header;
  LoggerChannel channel;
  bool split_decimals = false; ///< "20,765" became two fields
};

/// One row as it was understood.
struct LoggerRow {
  std::optional<ClockStamp> stamp;
  std::optional<date::sys_seconds> instant; ///< of seconds since 1970
  std::optional<float> value;               ///< NaN: none there; empty: unreadable
  std::optional<TemperatureUnit> unit;      ///< of a column of units
  std::size_t line = 0;
};

[[nodiscard]] LoggerRow understand_row(const LoggerLayout& layout, Fields fields, std::size_t line);

/// Empty where the row is too short.
[[nodiscard]] std::string_view field_at(Fields fields, std::optional<std::size_t> column);

/// Whether a column of minutes, where there is one, holds 0 to 59 or nothing (the full hour).
/// Otherwise the row has no stamp.
[[nodiscard]] bool minute_is_sound(const LoggerHeader& header, Fields fields);

/// Whether the opening's rows show one date at several times of day, or seconds since 1970. (Daily
/// tables may hold the time at which somebody looked.)
[[nodiscard]] bool shows_times_of_day(const Opening& opening, const LoggerHeader& header);

/// Whether a decimal comma parts the temperatures of nearly all rows in two. (A few rows with more
/// fields than names have an alarm column instead.)
[[nodiscard]] bool has_split_decimals(const Opening& opening,
                                      const LoggerHeader& header,
                                      const LoggerChannel& channel);

} // namespace nightsow::climate
