#include "planner/cli/run_rules.hpp"

#include "planner/answers/asked_kinds.hpp"
#include "planner/answers/rules_gaps.hpp"
#include "planner/answers/rules_report.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

#include <set>
#include <string>

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

/// Asks the whole catalogue, or the garden's about the kinds in hand.
template <class Command, class Ask>
Outcome about_rules(const Command& command,
                    const CommonOptions& common,
                    const Surroundings& around,
                    const Ask& ask) {
  const TextStyle style = style_of(common, around);
  if (!command.in_hand) {
    const auto answer = ask(species_rules::Catalogue::embedded(), command.request);
    return {shown_as(answer, common, style), "", Ending::answered};
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
  const RuleShowAnswer answer = show_rule(species_rules::Catalogue::embedded(), command.taxon);
  TextStyle style = style_of(common, around);
  style.why = command.why;
  return {common.json ? to_json(answer) : rule_show_text(answer, style), "", Ending::answered};
}

Outcome run(const RulesGapsCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  return about_rules(command, common, around, rules_gaps);
}

} // namespace nightsow::planner
