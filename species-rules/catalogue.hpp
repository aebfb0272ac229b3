#pragma once

#include "climate/base/nearest_name.hpp"
#include "climate/base/problem.hpp"
#include "species-rules/rule.hpp"
#include "species-rules/rule_file.hpp"
#include "species-rules/sources.hpp"

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace nightsow::species_rules {

struct GenusEntry;
struct TaxonName;

/// A rule text and the name to use in messages.
struct RuleText {
  std::string name;
  std::string text;
};

/// A taxon as the catalogue knows it, and the rule that holds for it.
struct RuleFor {
  std::string accepted;  ///< accepted name: "Monsonia vanderietiae", "Oxalis" when no species given
  std::string rule_name; ///< the entry that decides: "Monsonia", "Crassula umbella"
  std::string family;
  bool by_synonym = false; ///< the name given is an old one, or names a group within a genus
  Rule rule;
  /// What the catalogue alone says, where a grower's own rules stand over it; empty where they do
  /// not, or where the catalogue does not know the taxon.
  std::optional<Rule> otherwise;
};

/// What was made of a name. Exactly one of the three: known (`found` alone), nearly known (`found`
/// and `read_as`: the spelling was corrected, as only one name is so near), or unknown (neither).
struct Lookup {
  std::optional<RuleFor> found;
  std::string read_as;    ///< the name given, in its corrected spelling
  std::string suggestion; ///< nearest known genus when nothing was found; may be empty
};

/// The catalogue of rules, immutable once loaded. Families, genera and species each give only what
/// differs; a rule is put together from family to species, and every value keeps its origin.
class Catalogue {
public:
  /// `files` are family files, `sources` the text of sources.json.
  /// Throws InputError, with file, line and column, on the first fault: what rule_file.hpp and
  /// sources.hpp call a fault in one file, and what check_rules.hpp finds when values and names
  /// stand beside each other.
  [[nodiscard]] static Catalogue load(std::span<const RuleText> files, const RuleText& sources);

  /// The same from files that were read already, and whose own faults were looked at.
  [[nodiscard]] static Catalogue of(std::vector<FamilyFile> families, Sources sources);

  /// The catalogue built into the program.
  [[nodiscard]] static Catalogue embedded();

  /// Finds the rule for a name as a grower writes it: "Bulbine", "Bulbine annua", "Sarcocaulon
  /// vanderietiae", "lachenallia bulbifera". taxon_name.hpp says what of the text does not matter.
  /// Old names of species are tried first, then genera, then old names of genera.
  ///
  /// A genus may be misspelt by up to a third of its letters and by two at most, when one name only
  /// is that near; two wrong letters must leave the first one right, or "Cussonia", which is no
  /// entry, would be taken for Massonia. An epithet is corrected by one letter, and only towards a
  /// species that has a rule of its own: all others share the rule of the genus anyway.
  [[nodiscard]] Lookup rule_for(std::string_view taxon) const;

  /// Accepted genera, sorted; groups within a genus, such as Sceletium, are rules but no genera.
  [[nodiscard]] std::vector<std::string> genera() const;

  /// Names of all rules: genera, groups within genera, and species with rules of their own; sorted.
  [[nodiscard]] std::vector<std::string> rule_names() const;

  /// The files it was made from.
  [[nodiscard]] std::span<const FamilyFile> families() const { return families_; }

  [[nodiscard]] const Sources& sources() const { return sources_; }

  /// What rules say otherwise is looked up in `base` from now on: see overrides.hpp.
  void stand_over(std::shared_ptr<const Catalogue> base) { base_ = std::move(base); }

  /// The older names, as labels still carry them, of an accepted genus, a group within one, or a
  /// species; sorted. A group is an older name of its genus. Empty for any other name.
  [[nodiscard]] std::vector<std::string> older_names(std::string_view accepted) const;

  /// Null when the id is not listed.
  [[nodiscard]] const Source* source(std::string_view id) const;

private:
  struct Entry {
    std::string accepted_genus;
    std::string family;
    Rule rule; ///< inherited already
    /// By epithet, inherited already; empty where a species is listed for its names only.
    std::map<std::string, std::optional<Rule>, std::less<>> species;
  };

  /// Where a name leads: an entry, and the epithet within it.
  struct Target {
    std::string entry;
    std::string epithet; ///< empty: none
  };

  Catalogue() = default;

  void add(const FamilyFile& file);
  void add_species(const GenusEntry& genus, Entry& entry);
  [[nodiscard]] std::optional<Target> target_of(const TaxonName& name) const;
  [[nodiscard]] std::optional<NearestName> nearest_genus(std::string_view typed) const;
  [[nodiscard]] bool is_listed(const Target& target) const;
  [[nodiscard]] std::string misspelt_epithet(const Target& target) const;
  [[nodiscard]] RuleFor describe(const Target& target, std::string_view given) const;

  std::map<std::string, Entry, std::less<>> entries_;
  /// Old names of genera and species, and accepted names of species in groups.
  std::map<std::string, Target, std::less<>> other_names_;
  Sources sources_;
  std::vector<FamilyFile> families_;
  std::shared_ptr<const Catalogue> base_; ///< what a grower's own rules stand over; may be null
};

} // namespace nightsow::species_rules
