#pragma once

#include "climate/base/problem.hpp"
#include "species-rules/catalogue.hpp"

#include <filesystem>
#include <memory>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// The folder of a garden that holds the grower's own rules.
inline constexpr std::string_view own_rules_folder = "rules";

/// The rules that hold in a garden.
struct RulesInGarden {
  std::shared_ptr<const species_rules::Catalogue> catalogue;
  /// A warning for each fault, the first five of a file, and one that says that the file was left
  /// aside; one for each entry that cannot be read.
  std::vector<Problem> problems;
};

/// The catalogue with what the folder's rules/ holds laid over it: every *.json file in the order
/// of names, sources.json for their sources. No such folder: the catalogue alone. A file that
/// cannot be used is left aside, see overrides.hpp; so is an entry that cannot be read as a file (a
/// folder, a link that leads nowhere). Throws nothing for what stands in rules/.
[[nodiscard]] RulesInGarden rules_in_garden(const std::filesystem::path& folder);

/// Writes files of rules into the folder, each all or nothing; `name` is its place there
/// ("rules/learned-albuca.json"), and what stands there is replaced. Throws InputError, and writes
/// none, when one would be left aside beside the other files; StorageError when one cannot be
/// written.
void write_own_rules(const std::filesystem::path& folder,
                     const std::vector<species_rules::RuleText>& files);

} // namespace nightsow::planner
