#pragma once

#include "planner/garden/load_garden.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "species-rules/catalogue.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

/// A kind of seed asked about, on a bench on which it stands.
struct AskedKind {
  std::string name; ///< of its rule
  std::string bench;
  species_rules::RuleFor rule;
};

/// The kinds named, each on every bench that holds a packet of it. A genus stands for those of its
/// kinds that are in hand, each by its own rule. What is named and not in hand is asked about on
/// the first bench. Nothing named: every kind in hand, in the order of the alphabet. Throws
/// UsageError on a name the catalogue does not know, with the nearest right word.
[[nodiscard]] std::vector<AskedKind> asked_kinds(const LoadedGarden& garden,
                                                 const std::vector<std::string>& names);

/// The rule of a name typed by a person. Throws UsageError when there is none; a misspelling is not
/// corrected in silence.
[[nodiscard]] species_rules::RuleFor typed_rule(const species_rules::Catalogue& catalogue,
                                                std::string_view typed);

} // namespace nightsow::planner
