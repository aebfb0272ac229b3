#include "planner/cli/run_climate.hpp"

#include "planner/cli/about_garden.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

#include <limits>

namespace nightsow::planner {

Outcome run(const ClimateCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const auto report = [&](const LoadedGarden& garden) {
    const ClimateAnswer answer = climate_report(garden, command.request);
    return Outcome{common.json ? to_json(answer) : climate_text(answer, style_of(common, around)),
                   "",
                   Ending::answered};
  };
  const std::size_t all = std::numeric_limits<std::size_t>::max();
  return about_garden(common, around, report, command.request.all_findings ? all : problems_shown);
}

} // namespace nightsow::planner
