#pragma once

#include "climate/base/date.hpp"
#include "planner/cli/typed_values.hpp"
#include "planner/cli/typed_words.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace nightsow::planner {

// What the commands that keep the record have in common. All throw UsageError.

/// From `least` to a million: nobody counts higher by eye, a longer number is a slip.
[[nodiscard]] int whole_number(std::string_view option, std::string_view text, int least);

/// Empty when it was not typed.
[[nodiscard]] std::string maybe_text(std::string_view option, const TypedWords::MaybeText& text);

[[nodiscard]] std::optional<Date> maybe_date(std::string_view option,
                                             const TypedWords::MaybeText& text);

/// The words as one name. `such_as` shows what is right when there are none.
[[nodiscard]] std::string name_typed(std::string_view command,
                                     const std::vector<std::string>& words,
                                     std::string_view such_as);

/// "Albuca spiralis 25", in two words or three.
[[nodiscard]] std::pair<std::string, int> name_and_number(std::string_view command,
                                                          const std::vector<std::string>& words,
                                                          int least);

/// One of the words, which stand in the order of the enumeration; its first when nothing was typed.
template <typename Kind>
Kind one_of(std::string_view option,
            const TypedWords::MaybeText& text,
            const std::vector<std::string>& words) {
  return text ? static_cast<Kind>(typed_word(option, *text, words)) : Kind{};
}

} // namespace nightsow::planner
