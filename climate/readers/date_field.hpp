#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <string_view>

namespace nightsow::climate {

/// Which number comes first in dates such as 3/4/2024.
enum class DayOrder { day_first, month_first };

/// Thermometers are not older, and no forecast reaches further: a year outside is a slip.
inline constexpr int earliest_year = 1650;
inline constexpr int latest_year = 2200;

struct DateField {
  Date date{};
  std::string_view time; ///< what follows the date, such as "T00:00"; empty when nothing does
};

/// Reads YYYY-MM-DD, YYYY/MM/DD, YYYY.MM.DD (month and day with one or two digits), YYYYMMDD and
/// DD.MM.YYYY; D/M/YYYY and D-M-YYYY, or month first, only with `order`. A time of day may follow
/// behind a T or a blank. Empty when the field is anything else, no day of the calendar, or out of
/// the years above.
[[nodiscard]] std::optional<DateField> read_date(std::string_view field,
                                                 std::optional<DayOrder> order);

/// A date from three fields.
[[nodiscard]] std::optional<Date> read_date(std::string_view year,
                                            std::string_view month,
                                            std::string_view day);

/// A day counted from 1 January, which is 1. Empty when the year has no such day or lies out of the
/// years above.
[[nodiscard]] std::optional<Date> date_in_year(int year, int day_of_year);

/// The first two numbers of a date such as 3/4/2024 or 3-4-2024, whose order a single field does
/// not tell. Empty for every other field.
struct LeadingNumbers {
  int first = 0;
  int second = 0;
};

[[nodiscard]] std::optional<LeadingNumbers> unordered_date(std::string_view field);

} // namespace nightsow::climate
