#include "planner/journal/damaged_entries.hpp"

#include "planner/journal/entry_rows.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Statement.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <variant>

namespace nightsow::planner {

DamagedEntries::DamagedEntries(SQLite::Database& journal) : journal_(journal) {
  for (std::size_t i = 0; i < std::variant_size_v<EntryValue>; ++i) {
    const auto kind = static_cast<EntryKind>(i);
    if (journal.tableExists(std::string(table_of(kind)))) {
      kinds_.push_back(kind);
    }
  }
}

EntryId DamagedEntries::last() const {
  std::vector<std::string> questions{"SELECT seq FROM sqlite_sequence WHERE name = 'entries'",
                                     "SELECT max(id) FROM entries"};
  for (const EntryKind kind : kinds_) {
    questions.push_back(fmt::format("SELECT max(entry) FROM {}", table_of(kind)));
  }
  EntryId last = 0;
  for (const std::string& question : questions) {
    try {
      SQLite::Statement row(journal_, question);
      last = std::max(last, row.executeStep() ? row.getColumn(0).getInt64() : 0);
    } catch (const SQLite::Exception&) {
      continue; // the other parts may tell
    }
  }
  return last;
}

EntryFound DamagedEntries::find(EntryId id) const {
  EntryFound found;
  for (const EntryKind kind : kinds_) {
    try {
      if ((found.entry = select_entry(journal_, kind, id))) {
        return found;
      }
    } catch (const SQLite::Exception& error) {
      found.fault = error.what();
    }
  }
  if (found.fault.empty()) {
    found.fault = "it is not there";
  }
  return found;
}

} // namespace nightsow::planner
