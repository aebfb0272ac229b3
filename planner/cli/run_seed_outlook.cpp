#include "planner/cli/run_seed_outlook.hpp"

#include "planner/answers/seed_outlook.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/garden/own_rules.hpp"
#include "planner/garden/time_zone.hpp"
#include "planner/render/seed_outlook.hpp"

#include <filesystem>

namespace nightsow::planner {

Outcome run(const SeedOutlookCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const Date today = common.today ? *common.today : civil_date(around.now, "");
  const RulesInGarden rules =
      rules_in_garden(common.garden.empty() ? std::filesystem::path{"."} : common.garden);
  const SeedOutlookAnswer answer = seed_outlook(*rules.catalogue, command.request, today);
  return {common.json ? to_json(answer) : seed_outlook_text(answer, style_of(common, around)),
          problem_notes(rules.problems, common.quiet),
          Ending::answered};
}

} // namespace nightsow::planner
