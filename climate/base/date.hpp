#pragma once

#include <date/date.h>

#include <optional>
#include <string>
#include <string_view>

namespace nightsow {

/// A civil day at the grower's place. Date - Date gives Days; two dates cannot be added.
using Date = date::local_days;
using Days = date::days;

/// Reads exactly YYYY-MM-DD (ISO 8601, RFC 3339 full-date). Empty when the text is anything else
/// or no day of the calendar (2023-02-29).
[[nodiscard]] std::optional<Date> parse_iso_date(std::string_view text);

/// YYYY-MM-DD.
[[nodiscard]] std::string format_iso_date(Date day);

/// Empty when the three numbers are no day of the Gregorian calendar.
[[nodiscard]] std::optional<Date> make_date(int year, unsigned month, unsigned day);

[[nodiscard]] int year_of(Date day);

/// Days from one date to the other; negative when `to` is the earlier.
[[nodiscard]] constexpr int days_between(Date from, Date to) {
  return (to - from).count();
}

/// 1 = 1 January … 365 or 366.
[[nodiscard]] int day_of_year(Date day);

/// The month and day in the given year; 29 February becomes 1 March where the year has none.
[[nodiscard]] Date in_year(date::month_day day, int year);

/// The month and day of a date; 29 February is kept as 1 March, so that it exists in every year.
[[nodiscard]] date::month_day recurring_day(Date day);

/// ISO 8601 week: year and number 1..53, weeks begin on Monday, week 1 holds 4 January.
struct IsoWeek {
  int year = 0;
  int week = 0;
  auto operator<=>(const IsoWeek&) const = default;
};

[[nodiscard]] IsoWeek iso_week(Date day);

} // namespace nightsow
