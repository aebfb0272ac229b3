#pragma once

#include "planner/journal/entry.hpp"
#include "planner/render/text_style.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

/// The entries as a table, one line each, undone ones marked; or that there are none.
[[nodiscard]] std::string journal_text(const std::vector<Entry>& entries, const TextStyle& style);

/// {"entries": […]}: number, kind, day, whether undone, when it was entered, and the values of its
/// kind; of a sowing also the copy of its packet's row. Nothing of the journal is left out
/// (planner/journal.schema.json).
[[nodiscard]] std::string journal_json(const std::vector<Entry>& entries);

/// What was written down, with every guess in it, and how to undo it. `sowing` is the one that the
/// entry belongs to, where it belongs to one.
[[nodiscard]] std::string entered_text(EntryId id,
                                       const EntryValue& value,
                                       const RecordedSowing* sowing = nullptr);

/// One of several entries made by one command.
struct EnteredRow {
  EntryId id = 0; ///< 0: it was only tried
  EntryValue value;
  std::string taxon; ///< of the sowing that it belongs to; may be empty
};

/// They as a table, and how to undo them all. `tried`: nothing was written.
[[nodiscard]] std::string entered_rows_text(const std::vector<EnteredRow>& rows,
                                            bool tried,
                                            const TextStyle& style);

/// {"written": …, "entered": […]}, each as one of the entries of journal_json.
[[nodiscard]] std::string entered_rows_json(const std::vector<EnteredRow>& rows, bool tried);

/// {"entered": …} as one of the entries of journal_json.
[[nodiscard]] std::string entered_json(EntryId id, const EntryValue& value);

} // namespace nightsow::planner
