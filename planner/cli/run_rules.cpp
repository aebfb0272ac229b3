#include "planner/cli/run_rules.hpp"

#include "planner/answers/rules_report.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

namespace nightsow::planner {

Outcome run(const RulesListCommand& /*command*/,
            const CommonOptions& common,
            const Surroundings& around) {
  const RulesListAnswer answer = list_rules(species_rules::Catalogue::embedded());
  return {common.json ? to_json(answer) : rules_list_text(answer, style_of(common, around)),
          "",
          Ending::answered};
}

Outcome run(const RulesShowCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const RuleShowAnswer answer = show_rule(species_rules::Catalogue::embedded(), command.taxon);
  return {common.json ? to_json(answer) : rule_show_text(answer, style_of(common, around)),
          "",
          Ending::answered};
}

} // namespace nightsow::planner
