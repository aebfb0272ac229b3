#include "planner/cli/typed_journal.hpp"

#include "planner/cli/typed_entry_parts.hpp"

#include <string>
#include <string_view>

namespace nightsow::planner {

SowCommand typed_sow(const TypedWords& typed) {
  const auto [what, seeds] = name_and_number("nightsow sow", typed.entry_words, 1);
  QuickSowing sowing;
  sowing.what = what;
  sowing.seeds = seeds;
  sowing.on = maybe_date("--on", typed.on);
  if (typed.pots) {
    sowing.pots = whole_number("--pots", *typed.pots, 1);
  }
  sowing.dry = typed.dry;
  sowing.anyway = typed.anyway;
  sowing.bench = maybe_text("--bench", typed.bench);
  sowing.mat = maybe_text("--mat", typed.mat);
  sowing.cover = maybe_text("--cover", typed.cover);
  sowing.mix = maybe_text("--mix", typed.mix);
  sowing.treatment = maybe_text("--treatment", typed.treatment);
  sowing.trial = maybe_text("--trial", typed.trial);
  sowing.arm = maybe_text("--arm", typed.arm);
  if (!sowing.arm.empty() && sowing.trial.empty()) {
    wrong_use("--arm", "belongs to a trial", "", "add --trial");
  }
  return {sowing};
}

CountSheetCommand typed_count_sheet(const TypedWords& typed) {
  if (!typed.entry_words.empty() || typed.dead || typed.cause || typed.phase) {
    wrong_use("--sheet",
              "takes its counts from standard input",
              "",
              "leave out the other words, or --sheet");
  }
  return {maybe_date("--on", typed.on), typed.dry_run};
}

CountCommand typed_count(const TypedWords& typed) {
  if (typed.dry_run) {
    wrong_use("--dry-run", "goes with --sheet", "", "leave it out; a count can be undone");
  }
  const auto [what, seen] = name_and_number("nightsow count", typed.entry_words, 0);
  QuickCount count;
  count.what = what;
  count.seen = seen;
  count.on = maybe_date("--on", typed.on);
  if (typed.cause && !typed.dead) {
    wrong_use("--of", "is what seedlings died of", "", "add --dead");
  }
  if (typed.dead) {
    count.dead = whole_number("--dead", *typed.dead, 1);
  }
  // In the order of the two enumerations.
  count.why = one_of<DeathCause>(
      "--of",
      typed.cause,
      {"unknown", "damping-off", "gnats", "snails", "heat", "dry", "frost", "other"});
  count.phase =
      one_of<CountPhase>("--phase", typed.phase, {"emerged", "before-rest", "back-after-rest"});
  return {count};
}

JournalListCommand typed_journal_list(const TypedWords& typed) {
  JournalListCommand command;
  command.filter.packet = maybe_text("--packet", typed.packet);
  command.filter.since = maybe_date("--since", typed.since);
  return command;
}

JournalShowCommand typed_journal_show(const TypedWords& typed) {
  return {name_typed("nightsow journal show", typed.entry_words, "nightsow journal show 12")};
}

JournalUndoCommand typed_journal_undo(const TypedWords& typed) {
  constexpr std::string_view name = "nightsow journal undo";
  if (!typed.entry) {
    wrong_use(name,
              "no entry is named",
              "its number, or several as 12-20",
              "`nightsow journal list` shows the numbers");
  }
  const std::string_view entry = *typed.entry;
  const std::size_t dash = entry.find('-');
  if (dash == std::string_view::npos || dash == 0) {
    const int one = whole_number(name, entry, 1);
    return {one, one};
  }
  const int first = whole_number(name, entry.substr(0, dash), 1);
  return {first, whole_number(name, entry.substr(dash + 1), first)};
}

JournalExportCommand typed_journal_export(const TypedWords& typed) {
  return {maybe_text("--csv", typed.csv)};
}

JournalImportCommand typed_journal_import(const TypedWords& typed) {
  if (!typed.into) {
    wrong_use("nightsow journal import",
              "no file is named",
              "a table as `nightsow journal export` writes it",
              "add its name");
  }
  return {typed_text("FILE", *typed.into), typed.partial, typed.dry_run};
}

JournalSalvageCommand typed_journal_salvage(const TypedWords& typed) {
  if (!typed.into) {
    wrong_use("nightsow journal salvage", "no file is named", "the name of a new file", "add one");
  }
  return {typed_text("FILE", *typed.into)};
}

} // namespace nightsow::planner
