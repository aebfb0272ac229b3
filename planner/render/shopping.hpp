#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/text_style.hpp"

#include <string>
#include <string_view>

namespace nightsow::planner {

// What to have ready: the part of a plan that tells amounts.

[[nodiscard]] std::string_view name_of(ShoppingItem::Kind kind);

/// A heading and its lines, with an empty line before; empty when nothing is needed.
[[nodiscard]] std::string shopping_text(const Shopping& shopping, const TextStyle& style);

/// "8 plants: 15 seeds (8 in 10), 20 seeds (9 in 10), 26 seeds (19 in 20)";
/// empty without a wish.
[[nodiscard]] std::string wish_text(const Sowing& sowing);

[[nodiscard]] Json shopping_json(const Shopping& shopping);

/// The share lost in mixing, and the packets that are not counted.
[[nodiscard]] Json amounts_json(const Shopping& shopping);

/// How the sowings lie on the free days: told where something is left over, and when the reader
/// asked why. Else empty.
[[nodiscard]] std::string free_days_text(const std::optional<FreeDaysAnswer>& free_days,
                                         const TextStyle& style);

[[nodiscard]] Json free_days_json(const std::optional<FreeDaysAnswer>& free_days);

/// Null without a wish.
[[nodiscard]] Json wish_json(const std::optional<Wish>& wish);

} // namespace nightsow::planner
