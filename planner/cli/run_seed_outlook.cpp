#include "planner/cli/run_seed_outlook.hpp"

#include "planner/answers/seed_outlook.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/render/seed_outlook.hpp"

#include <chrono>

namespace nightsow::planner {

Outcome run(const SeedOutlookCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const Date today = common.today.value_or(std::chrono::floor<Days>(around.now));
  const SeedOutlookAnswer answer =
      seed_outlook(species_rules::Catalogue::embedded(), command.request, today);
  return {common.json ? to_json(answer) : seed_outlook_text(answer, style_of(common, around)),
          "",
          Ending::answered};
}

} // namespace nightsow::planner
