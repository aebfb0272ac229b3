#pragma once

#include "planner/garden/packet.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace nightsow::planner {

// The forms that cells of packets.csv take. Blanks at both ends do not matter. Every parser is
// empty (or says nothing) when the text is of no such form; the caller knows the place and
// complains.

/// "40", "~40", "ca. 40", "30-60", "0.2g", "0,2 g", "150 mg"; "seeds" may follow. 0 is a number.
[[nodiscard]] std::optional<SeedCount> parse_seed_count(std::string_view cell);

/// "4.5" or "4,5": a comma is a decimal comma, there is no thousands separator here.
[[nodiscard]] std::optional<double> parse_decimal(std::string_view text);

/// "22C", "5 °C", "-18 C", "72F", in °C. A unit is required; -80 °C to 60 °C.
[[nodiscard]] std::optional<double> parse_temperature(std::string_view cell);

/// "14/20", "14/20 2026-01-10", "14/20 2026-01-10 15C", "14/20 15 C".
[[nodiscard]] std::optional<GerminationTest> parse_germination_test(std::string_view cell);

/// yes, y, true, 1, x; no, n, false, 0.
[[nodiscard]] std::optional<bool> parse_yes_or_no(std::string_view cell);

/// A whole number from 1 on.
[[nodiscard]] std::optional<int> parse_positive(std::string_view cell);

} // namespace nightsow::planner
