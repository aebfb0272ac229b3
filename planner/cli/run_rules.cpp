#include "planner/cli/run_rules.hpp"

#include "planner/answers/asked_kinds.hpp"
#include "planner/answers/rules_gaps.hpp"
#include "planner/answers/rules_report.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/about_rules.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"
#include "species-rules/rule_schema.hpp"
#include "species-rules/write_rule.hpp"

#include <set>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

std::set<std::string> rules_in_hand(const LoadedGarden& garden) {
  std::set<std::string> rules;
  for (const AskedKind& kind : asked_kinds(garden, {})) {
    rules.insert(kind.rule.rule_name);
  }
  return rules;
}

std::string shown_as(const RulesListAnswer& answer,
                     const CommonOptions& common,
                     const TextStyle& style) {
  return common.json ? to_json(answer) : rules_list_text(answer, style);
}

std::string shown_as(const RulesGapsAnswer& answer,
                     const CommonOptions& common,
                     const TextStyle& style) {
  return common.json ? to_json(answer) : rules_gaps_text(answer, style);
}

/// Asks all rules, or the garden's about the kinds in hand.
template <class Command, class Ask>
Outcome about_rules(const Command& command,
                    const CommonOptions& common,
                    const Surroundings& around,
                    const Ask& ask) {
  const TextStyle style = style_of(common, around);
  if (!command.in_hand) {
    const RulesInGarden rules = rules_here(common);
    return outcome_of(
        shown_as(ask(*rules.catalogue, command.request), common, style), rules, common);
  }
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    auto request = command.request;
    request.in_hand = rules_in_hand(garden);
    return Outcome{shown_as(ask(*garden.catalogue, request), common, style), "", Ending::answered};
  });
}

} // namespace

Outcome run(const RulesListCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  return about_rules(command, common, around, list_rules);
}

Outcome run(const RulesShowCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const RulesInGarden rules = rules_here(common);
  const RuleShowAnswer answer = show_rule(*rules.catalogue, command.taxon);
  TextStyle style = style_of(common, around);
  style.why = command.why;
  return outcome_of(common.json ? to_json(answer) : rule_show_text(answer, style), rules, common);
}

// A file of rules is JSON already, --json or not.
Outcome run(const RulesExportCommand& command,
            const CommonOptions& common,
            const Surroundings& /*around*/) {
  const RulesInGarden rules = rules_here(common);
  species_rules::RuleFor whole = typed_rule(*rules.catalogue, command.taxon);
  // It is all that is known: a note that the grower takes out is to stay away.
  whole.rule.only_own_notes = true;
  return outcome_of(species_rules::override_text(whole), rules, common);
}

Outcome run(const RulesGapsCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  return about_rules(command, common, around, rules_gaps);
}

// A schema is JSON already, --json or not.
Outcome run(const RulesSchemaCommand& /*command*/,
            const CommonOptions& /*common*/,
            const Surroundings& /*around*/) {
  return {species_rules::rule_schema(), "", Ending::answered};
}

} // namespace nightsow::planner
