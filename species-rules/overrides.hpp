#pragma once

#include "species-rules/catalogue.hpp"

#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::species_rules {

/// The catalogue with a grower's own rules laid over it.
struct Overlaid {
  std::shared_ptr<const Catalogue> catalogue;
  std::vector<RuleText> refused; ///< files that were left aside, text and all
  std::vector<Problem> faults;   ///< why: all of them, each with file, line and column
};

/// Lays files over the catalogue, one after the other, each whole or not at all. They have the form
/// of the catalogue's, but give only what is known better: one field of one species is enough, and
/// no source is needed. A value of the grower replaces the catalogue's on the same level; what the
/// catalogue says of a species still goes before what the grower says of its genus. A new genus
/// goes into its family, a new family must be complete.
///
/// Left aside is a file that is no JSON, that has a fault of its own (rule_file.hpp), that stands
/// in the way of what the catalogue knows (check_rules.hpp, another family for a known genus), or
/// that gives a taxon which it, or a file before it, gave already. A fault that
/// shows at another entry (a species of the catalogue whose genus the file changes) is told at the
/// file's own entry of that genus, or where it speaks of the family. `sources` are the grower's
/// own; ids of the catalogue hold too, and go before.
[[nodiscard]] Overlaid overlaid(std::shared_ptr<const Catalogue> catalogue,
                                std::span<const RuleText> files,
                                const std::optional<RuleText>& sources);

} // namespace nightsow::species_rules
