#include "planner/cli/run_whatif.hpp"

#include "planner/cli/about_garden.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

namespace nightsow::planner {

Outcome run(const WhatIfCommand& command, const CommonOptions& common, const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    const WhatIfAnswer answer = whatif(garden, command.request);
    return Outcome{common.json ? to_json(answer) : whatif_text(answer, style_of(common, around)),
                   "",
                   Ending::answered};
  });
}

} // namespace nightsow::planner
