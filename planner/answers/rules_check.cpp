#include "planner/answers/rules_check.hpp"

#include "species-rules/explain.hpp"
#include "species-rules/overrides.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

using species_rules::FamilyFile;
using species_rules::RuleText;

void count(const species_rules::Rule& rule, CheckedRuleFile& checked) {
  checked.values += static_cast<int>(explain(rule).size());
}

// What a file holds, as far as it can be read at all.
CheckedRuleFile contents_of(const RuleText& file, const species_rules::Sources& sources) {
  CheckedRuleFile checked;
  checked.file = file.name;
  try {
    const FamilyFile read = species_rules::read_family_file(
        file.text, file.name, sources, species_rules::Written::by_grower);
    checked.family = read.family;
    count(read.rule, checked);
    for (const species_rules::GenusEntry& genus : read.genera) {
      ++checked.genera;
      count(genus.rule, checked);
      for (const species_rules::SpeciesEntry& species : genus.species) {
        ++checked.species;
        count(species.rule, checked);
      }
    }
  } catch (const InputError&) {
    return checked; // told among the faults
  }
  return checked;
}

} // namespace

RulesCheckAnswer check_rule_files(const std::shared_ptr<const species_rules::Catalogue>& catalogue,
                                  std::span<const RuleText> files,
                                  const std::optional<RuleText>& sources) {
  const species_rules::Overlaid over = species_rules::overlaid(catalogue, files, sources);
  RulesCheckAnswer answer;
  for (const RuleText& file : files) {
    answer.files.push_back(contents_of(file, over.catalogue->sources()));
  }
  for (const Problem& fault : over.faults) {
    answer.faults.push_back({fault.where,
                             static_cast<int>(fault.line),
                             static_cast<int>(fault.column),
                             fault.pointer,
                             fault.found,
                             fault.expected,
                             fault.remedy});
  }
  return answer;
}

} // namespace nightsow::planner
