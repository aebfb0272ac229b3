#pragma once

#include "climate/base/csv.hpp"
#include "climate/readers/date_field.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace nightsow::climate {

/// The order of day and month in a column of dates such as 3/4/2024, with the reason.
struct FoundOrder {
  std::optional<DayOrder> order; ///< empty when the dates do not need one
  std::string because;
};

/// Decides on the whole column: a number over 12 must be a day. Where no row tells, a column named
/// like "date (dd/mm/yyyy)" does. `rows` begin with the header on line `header_line`; a column that
/// does not begin with such a date is not searched.
/// Throws InputError when rows contradict each other, and, with the question, when nothing tells.
[[nodiscard]] FoundOrder find_day_order(CsvReader rows,
                                        std::size_t column,
                                        std::string_view column_name,
                                        std::size_t header_line,
                                        std::string_view file);

} // namespace nightsow::climate
