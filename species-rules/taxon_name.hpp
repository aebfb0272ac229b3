#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace nightsow::species_rules {

/// The words of a plant's name that choose a rule.
struct TaxonName {
  std::string genus;   ///< "Lachenalia"
  std::string epithet; ///< "bulbifera", or empty
  std::string below;   ///< epithet of a subspecies, variety or form; chooses among old names only
  /// False when the epithet was written with a capital and may be an author or a cultivar instead.
  bool epithet_sure = true;

  bool operator==(const TaxonName&) const = default;
};

/// Takes apart a name as growers write it. Capitals, blanks, hybrid signs, "cf.", "aff.", groups in
/// brackets, authors, cultivars and numbers behind the epithet do not matter; "sp.", "hybrid",
/// "mixed", a number or a quoted name mean that there is no epithet. Empty when the text does not
/// begin with a word.
[[nodiscard]] std::optional<TaxonName> parse_taxon(std::string_view text);

/// "Lachenalia", or "Lachenalia bulbifera".
[[nodiscard]] std::string to_text(const TaxonName& name);

/// The same with the epithet below the species behind it. The rank is left out, as growers often
/// write another one: "Aloe dichotoma pillansii".
[[nodiscard]] std::string to_full_text(const TaxonName& name);

/// Exactly one word that begins with a capital: "Conophytum".
[[nodiscard]] bool is_genus(std::string_view word);

/// Exactly one word of small letters, which may be hyphenated: "uva-ursi".
[[nodiscard]] bool is_epithet(std::string_view word);

/// Exactly genus and epithet, with or without an epithet below it: "Aloe dichotoma subsp.
/// pillansii".
[[nodiscard]] bool is_species_name(std::string_view name);

} // namespace nightsow::species_rules
