#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace nightsow {

/// Whether the text begins as the word does, upper and lower case alike (ASCII).
[[nodiscard]] bool begins_as(std::string_view text, std::string_view word);

/// Letters to insert, delete, replace or swap with their neighbour to turn one word into the other
/// (optimal string alignment); upper and lower case count as equal (ASCII).
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

struct NearestName {
  std::string name;
  std::size_t distance = 0;
  bool only = true; ///< no other name is as near
};

/// The name nearest to a mistyped word, when near enough to be worth suggesting: at most a third of
/// the word's letters, and at most three, differ. Ties: the first in the given order.
[[nodiscard]] std::optional<NearestName> nearest_name(std::string_view typed,
                                                      std::span<const std::string> names);

/// A remedy for a name that is not known: the nearest of the known ones, when one is near.
[[nodiscard]] std::string did_you_mean(std::string_view typed, std::span<const std::string> names);

} // namespace nightsow
