#pragma once

#include "planner/journal/entry.hpp"

#include <string>

namespace nightsow::planner {

/// What an entry says, in a few words without its day: "25 seeds of Albuca spiralis, packet a1".
[[nodiscard]] std::string entry_words(const EntryValue& value);

/// The word of the journal, read by people: "damping_off" as "damping off".
[[nodiscard]] std::string spoken(std::string_view word);

/// ": thrown out", behind what is closed; empty where nothing is told.
[[nodiscard]] std::string closed_because(ClosingReason why);

} // namespace nightsow::planner
