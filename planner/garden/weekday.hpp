#pragma once

#include "climate/base/date.hpp"

#include <array>
#include <string_view>

namespace nightsow::planner {

/// The days of the week as garden.json and the answers write them, Monday first.
inline constexpr std::array<std::string_view, 7> weekday_words{
    "mon", "tue", "wed", "thu", "fri", "sat", "sun"};

/// Requires: an actual day of the week.
[[nodiscard]] constexpr std::string_view weekday_word(date::weekday weekday) {
  return weekday_words.at(weekday.iso_encoding() - 1);
}

} // namespace nightsow::planner
