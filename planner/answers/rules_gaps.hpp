#pragma once

#include "planner/answers/rules_answer.hpp"
#include "species-rules/catalogue.hpp"

#include <optional>
#include <set>
#include <string>

namespace nightsow::planner {

struct RulesGapsRequest {
  std::string family{};                           ///< empty: all
  std::optional<std::set<std::string>> in_hand{}; ///< names of rules
  bool all = false; ///< every field and value, not only the `fields_shown` and `gaps_shown` worst
};

inline constexpr std::size_t fields_shown = 6;
inline constexpr std::size_t gaps_shown = 3;

/// Where the catalogue knows least of what decides most (`gap_score` of deciding_fields.hpp). A
/// value stands once, where it was given, however many kinds go by it. Fields are ordered by their
/// mean score over the rules asked about (none where a rule has no such field), the values of a
/// field by score, then by how many rules go by them. Throws UsageError when no family is called
/// so, with the nearest one.
[[nodiscard]] RulesGapsAnswer rules_gaps(const species_rules::Catalogue& catalogue,
                                         const RulesGapsRequest& request);

} // namespace nightsow::planner
