#include "planner/cli/run_backtest.hpp"

#include "planner/answers/backtest.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

namespace nightsow::planner {

Outcome run(const BacktestCommand& /*command*/,
            const CommonOptions& common,
            const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    const BacktestAnswer answer = backtest(garden);
    Outcome outcome;
    outcome.answer =
        common.json ? to_json(answer) : backtest_text(answer, style_of(common, around));
    if (common.season) {
      outcome.notes = note_line("--season makes no difference to backtest: every season is tested",
                                common.quiet);
    }
    return outcome;
  });
}

} // namespace nightsow::planner
