#pragma once

#include "planner/answers/whatif_answer.hpp"

#include <string>

namespace nightsow::planner {

// The answers of what-if as tables for a spreadsheet: RFC 4180 with \n, a header, dates ISO 8601,
// an empty field where there is no value.

/// One row a packet, in the order of the answer.
[[nodiscard]] std::string whatif_csv(const WhatIfAnswer& answer);

/// One row for each value and packet.
[[nodiscard]] std::string sweep_csv(const SweepAnswer& answer);

} // namespace nightsow::planner
