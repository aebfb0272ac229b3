#include "planner/cli/run_plan.hpp"

#include "planner/cli/about_garden.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

namespace nightsow::planner {

Outcome run(const PlanCommand& command, const CommonOptions& common, const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    TextStyle style = style_of(common, around);
    style.why = command.why;
    style.work = command.work;
    const PlanAnswer answer = plan(garden, command.request);
    return Outcome{common.json ? to_json(answer) : plan_text(answer, style), "", Ending::answered};
  });
}

} // namespace nightsow::planner
