#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/typed_words.hpp"

namespace nightsow::planner {

// The commands that keep the record. All throw UsageError.

[[nodiscard]] SowCommand typed_sow(const TypedWords& typed);
[[nodiscard]] CountCommand typed_count(const TypedWords& typed);
[[nodiscard]] CountSheetCommand typed_count_sheet(const TypedWords& typed);
[[nodiscard]] JournalListCommand typed_journal_list(const TypedWords& typed);
[[nodiscard]] JournalShowCommand typed_journal_show(const TypedWords& typed);
[[nodiscard]] JournalUndoCommand typed_journal_undo(const TypedWords& typed);
[[nodiscard]] JournalExportCommand typed_journal_export(const TypedWords& typed);
[[nodiscard]] JournalImportCommand typed_journal_import(const TypedWords& typed);
[[nodiscard]] JournalSalvageCommand typed_journal_salvage(const TypedWords& typed);

} // namespace nightsow::planner
