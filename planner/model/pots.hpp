#pragma once

#include "planner/garden/garden.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace nightsow::planner {

/// Rules count their seeds for a pot so wide at the top.
inline constexpr double rule_pot_across_cm = 8.0;

/// Left free under the rim, for water.
inline constexpr double under_rim_cm = 1.0;

/// The pots of growers who own none yet: one for each depth class, all 8 cm across (common
/// practice, no source).
[[nodiscard]] std::span<const PotSize> usual_pots();

/// The garden's pot for that depth class, else the usual one; for no or an unknown word the
/// standard one.
[[nodiscard]] PotSize pot_for(const Garden& garden, std::string_view depth);

/// What fills it up to under the rim, cover included.
[[nodiscard]] double filled_litres(const PotSize& pot);

/// A cover so deep, at the top of what fills it; never more than that. In litres.
[[nodiscard]] double cover_litres(const PotSize& pot, double cover_mm);

/// Seeds in one pot of this width, where a rule says how many go into one of 8 cm: by area, at
/// least one.
[[nodiscard]] int seeds_in_pot(const PotSize& pot, int seeds_in_rule_pot);

} // namespace nightsow::planner
