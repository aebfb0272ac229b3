#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/spread.hpp"

#include <string>

namespace nightsow::planner {

/// "12 Apr 2026".
[[nodiscard]] std::string date_text(Date day);

/// "12 Apr", with its year where that is not the year of `near`.
[[nodiscard]] std::string day_text(Date day, Date near);

/// "Apr"; 1 = January.
[[nodiscard]] std::string month_text(int month);

/// "12 Apr (1-26 Apr), not at all in 1 of 10 years": the date by which half of the possible seasons
/// are there, and the range that holds 8 in 10 of them; the column's heading says so. Years are
/// shown where they are not the year of `near`. A date that is certain stands alone; an end that
/// lies beyond the nights searched is left out, and so is everything when no date is known: "not
/// known".
[[nodiscard]] std::string spread_text(const Spread& spread, Date near);

/// "not at all in 1 of 10 years"; empty when it always comes.
[[nodiscard]] std::string never_text(double never);

/// "1-26 Apr", "28 Mar-14 Apr".
[[nodiscard]] std::string range_text(Date first, Date last);

} // namespace nightsow::planner
