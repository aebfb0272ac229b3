#include "planner/cli/run_today.hpp"

#include "planner/answers/today.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

namespace nightsow::planner {

Outcome run(const TodayCommand& /*command*/,
            const CommonOptions& common,
            const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    const TodayAnswer answer = today(garden);
    return Outcome{common.json ? to_json(answer) : today_text(answer, style_of(common, around)),
                   "",
                   Ending::answered};
  });
}

} // namespace nightsow::planner
