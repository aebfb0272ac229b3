#include "planner/journal/entry_words.hpp"
#include "planner/render/journal.hpp"
#include "planner/render/journal_words.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace nightsow::planner {

std::string journal_text(const std::vector<Entry>& entries, const TextStyle& style) {
  if (entries.empty()) {
    return "Nothing is written down yet. Begin with: nightsow sow TAXON SEEDS\n";
  }
  std::vector<TableRow> rows;
  rows.reserve(entries.size());
  for (const Entry& entry : entries) {
    rows.push_back({{std::to_string(entry.id),
                     format_iso_date(entry.on),
                     spoken(journal_word(kind_of(entry.value))),
                     (entry.undone ? "(undone) " : "") + entry_words(entry.value)}});
  }
  return table_text(
      {{"Entry", Align::right}, {"Day"}, {"Kind"}, {"What", Align::left, true}}, rows, style);
}

std::string entered_rows_text(const std::vector<EnteredRow>& rows,
                              bool tried,
                              const TextStyle& style) {
  if (rows.empty()) {
    return "Nothing was looked at, so nothing is written down.\n";
  }
  std::vector<Column> columns{
      {"Entry", Align::right}, {"Day"}, {"Taxon"}, {"What", Align::left, true}};
  const bool taxa = std::any_of(
      rows.begin(), rows.end(), [](const EnteredRow& row) { return !row.taxon.empty(); });
  std::vector<TableRow> table;
  table.reserve(rows.size());
  for (const EnteredRow& row : rows) {
    std::vector<std::string> cells{tried ? "-" : std::to_string(row.id),
                                   format_iso_date(day_of(row.value)),
                                   row.taxon,
                                   entry_words(row.value)};
    if (!taxa) {
      cells.erase(cells.begin() + 2);
    }
    table.push_back({std::move(cells)});
  }
  if (!taxa) {
    columns.erase(columns.begin() + 2);
  }
  const std::string text = table_text(columns, table, style);
  if (tried) {
    return text + "Nothing was written: --dry-run only shows it.\n";
  }
  return text + fmt::format("Not so? nightsow journal undo {}{}\n",
                            rows.front().id,
                            rows.size() > 1 ? fmt::format("-{}", rows.back().id) : "");
}

std::string entered_text(EntryId id, const EntryValue& value, const RecordedSowing* sowing) {
  const std::string about = sowing == nullptr ? ""
                                              : fmt::format("Sowing {} is {}, {} seeds sown {}.\n",
                                                            sowing->id,
                                                            sowing->taxon,
                                                            sowing->seeds,
                                                            format_iso_date(sowing->on));
  const std::string entry = fmt::format("{}, {}: {}.",
                                        format_iso_date(day_of(value)),
                                        spoken(journal_word(kind_of(value))),
                                        entry_words(value));
  return paragraph(fmt::format("Entry {}, ", id), entry) + about +
         fmt::format("Not so? nightsow journal undo {}\n", id);
}

} // namespace nightsow::planner
