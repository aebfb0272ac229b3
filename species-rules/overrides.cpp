#include "species-rules/overrides.hpp"

#include "species-rules/check_rules.hpp"
#include "species-rules/inherit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <string>
#include <utility>

namespace nightsow::species_rules {

namespace {

using Problems = std::vector<Problem>;

/// Which file gave a taxon.
using GivenBy = std::map<std::string, std::string>;

void append(Problems& list, Problems more) {
  std::move(more.begin(), more.end(), std::back_inserter(list));
}

// What the catalogue says as well is no second synonym.
void add_synonyms(std::vector<OldName>& known, const std::vector<OldName>& own) {
  for (const OldName& old : own) {
    if (std::ranges::find(known, old.name, &OldName::name) == known.end()) {
      known.push_back(old);
    }
  }
}

void lay_over(SpeciesEntry& species, const SpeciesEntry& own) {
  species.rule = inherit(species.rule, own.rule);
  species.place = own.place;
  add_synonyms(species.synonyms, own.synonyms);
}

void lay_over(GenusEntry& genus, const GenusEntry& own) {
  genus.rule = inherit(genus.rule, own.rule);
  genus.place = own.place;
  add_synonyms(genus.synonyms, own.synonyms);
  for (const SpeciesEntry& species : own.species) {
    const auto known = std::ranges::find(genus.species, species.epithet, &SpeciesEntry::epithet);
    if (known == genus.species.end()) {
      genus.species.push_back(species);
    } else {
      lay_over(*known, species);
    }
  }
}

void lay_over(std::vector<FamilyFile>& families, const FamilyFile& own) {
  const auto family = std::ranges::find(families, own.family, &FamilyFile::family);
  if (family == families.end()) {
    families.push_back(own);
    return;
  }
  family->rule = inherit(family->rule, own.rule);
  for (const GenusEntry& genus : own.genera) {
    const auto known = std::ranges::find(family->genera, genus.genus, &GenusEntry::genus);
    if (known == family->genera.end()) {
      family->genera.push_back(genus);
    } else {
      lay_over(*known, genus);
    }
  }
}

void give(const std::string& taxon, const Place& place, GivenBy& given, Problems& faults) {
  const auto [before, fresh] = given.try_emplace(taxon, place.where);
  if (!fresh) {
    faults.push_back(fault_at(place,
                              fmt::format("{} is given twice", taxon),
                              fmt::format("each taxon once; it stands in {}", before->second),
                              "put both together"));
  }
}

// What this file gives, beside what files before it gave.
GivenBy given_with(const FamilyFile& own, GivenBy given, Problems& faults) {
  if (gives_anything(own.rule)) {
    give(own.family, own.rule_place, given, faults);
  }
  for (const GenusEntry& genus : own.genera) {
    if (gives_anything(genus.rule)) {
      give(genus.genus, genus.place, given, faults);
    }
    for (const SpeciesEntry& species : genus.species) {
      give(genus.genus + ' ' + species.epithet, species.place, given, faults);
    }
  }
  return given;
}

// A known genus stays in its family: else it would be a second one of that name.
void check_families(std::span<const FamilyFile> families, const FamilyFile& own, Problems& faults) {
  for (const GenusEntry& genus : own.genera) {
    for (const FamilyFile& family : families) {
      const bool here =
          std::ranges::find(family.genera, genus.genus, &GenusEntry::genus) != family.genera.end();
      if (here && family.family != own.family) {
        faults.push_back(
            fault_at(genus.place,
                     fmt::format("{} stands in {}", genus.genus, own.family),
                     fmt::format("its family, {}", family.family),
                     fmt::format("make it a file with \"family\": \"{}\"", family.family)));
      }
    }
  }
}

Sources joined_sources(const Sources& known, const std::optional<RuleText>& own, Overlaid& result) {
  Sources sources = known;
  if (!own) {
    return sources;
  }
  try {
    SourceFile file = read_source_file(own->text, own->name);
    append(result.faults, std::move(file.faults));
    sources.merge(file.sources);
  } catch (const InputError& error) {
    result.faults.push_back(error.problem());
  }
  return sources;
}

bool stands_at(const Problem& fault, const Place& place) {
  return fault.where == place.where && fault.line == place.line && fault.column == place.column;
}

bool stands_in(const Problem& fault, const GenusEntry& genus) {
  const auto old_here = [&](const OldName& old) { return stands_at(fault, old.place); };
  return stands_at(fault, genus.place) || std::ranges::any_of(genus.synonyms, old_here) ||
         std::ranges::any_of(genus.species, [&](const SpeciesEntry& species) {
           return stands_at(fault, species.place) ||
                  std::ranges::any_of(species.synonyms, old_here);
         });
}

// The grower's entry of the genus in which the fault shows, or else what the file says of the
// family.
const Place& cause_of(const Problem& fault,
                      const std::vector<FamilyFile>& families,
                      const FamilyFile& own) {
  for (const FamilyFile& family : families) {
    for (const GenusEntry& genus : family.genera) {
      if (!stands_in(fault, genus)) {
        continue;
      }
      const auto mine = std::ranges::find(own.genera, genus.genus, &GenusEntry::genus);
      return mine == own.genera.end() ? own.rule_place : mine->place;
    }
  }
  return own.rule_place;
}

// What is wrong with an entry of `own` is inherited by the entries under it; once is enough to say.
bool told_before(const Problems& told, const Problem& fault, const Place& cause) {
  return std::ranges::any_of(told, [&](const Problem& one) {
    return stands_at(one, cause) && one.expected == fault.expected && one.remedy.empty();
  });
}

// The families were without fault before `own` was laid over them, so whatever is wrong now came
// with it, though it may show at an entry that `own` does not give.
void tell_at_cause(Problems& faults,
                   const std::vector<FamilyFile>& families,
                   const FamilyFile& own) {
  Problems told;
  for (Problem& fault : faults) {
    const Place& cause = cause_of(fault, families, own);
    if (fault.where == cause.where) {
      told.push_back(std::move(fault));
    } else if (!told_before(told, fault, cause)) {
      std::string shows = fmt::format("it shows at that entry of {}, which is as it was: change "
                                      "yours, or give that entry a value too",
                                      fault.where);
      told.push_back(
          fault_at(cause, std::move(fault.found), std::move(fault.expected), std::move(shows)));
    }
  }
  faults = std::move(told);
}

// What shows only beside the catalogue, as far as the file could be read.
Problems crossed(const std::vector<FamilyFile>& families, const FamilyFile& own) {
  Problems faults = check_rules(*std::ranges::find(families, own.family, &FamilyFile::family));
  append(faults, check_names(families));
  tell_at_cause(faults, families, own);
  return faults;
}

/// What was laid over so far.
struct State {
  std::vector<FamilyFile> families;
  GivenBy given;
};

// The faults for which a file is left aside; without any, `state` holds it.
Problems lay_over(const RuleText& file, const Sources& sources, State& state) {
  FamilyFile own;
  try {
    own = read_family_file(file.text, file.name, sources, Written::by_grower);
  } catch (const InputError& error) {
    return {error.problem()};
  }
  Problems faults = own.faults;
  GivenBy given = given_with(own, state.given, faults);
  Problems elsewhere;
  check_families(state.families, own, elsewhere);
  const bool has_its_place = elsewhere.empty() && !own.family.empty();
  append(faults, std::move(elsewhere));
  if (!has_its_place) {
    return faults;
  }
  std::vector<FamilyFile> families = state.families;
  lay_over(families, own);
  append(faults, crossed(families, own));
  if (faults.empty()) {
    state = {std::move(families), std::move(given)};
  }
  return faults;
}

} // namespace

Overlaid overlaid(std::shared_ptr<const Catalogue> catalogue,
                  std::span<const RuleText> files,
                  const std::optional<RuleText>& sources) {
  Overlaid result;
  const Sources all_sources = joined_sources(catalogue->sources(), sources, result);
  State state{{catalogue->families().begin(), catalogue->families().end()}, {}};
  for (const RuleText& file : files) {
    Problems faults = lay_over(file, all_sources, state);
    if (!faults.empty()) {
      result.refused.push_back(file);
      append(result.faults, std::move(faults));
    }
  }
  Catalogue over = Catalogue::of(std::move(state.families), all_sources);
  over.stand_over(std::move(catalogue));
  result.catalogue = std::make_shared<const Catalogue>(std::move(over));
  return result;
}

} // namespace nightsow::species_rules
