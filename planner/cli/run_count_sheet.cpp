#include "planner/answers/count_sheet.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/enter.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/record_ground.hpp"
#include "planner/cli/run_record.hpp"
#include "planner/cli/streams.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/journal/read_sheet.hpp"
#include "planner/journal/who_is_meant.hpp"
#include "planner/render/count_sheet.hpp"

#include <string>

namespace nightsow::planner {

namespace {

Outcome refused(const SheetRead& sheet) {
  std::string notes;
  for (const Problem& fault : sheet.faults) {
    notes += problem_line(fault);
  }
  return {"",
          notes + "error: nothing was entered; correct these lines and enter all again\n",
          Ending::refused};
}

} // namespace

Outcome run(const CountSheetCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  const auto open = open_sowings(folder.records, bench_names(folder.garden), today);
  const std::string typed = read_standard_input();
  if (typed.empty()) {
    const CountSheetAnswer answer = count_sheet(open, today);
    return {common.json ? to_json(answer) : count_sheet_text(answer, style_of(common, around)),
            "",
            Ending::answered};
  }
  const SheetRead sheet = read_sheet(typed, "standard input", open, day_meant(command.on, today));
  if (!sheet.faults.empty()) {
    return refused(sheet);
  }
  const std::vector<EntryValue> counts(sheet.counts.begin(), sheet.counts.end());
  return enter_all(counts, common, around, folder.records, command.dry_run);
}

} // namespace nightsow::planner
