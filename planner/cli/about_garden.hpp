#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/render/text_style.hpp"

#include <functional>

namespace nightsow::planner {

/// What every command about a garden does: loads it, as it was known on the day asked for, lets
/// `answer` answer, and adds what was wrong with the files. Under --strict faults come instead of
/// the answer. `problems` is how many of them are written out.
[[nodiscard]] Outcome about_garden(const CommonOptions& common,
                                   const Surroundings& around,
                                   const std::function<Outcome(const LoadedGarden&)>& answer,
                                   std::size_t problems = problems_shown);

/// The same for answers that also look at the garden as it was known on other days.
[[nodiscard]] Outcome about_garden(
    const CommonOptions& common,
    const Surroundings& around,
    const std::function<Outcome(const GardenFolder&, const LoadedGarden&)>& answer,
    std::size_t problems = problems_shown);

[[nodiscard]] TextStyle style_of(const CommonOptions& common, const Surroundings& around);

} // namespace nightsow::planner
