#pragma once

#include "planner/answers/reason.hpp"

#include <span>
#include <string_view>

namespace nightsow::planner {

/// The sentence of one code. In it {name} stands for a value; {name:+} shows its sign, {name:0}
/// rounds it to a whole number, {name:day} counts: "1 day", "3 days". A part in [brackets] is left
/// out when one of its values is missing or empty; every other value has to be there.
struct Wording {
  ReasonCode code{};
  std::string_view values; ///< the names that the sentence knows, space apart
  std::string_view text;
};

/// One for every code, in the order of the enumeration.
[[nodiscard]] std::span<const Wording> wordings();

} // namespace nightsow::planner
