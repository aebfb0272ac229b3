#include "planner/cli/run_today.hpp"

#include "planner/answers/today.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/saved_plans.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

#include <optional>
#include <utility>

namespace nightsow::planner {

Outcome run(const TodayCommand& /*command*/,
            const CommonOptions& common,
            const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    SavedPlans saved = saved_plans(common.garden, std::nullopt, garden.today);
    PlanRequest request;
    request.saved = std::move(saved.plans);
    const TodayAnswer answer = today(garden, request);
    return Outcome{common.json ? to_json(answer) : today_text(answer, style_of(common, around)),
                   problem_notes(saved.problems, common.quiet),
                   Ending::answered};
  });
}

} // namespace nightsow::planner
