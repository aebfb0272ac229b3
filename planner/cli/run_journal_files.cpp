#include "climate/base/file.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/record_ground.hpp"
#include "planner/cli/run_journal.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/journal/entry_csv.hpp"
#include "planner/journal/entry_table.hpp"
#include "planner/journal/journal.hpp"
#include "planner/journal/plan_import.hpp"
#include "planner/journal/read_records.hpp"
#include "planner/render/journal.hpp"
#include "planner/render/journal_import.hpp"

#include <fmt/format.h>

#include <span>
#include <string>

namespace nightsow::planner {

namespace {

// Every one: whoever corrects a sheet wants to do so once.
std::string all_notes(std::span<const Problem> problems, bool quiet) {
  return problem_notes(problems, quiet, problems.size());
}

std::string refusal(const PlannedImport& plan, std::string_view file, bool strict) {
  std::string notes;
  for (const Problem& fault : plan.faults) {
    notes += problem_line(fault);
  }
  return notes + fmt::format("error: {}: {} {} be taken, and nothing was imported; correct {}{}\n",
                             file,
                             plan.faulty_rows,
                             plan.faulty_rows == 1 ? "row cannot" : "rows cannot",
                             plan.faulty_rows == 1 ? "it" : "them",
                             strict ? ", or leave out --strict"
                                    : ", or add --partial to import the others");
}

[[noreturn]] void refuse_changed(const std::string& file) {
  throw UsageError({Severity::error,
                    file,
                    0,
                    0,
                    "the journal was changed by another program meanwhile, and no longer fits it",
                    "",
                    "type the command again; nothing was imported"});
}

ImportSummary summary_of(PlannedImport plan, std::string file, bool tried) {
  ImportSummary summary;
  summary.file = std::move(file);
  summary.tried = tried;
  summary.entered = std::move(plan.entries);
  for (const KnownRow& row : plan.known) {
    summary.known.push_back({row.line, row.entry, row.undone});
  }
  summary.left_out = plan.faulty_rows;
  summary.faults = std::move(plan.faults);
  return summary;
}

} // namespace

Outcome run(const JournalExportCommand& command,
            const CommonOptions& common,
            const Surroundings& /*around*/) {
  static_cast<void>(load_seed_and_records(common.garden));
  const std::vector<Entry> entries = read_entries(journal_of(common));
  if (!command.csv.empty()) {
    write_atomically(command.csv, entries_csv(entries));
  }
  if (common.json) {
    return {journal_json(entries), "", Ending::answered};
  }
  if (command.csv.empty()) {
    return {entries_csv(entries), "", Ending::answered};
  }
  return {fmt::format("{} {} written to {}.\n",
                      entries.size(),
                      entries.size() == 1 ? "entry is" : "entries are",
                      command.csv.string()),
          "",
          Ending::answered};
}

// What the journal holds is fitted to the table and the table's rows are written within one
// transaction. Where nothing is to be written, the journal is only read: it may not be there.
Outcome run(const JournalImportCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  const std::string file = command.file.string();
  const EntryTable table = read_entry_table(read_whole_file(command.file, "the command"), file);
  const auto fit = [&](const std::vector<Entry>& there) {
    return plan_import(table, file, there, folder.packets, today);
  };
  PlannedImport plan = fit(read_entries(journal_of(common)));
  if (!plan.faults.empty() && (!command.partial || common.strict)) {
    return {"",
            all_notes(table.notes, common.quiet) + refusal(plan, file, common.strict),
            Ending::refused};
  }
  if (!plan.entries.empty() && !command.dry_run) {
    Journal(journal_of(common)).take_in([&](const std::vector<Entry>& there) {
      plan = fit(there);
      if (!plan.faults.empty() && !command.partial) {
        refuse_changed(file);
      }
      return plan.entries;
    });
  }
  std::string notes = all_notes(table.notes, common.quiet) + all_notes(plan.faults, common.quiet);
  const ImportSummary summary = summary_of(std::move(plan), file, command.dry_run);
  return {common.json ? import_json(summary) : import_text(summary),
          std::move(notes),
          Ending::answered};
}

} // namespace nightsow::planner
