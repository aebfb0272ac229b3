#include "planner/cli/about_garden.hpp"

#include "planner/garden/time_zone.hpp"

namespace nightsow::planner {

Outcome about_garden(const CommonOptions& common,
                     const Surroundings& around,
                     const std::function<Outcome(const LoadedGarden&)>& answer,
                     std::size_t problems) {
  return about_garden(
      common,
      around,
      [&](const GardenFolder& /*folder*/, const LoadedGarden& garden) { return answer(garden); },
      problems);
}

Outcome about_garden(const CommonOptions& common,
                     const Surroundings& around,
                     const std::function<Outcome(const GardenFolder&, const LoadedGarden&)>& answer,
                     std::size_t problems) {
  const GardenFolder folder = load_garden(common.garden);
  const Date today = common.today ? *common.today : civil_date(around.now, folder.garden.time_zone);
  const LoadedGarden garden = as_of(folder, today);
  if (common.strict && has_faults(garden.problems)) {
    return {"", strict_notes(garden.problems, common.quiet), Ending::refused};
  }
  Outcome outcome = answer(folder, garden);
  outcome.notes.insert(0, problem_notes(garden.problems, common.quiet, problems));
  return outcome;
}

TextStyle style_of(const CommonOptions& common, const Surroundings& around) {
  TextStyle style;
  style.fahrenheit = common.fahrenheit;
  style.colour = around.colour;
  return style;
}

} // namespace nightsow::planner
