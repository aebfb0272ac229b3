#pragma once

#include "climate/base/date.hpp"

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace nightsow::climate {

/// A date and time of day as they stand in a logger's file. The order of the three numbers may be
/// open ("03/04/17"); see find_stamp_order.
struct ClockStamp {
  int a = 0; ///< the three numbers of the date, as written
  int b = 0;
  int c = 0;
  bool year_leads = false;      ///< four digits first, or eight digits in one
  bool year_follows = false;    ///< four digits last
  bool points = false;          ///< parted by points, which nobody does with the month first
  std::chrono::seconds time{0}; ///< since midnight; 24:00 is 86400
  bool has_time = false;        ///< a time of day stood there
  std::optional<std::chrono::seconds> offset; ///< east of UTC, where the stamp itself says
};

/// Reads a date, with or without a time of day: numbers parted by '-', '/' or '.', years of two or
/// four digits, or YYYYMMDD; then, behind a blank or a T, a 24 h or 12 h clock ("9:05:00 PM",
/// "12:30 a. m."), fractions of a second dropped; then Z, UTC or an offset such as +02:00.
/// Empty when the field is anything else.
[[nodiscard]] std::optional<ClockStamp> read_stamp(std::string_view field);

/// Reads a time of day alone: a clock as above, or, with `bare`, an hour (0 to 24) or HHMM.
[[nodiscard]] std::optional<std::chrono::seconds> read_time_of_day(std::string_view field,
                                                                   bool bare);

/// Whole seconds or milliseconds since 1970 in UTC, of the years 1980 to 2100.
[[nodiscard]] std::optional<date::sys_seconds> read_unix_time(std::string_view field);

/// No clock is set further from UTC, east or west (under 16 hours in the tz database, from memory,
/// and local mean time included); what says more is no offset.
inline constexpr std::chrono::hours farthest_from_utc{18};

/// "GMT-05:00", "UTC+2", "(UTC)" anywhere in a column's name: seconds east of UTC.
[[nodiscard]] std::optional<std::chrono::seconds> offset_in(std::string_view name);

/// The name without what offset_in found.
[[nodiscard]] std::string without_offset(std::string_view name);

enum class StampOrder { year_first, day_first, month_first };

/// The clock time of a stamp under an order. Empty when that is no day of the calendar or lies out
/// of the years a file may hold. Years of two digits are 1970 to 2069.
[[nodiscard]] std::optional<date::local_seconds> clock_time(const ClockStamp& stamp,
                                                            StampOrder order);

struct StampsOrder {
  StampOrder order = StampOrder::year_first;
  std::string because; ///< empty when the stamps do not need one
};

/// A stamp and the line on which it stands.
struct PlacedStamp {
  ClockStamp stamp;
  std::size_t line = 0;
};

/// Decides for all stamps of a file together: what must be a day or a month, then under which order
/// the clock runs on without leaps of over a day, then the name of the column ("dd/mm/yy").
/// Throws InputError when no order fits them all, and, with the question, when nothing tells.
[[nodiscard]] StampsOrder find_stamp_order(std::span<const PlacedStamp> stamps,
                                           std::string_view column_name,
                                           std::string_view file);

} // namespace nightsow::climate
