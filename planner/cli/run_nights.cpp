#include "planner/cli/run_nights.hpp"

#include "planner/cli/about_garden.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

// Nothing asked about is nothing open: a script must not take it for a yes.
bool all_open(const NightsAnswer& answer) {
  return !answer.genera.empty() &&
         std::all_of(answer.genera.begin(), answer.genera.end(), [](const GenusNights& genus) {
           return genus.open == Open::yes;
         });
}

} // namespace

Outcome run(const NightsCommand& command, const CommonOptions& common, const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    const NightsAnswer answer = nights(garden, command.request);
    const bool tell = command.exit_code && !all_open(answer);
    return Outcome{common.json ? to_json(answer) : nights_text(answer, style_of(common, around)),
                   "",
                   tell ? Ending::not_all_open : Ending::answered};
  });
}

Outcome run(const PastNightsCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    const PastNightsAnswer answer = past_nights(garden, command.request);
    Outcome outcome;
    outcome.answer =
        common.json ? to_json(answer) : past_nights_text(answer, style_of(common, around));
    if (common.season) {
      outcome.notes =
          note_line("--season makes no difference to --past: every season is listed", common.quiet);
    }
    return outcome;
  });
}

} // namespace nightsow::planner
