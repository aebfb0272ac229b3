#include "planner/journal/entry_words.hpp"
#include "planner/render/journal.hpp"
#include "planner/render/journal_words.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>

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
