#include "planner/cli/run_plan.hpp"

#include "climate/base/file.hpp"
#include "planner/answers/asked_packets.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/saved_plans.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/plan_files.hpp"
#include "planner/render/to_json.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

/// Writes the file, if one is asked for; the note on it.
template <class Render>
std::string written(const std::filesystem::path& file, const PlanAnswer& answer, Render render) {
  if (file.empty()) {
    return {};
  }
  write_atomically(file, render(answer));
  return fmt::format("note: written: {}\n", file.string());
}

} // namespace

Outcome run(const PlanCommand& command, const CommonOptions& common, const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    TextStyle style = style_of(common, around);
    style.why = command.why;
    style.work = command.work;
    SavedPlans saved = saved_plans(common.garden, command.request.season, garden.today);
    if (common.strict && has_faults(saved.problems)) {
      return Outcome{"", strict_notes(saved.problems, common.quiet), Ending::refused};
    }
    PlanRequest request = command.request;
    request.saved = std::move(saved.plans);
    PlanAnswer answer = plan(garden, request);
    std::string notes = problem_notes(saved.problems, common.quiet);
    if (command.save) {
      const auto file = save_plan(common.garden, garden, answer);
      notes += fmt::format("note: written: {}\n", file.string());
    }
    keep_asked(command.packets, answer);
    notes += written(command.calendar, answer, plan_calendar);
    notes += written(command.csv, answer, plan_csv);
    notes +=
        written(command.sheet, answer, [&](const auto& plan) { return bench_sheet(plan, style); });
    notes += written(command.labels, answer, plan_labels);
    return Outcome{common.json ? to_json(answer) : plan_text(answer, style),
                   common.quiet ? problem_notes(saved.problems, true) : std::move(notes),
                   Ending::answered};
  });
}

} // namespace nightsow::planner
