#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace nightsow::planner {

/// A day, or the first and last day of the month or year that was written. Both included.
struct DateRange {
  Date first{};
  Date last{};

  [[nodiscard]] Date middle() const;
};

/// A year, a month or a day: "2025", "2025-11", "2025-11-03"; also "2025/11/3", "11/2025",
/// "Nov 2025", "3 Nov 2025", "3.11.2025" (dots: day first) and "25/11/2025". Empty for
/// "03/11/2025", of which nobody can tell which is the month, and for years of two digits.
[[nodiscard]] std::optional<DateRange> parse_date_range(std::string_view cell);

/// The shortest of "2025", "2025-11" and "2025-11-03" that says the range.
/// Requires: the range is one that parse_date_range gives.
[[nodiscard]] std::string format_date_range(const DateRange& range);

/// So many months earlier; the 31st becomes the last day of a shorter month.
[[nodiscard]] Date months_before(Date day, int months);

} // namespace nightsow::planner
