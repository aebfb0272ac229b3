#include "species-rules/catalogue.hpp"

#include "climate/base/nearest_name.hpp"
#include "species-rules/check_rules.hpp"
#include "species-rules/embedded_catalogue.hpp"
#include "species-rules/inherit.hpp"
#include "species-rules/taxon_name.hpp"

#include <algorithm>
#include <utility>

namespace nightsow::species_rules {

namespace {

constexpr std::string_view sources_name = "sources.json";

void throw_first(const std::vector<Problem>& faults) {
  if (!faults.empty()) {
    throw InputError{faults.front()};
  }
}

std::string joined(const std::string& genus, const std::string& epithet) {
  return epithet.empty() ? genus : genus + ' ' + epithet;
}

// Two wrong letters are taken for a slip only when the first is right: few mistype how a name
// begins, and another genus is often as near.
bool near_enough(const NearestName& nearest, std::string_view typed) {
  return nearest.only && (nearest.distance <= 1 ||
                          (nearest.distance == 2 && nearest.name.front() == typed.front()));
}

} // namespace

Catalogue Catalogue::load(std::span<const RuleText> files, const RuleText& sources) {
  SourceFile source_file = read_source_file(sources.text, sources.name);
  throw_first(source_file.faults);
  std::vector<FamilyFile> families;
  for (const RuleText& file : files) {
    families.push_back(read_family_file(file.text, file.name, source_file.sources));
    throw_first(families.back().faults);
  }
  return of(std::move(families), std::move(source_file.sources));
}

Catalogue Catalogue::of(std::vector<FamilyFile> families, Sources sources) {
  for (const FamilyFile& family : families) {
    throw_first(check_rules(family));
  }
  throw_first(check_names(families));
  Catalogue catalogue;
  catalogue.sources_ = std::move(sources);
  for (const FamilyFile& family : families) {
    catalogue.add(family);
  }
  catalogue.families_ = std::move(families);
  return catalogue;
}

Catalogue Catalogue::embedded() {
  std::vector<RuleText> families;
  RuleText sources;
  for (const EmbeddedFile& file : embedded_catalogue()) {
    RuleText text{std::string{file.name}, std::string{file.text}};
    if (file.name == sources_name) {
      sources = std::move(text);
    } else {
      families.push_back(std::move(text));
    }
  }
  return load(families, sources);
}

void Catalogue::add(const FamilyFile& file) {
  for (const GenusEntry& genus : file.genera) {
    Entry entry;
    entry.accepted_genus = genus.accepted_genus.empty() ? genus.genus : genus.accepted_genus;
    entry.family = file.family;
    entry.rule = inherit(file.rule, genus.rule);
    for (const OldName& old : genus.synonyms) {
      other_names_[old.name] = Target{genus.genus, {}};
    }
    add_species(genus, entry);
    entries_[genus.genus] = std::move(entry);
  }
}

void Catalogue::add_species(const GenusEntry& genus, Entry& entry) {
  for (const SpeciesEntry& species : genus.species) {
    const Target target{genus.genus, species.epithet};
    entry.species[species.epithet] = gives_anything(species.rule)
                                         ? std::optional{inherit(entry.rule, species.rule)}
                                         : std::nullopt;
    for (const OldName& old : species.synonyms) {
      other_names_[old.name] = target;
    }
    if (entry.accepted_genus != genus.genus) {
      other_names_[joined(entry.accepted_genus, species.epithet)] = target;
    }
  }
}

std::optional<Catalogue::Target> Catalogue::target_of(const TaxonName& name) const {
  for (const std::string& text : {to_full_text(name), to_text(name)}) {
    const auto old = other_names_.find(text);
    if (old != other_names_.end() && !old->second.epithet.empty()) {
      return old->second;
    }
  }
  if (entries_.contains(name.genus)) {
    return Target{name.genus, name.epithet};
  }
  // An old genus may hold a species that now has a name of its own: so once more from the top. The
  // genus found is an entry (check_names), which ends it.
  if (const auto old = other_names_.find(name.genus); old != other_names_.end()) {
    return target_of({old->second.entry, name.epithet, name.below});
  }
  return std::nullopt;
}

std::optional<NearestName> Catalogue::nearest_genus(std::string_view typed) const {
  std::vector<std::string> genera;
  for (const auto& [genus, entry] : entries_) {
    genera.push_back(genus);
  }
  for (const auto& [other, target] : other_names_) {
    if (target.epithet.empty()) {
      genera.push_back(other);
    }
  }
  return nearest_name(typed, genera);
}

bool Catalogue::is_listed(const Target& target) const {
  return target.epithet.empty() || entries_.at(target.entry).species.contains(target.epithet);
}

std::string Catalogue::misspelt_epithet(const Target& target) const {
  std::vector<std::string> near;
  for (const auto& [epithet, rule] : entries_.at(target.entry).species) {
    if (rule && edit_distance(epithet, target.epithet) == 1) {
      near.push_back(epithet);
    }
  }
  return near.size() == 1 ? near.front() : std::string{};
}

RuleFor Catalogue::describe(const Target& target, std::string_view given) const {
  const Entry& entry = entries_.at(target.entry);
  RuleFor found;
  found.accepted = joined(entry.accepted_genus, target.epithet);
  found.rule_name = target.entry;
  found.family = entry.family;
  found.by_synonym = given != found.accepted;
  found.rule = entry.rule;
  const auto species = entry.species.find(target.epithet);
  if (species != entry.species.end() && species->second) {
    found.rule_name = joined(target.entry, target.epithet);
    found.rule = *species->second;
  }
  if (base_) {
    if (const std::optional<RuleFor> alone = base_->rule_for(found.accepted).found) {
      found.otherwise = alone->rule;
    }
  }
  return found;
}

Lookup Catalogue::rule_for(std::string_view taxon) const {
  Lookup lookup;
  auto name = parse_taxon(taxon);
  if (!name) {
    return lookup;
  }
  bool corrected = false;
  auto target = target_of(*name);
  if (!target) {
    const auto nearest = nearest_genus(name->genus);
    if (!nearest || !near_enough(*nearest, name->genus)) {
      lookup.suggestion = nearest ? nearest->name : std::string{};
      return lookup;
    }
    name->genus = nearest->name;
    target = target_of(*name);
    corrected = true;
  }
  if (!is_listed(*target)) {
    const std::string epithet = misspelt_epithet(*target);
    corrected = corrected || !epithet.empty();
    // What has a capital and is no species known here is an author or a cultivar.
    if (!epithet.empty() || !name->epithet_sure) {
      name->epithet = epithet;
      target->epithet = epithet;
    }
  }
  if (corrected) {
    lookup.read_as = to_text(*name);
  }
  lookup.found = describe(*target, to_text(*name));
  return lookup;
}

std::vector<std::string> Catalogue::genera() const {
  std::vector<std::string> genera;
  for (const auto& [genus, entry] : entries_) {
    if (entry.accepted_genus == genus) {
      genera.push_back(genus);
    }
  }
  return genera;
}

std::vector<std::string> Catalogue::rule_names() const {
  std::vector<std::string> names;
  for (const auto& [genus, entry] : entries_) {
    names.push_back(genus);
    for (const auto& [epithet, rule] : entry.species) {
      if (rule) {
        names.push_back(joined(genus, epithet));
      }
    }
  }
  std::ranges::sort(names);
  return names;
}

std::vector<std::string> Catalogue::older_names(std::string_view accepted) const {
  std::vector<std::string> names;
  const auto add_if_meant = [&](const std::string& name, const Target& target) {
    const Entry& entry = entries_.at(target.entry);
    const std::string& holder = target.epithet.empty() ? target.entry : entry.accepted_genus;
    if (joined(holder, target.epithet) == accepted && name != accepted) {
      names.push_back(name);
    }
  };
  for (const auto& [name, target] : other_names_) {
    add_if_meant(name, target);
  }
  for (const auto& [genus, entry] : entries_) {
    if (entry.accepted_genus == accepted && genus != accepted) {
      names.push_back(genus);
    }
    for (const auto& [epithet, rule] : entry.species) {
      add_if_meant(joined(genus, epithet), {genus, epithet});
    }
  }
  std::ranges::sort(names);
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

const Source* Catalogue::source(std::string_view id) const {
  const auto found = sources_.find(id);
  return found == sources_.end() ? nullptr : &found->second;
}

} // namespace nightsow::species_rules
