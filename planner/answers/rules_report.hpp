#pragma once

#include "planner/answers/rules_answer.hpp"
#include "species-rules/catalogue.hpp"

#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace nightsow::planner {

/// Which rules are asked about; what is empty asks for nothing.
struct RulesListRequest {
  std::string family{};
  std::optional<species_rules::Start> start{};
  std::optional<species_rules::Growth> growth{};
  std::optional<species_rules::Mat> mat{};
  std::optional<species_rules::SeedSize> seed_size{};
  std::optional<species_rules::FirstRestWay> first_rest{};
  /// Rules of which more than `a_few` deciding values stand on weaker ground than this.
  std::optional<species_rules::Evidence> evidence_below{};
  std::string text{}; ///< in the name of the rule or one of its older names; case does not matter
  std::optional<std::set<std::string>> in_hand{}; ///< names of rules
};

/// So many weak values every rule may have (by judgement, no source).
inline constexpr int a_few = 3;

/// Throws UsageError when no family is called so, with the nearest one.
[[nodiscard]] RulesListAnswer list_rules(const species_rules::Catalogue& catalogue,
                                         const RulesListRequest& request = {});

/// The whole rule of a taxon with the origin of each value.
/// Throws UsageError when the catalogue does not know it, with the nearest right word.
[[nodiscard]] RuleShowAnswer show_rule(const species_rules::Catalogue& catalogue,
                                       std::string_view taxon);

/// The family's name as the catalogue spells it; case does not matter, empty stays empty. Throws
/// UsageError when there is none, with the nearest one.
[[nodiscard]] std::string typed_family(const species_rules::Catalogue& catalogue,
                                       std::string_view typed);

} // namespace nightsow::planner
