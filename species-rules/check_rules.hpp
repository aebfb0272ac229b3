#pragma once

#include "species-rules/rule_file.hpp"

#include <span>
#include <vector>

namespace nightsow::species_rules {

// What can be seen only when values or names stand beside each other. Faults come with line and
// column, in the order of the files.

/// A field that every family must give and this one does not; in a genus or species, after it
/// inherited: a cool starter without night limit, a hot one without warm night or with one in which
/// it makes no progress, a day limit under the optimum or the night limit, more nights wanted than
/// counted, temperatures, looks, frost and shade that are not in their order, covers that do not
/// fit the seed, no after-ripening that is perhaps some. What could not be read is passed over.
[[nodiscard]] std::vector<Problem> check_rules(const FamilyFile& file);

/// Names that would lead nowhere or to two places: a family, genus or species that stands twice, a
/// synonym that has an entry of its own or belongs to two, an accepted genus without entry or that
/// is itself not accepted.
[[nodiscard]] std::vector<Problem> check_names(std::span<const FamilyFile> files);

} // namespace nightsow::species_rules
