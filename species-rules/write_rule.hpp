#pragma once

#include "species-rules/catalogue.hpp"

#include <string>

namespace nightsow::species_rules {

/// The whole rule of a taxon as a file that a grower can edit and lay over the catalogue
/// (overrides.hpp): all values of a species, or of a genus where no species is named, one a line.
/// Read back, it gives the same rule, its values now the grower's. Of a rule with `only_own_notes`
/// a note that is taken out of the file stays away; a caution comes back.
[[nodiscard]] std::string override_text(const RuleFor& rule);

} // namespace nightsow::species_rules
