#include "planner/cli/run_seed_outlook.hpp"

#include "planner/answers/seed_outlook.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/about_rules.hpp"
#include "planner/garden/time_zone.hpp"
#include "planner/render/seed_outlook.hpp"

namespace nightsow::planner {

Outcome run(const SeedOutlookCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const Date today = common.today ? *common.today : civil_date(around.now, "");
  const RulesInGarden rules = rules_here(common);
  const SeedOutlookAnswer answer = seed_outlook(*rules.catalogue, command.request, today);
  TextStyle style = style_of(common, around);
  style.why = command.why;
  return outcome_of(
      common.json ? to_json(answer) : seed_outlook_text(answer, style), rules, common);
}

} // namespace nightsow::planner
