#pragma once

#include "climate/night_words.hpp"
#include "species-rules/rule.hpp"

#include <optional>

namespace nightsow::planner {

/// The rule's gate in the words of nights. Empty when the seed does not wait for cool nights.
[[nodiscard]] std::optional<climate::NightLimit> night_limit(const species_rules::Rule& rule);

/// The rule's start; a rule without one waits for cool nights if it has a limit, else for nothing.
[[nodiscard]] species_rules::Start start_of(const species_rules::Rule& rule);

/// The estimate's value where it is known.
[[nodiscard]] double value_or(const std::optional<species_rules::Estimate>& estimate,
                              double otherwise);

} // namespace nightsow::planner
