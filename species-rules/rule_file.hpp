#pragma once

#include "climate/base/problem.hpp"
#include "species-rules/place.hpp"
#include "species-rules/rule.hpp"
#include "species-rules/sources.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::species_rules {

/// An old name, and where it is listed.
struct OldName {
  std::string name; ///< as to_full_text of taxon_name.hpp gives it
  Place place;
};

struct SpeciesEntry {
  std::string epithet;
  std::vector<OldName> synonyms; ///< whole old names, with their old genus
  Rule rule;                     ///< only what differs from the genus
  Place place;
};

struct GenusEntry {
  std::string genus;
  std::string accepted_genus; ///< the genus that holds it, when it is a group within one
  std::vector<OldName> synonyms;
  Rule rule; ///< only what differs from the family
  std::vector<SpeciesEntry> species;
  Place place;
};

/// One file of the catalogue as it was written; nothing is inherited yet.
struct FamilyFile {
  std::string family;
  Rule rule;
  std::vector<GenusEntry> genera;
  Place rule_place;            ///< of the family's rule
  std::vector<Problem> faults; ///< all of them, each with line and column, in the order of reading
};

/// Who wrote a file: the catalogue, whose families give every default and whose strong evidence
/// names its source, or a grower, who gives what is known better, and is the source.
enum class Written { for_catalogue, by_grower };

/// Reads the text of a family file. What is faulty is left out of the rules and listed in `faults`:
/// an unknown key, a wrong type, a word that is not allowed, a number out of its bounds or out of
/// its own range, a missing or unlisted source, a name that is no botanical name. Values get the
/// origin of the level on which they stand, or the grower's. Throws InputError when the text is no
/// JSON at all.
[[nodiscard]] FamilyFile read_family_file(std::string_view text,
                                          std::string_view where,
                                          const Sources& sources,
                                          Written written = Written::for_catalogue);

} // namespace nightsow::species_rules
