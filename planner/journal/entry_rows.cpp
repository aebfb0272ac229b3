#include "planner/journal/entry_rows.hpp"

#include "planner/journal/entry_words.hpp"
#include "planner/journal/packet_copy.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <cstddef>
#include <unordered_set>
#include <utility>

namespace nightsow::planner {

namespace {

struct Table {
  std::string_view name;
  std::string_view columns; ///< in the order in which they are written and read
  std::string_view places;
};

// In the order of EntryKind.
constexpr auto tables = std::to_array<Table>({
    {"sowings",
     "packet_id, taxon, first_water, seeds, pots, bench, mat, cover, mix, treatment, trial, arm, "
     "packet",
     "?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?"},
    {"counts", "sowing, seen, dead, why, phase", "?, ?, ?, ?, ?"},
    {"press_tests", "sowing, firm, soft", "?, ?, ?"},
    {"germination_tests", "packet_id, sprouted, tried, at_c", "?, ?, ?, ?"},
    {"waterings", "sowing, what", "?, ?"},
    {"moves", "sowing, what, target", "?, ?, ?"},
    {"notes", "sowing, packet_id, text, photo", "?, ?, ?, ?"},
    {"undos", "undone", "?"},
    {"packet_uses", "packet_id, seeds, what_for", "?, ?, ?"},
    {"pottings", "sowing, what, plants", "?, ?, ?"},
    {"closings", "sowing, why", "?, ?"},
});

const Table& table(EntryKind kind) {
  return tables.at(static_cast<std::size_t>(kind));
}

/// Binds values one after the other; an empty optional stays NULL.
class Places {
public:
  explicit Places(SQLite::Statement& statement) : statement_(statement) {}

  template <typename... Values> void bind(const Values&... values) { (put(values), ...); }

private:
  template <typename Value> void put(const Value& value) { statement_.bind(++at_, value); }

  void put(std::string_view text) { statement_.bind(++at_, std::string(text)); }

  void put(Date day) { statement_.bind(++at_, format_iso_date(day)); }

  template <typename Value> void put(const std::optional<Value>& value) {
    if (value) {
      put(*value);
    } else {
      ++at_;
    }
  }

  SQLite::Statement& statement_;
  int at_ = 0;
};

void bind(Places& to, const RecordedSowing& sowing) {
  to.bind(sowing.packet_id,
          sowing.taxon,
          sowing.first_water,
          sowing.seeds,
          sowing.pots,
          sowing.bench,
          sowing.mat,
          sowing.cover,
          sowing.mix,
          sowing.treatment,
          sowing.trial,
          sowing.arm,
          packet_copy(sowing.packet));
}

void bind(Places& to, const SeedlingCount& count) {
  to.bind(count.sowing, count.seen, count.dead, journal_word(count.why), journal_word(count.phase));
}

void bind(Places& to, const PressTest& test) {
  to.bind(test.sowing, test.firm, test.soft);
}

void bind(Places& to, const PacketTest& of) {
  to.bind(of.packet_id, of.test.sprouted, of.test.of, of.test.at_c);
}

void bind(Places& to, const Watering& watering) {
  to.bind(watering.sowing, journal_word(watering.kind));
}

void bind(Places& to, const Move& move) {
  to.bind(move.sowing, journal_word(move.kind), move.to);
}

void bind(Places& to, const Note& note) {
  to.bind(note.sowing, note.packet_id, note.text, note.photo);
}

void bind(Places& to, const Undo& undo) {
  to.bind(undo.undone);
}

void bind(Places& to, const PacketUse& use) {
  to.bind(use.packet_id, use.seeds, journal_word(use.kind));
}

void bind(Places& to, const Potting& potting) {
  to.bind(potting.sowing, journal_word(potting.kind), potting.plants);
}

void bind(Places& to, const Closing& closing) {
  to.bind(closing.sowing, journal_word(closing.why));
}

// The file is checked before it is read; what gets here was changed by hand, past every check.
[[noreturn]] void refuse_row(EntryId id) {
  throw SQLite::Exception(fmt::format("entry {} holds a value that cannot be", id), SQLITE_CORRUPT);
}

/// Takes the columns one after the other.
class Columns {
public:
  explicit Columns(SQLite::Statement& row) : row_(row) {}

  EntryId id() { return row_.getColumn(at_++).getInt64(); }

  int number() { return row_.getColumn(at_++).getInt(); }

  std::string text() { return row_.getColumn(at_++).getString(); }

  Date day() { return *known(parse_iso_date(text())); }

  std::optional<Date> maybe_day() { return null() ? std::nullopt : std::optional(day()); }

  std::optional<EntryId> maybe_id() { return null() ? std::nullopt : std::optional(id()); }

  std::optional<int> maybe_number() { return null() ? std::nullopt : std::optional(number()); }

  std::optional<double> maybe_real() {
    return null() ? std::nullopt : std::optional(row_.getColumn(at_++).getDouble());
  }

  /// The value, if there is one: a word or copy that means nothing is refused.
  template <typename Value> std::optional<Value> known(std::optional<Value> value) {
    if (!value) {
      refuse_row(row_.getColumn(0).getInt64());
    }
    return value;
  }

private:
  bool null() {
    const bool is_null = row_.getColumn(at_).isNull();
    at_ += is_null ? 1 : 0;
    return is_null;
  }

  SQLite::Statement& row_;
  int at_ = 0;
};

RecordedSowing read_sowing(EntryId id, Date on, Columns& row) {
  RecordedSowing sowing;
  sowing.id = id;
  sowing.packet_id = row.text();
  sowing.taxon = row.text();
  sowing.on = on;
  sowing.first_water = row.maybe_day();
  sowing.seeds = row.number();
  sowing.pots = row.number();
  sowing.bench = row.text();
  sowing.mat = row.text();
  sowing.cover = row.text();
  sowing.mix = row.text();
  sowing.treatment = row.text();
  sowing.trial = row.text();
  sowing.arm = row.text();
  sowing.packet = *row.known(packet_from_copy(row.text()));
  return sowing;
}

PacketTest read_germination_test(EntryId id, Date on, Columns& row) {
  PacketTest test{id, row.text(), {}};
  test.test.sprouted = row.number();
  test.test.of = row.number();
  test.test.on = on;
  test.test.at_c = row.maybe_real();
  return test;
}

// Within braces the columns are taken from left to right.
EntryValue read_value(EntryKind kind, EntryId id, Date on, Columns& row) {
  switch (kind) {
  case EntryKind::sowing:
    return read_sowing(id, on, row);
  case EntryKind::count:
    return SeedlingCount{id,
                         row.id(),
                         on,
                         row.number(),
                         row.number(),
                         *row.known(death_cause(row.text())),
                         *row.known(count_phase(row.text()))};
  case EntryKind::press_test:
    return PressTest{id, row.id(), on, row.number(), row.number()};
  case EntryKind::germination_test:
    return read_germination_test(id, on, row);
  case EntryKind::watering:
    return Watering{id, row.id(), on, *row.known(watering_kind(row.text()))};
  case EntryKind::move:
    return Move{id, row.id(), on, *row.known(move_kind(row.text())), row.text()};
  case EntryKind::note:
    return Note{id, row.maybe_id(), row.text(), on, row.text(), row.text()};
  case EntryKind::undo:
    return Undo{id, row.id(), on};
  case EntryKind::packet_use:
    return PacketUse{id, row.text(), on, row.number(), *row.known(packet_use_kind(row.text()))};
  case EntryKind::potting:
    return Potting{id, row.id(), on, *row.known(potting_kind(row.text())), row.maybe_number()};
  case EntryKind::closing:
    return Closing{id, row.id(), on, *row.known(closing_reason(row.text()))};
  }
  refuse_row(id);
}

std::string select_sql(EntryKind kind, std::string_view which) {
  return fmt::format("SELECT entries.id, entries.on_day, entries.entered_at, {0} FROM {1} JOIN "
                     "entries ON entries.id = {1}.entry {2}",
                     table(kind).columns,
                     table(kind).name,
                     which);
}

Entry read_entry(EntryKind kind, SQLite::Statement& row) {
  Columns columns(row);
  Entry entry;
  entry.id = columns.id();
  entry.on = columns.day();
  entry.entered_at = columns.text();
  entry.value = read_value(kind, entry.id, entry.on, columns);
  return entry;
}

// Which statement of a writer: one for each kind, in the order of EntryKind, then those for the
// table that all have in common.
constexpr std::size_t new_entry = tables.size();
constexpr std::size_t dated_entry = new_entry + 1;
constexpr std::size_t all_statements = dated_entry + 1;

std::string insert_sql(std::size_t which) {
  if (which == new_entry) {
    return "INSERT INTO entries (id, kind, on_day) VALUES (?, ?, ?)";
  }
  if (which == dated_entry) {
    return "INSERT INTO entries (id, kind, on_day, entered_at) VALUES (?, ?, ?, ?)";
  }
  const Table& into = tables.at(which);
  return fmt::format(
      "INSERT INTO {} (entry, {}) VALUES (?, {})", into.name, into.columns, into.places);
}

} // namespace

std::string_view table_of(EntryKind kind) {
  return table(kind).name;
}

EntryWriter::EntryWriter(SQLite::Database& journal)
    : journal_(journal), statements_(all_statements) {}

EntryWriter::~EntryWriter() = default;

// What is left of its last use is cleared away, also where that failed.
SQLite::Statement& EntryWriter::prepared(std::size_t which) {
  std::unique_ptr<SQLite::Statement>& statement = statements_.at(which);
  if (!statement) {
    statement = std::make_unique<SQLite::Statement>(journal_, insert_sql(which));
  } else {
    static_cast<void>(statement->tryReset());
    statement->clearBindings();
  }
  return *statement;
}

EntryId EntryWriter::insert(const EntryValue& value,
                            std::optional<EntryId> id,
                            const std::string& entered_at) {
  const EntryKind kind = kind_of(value);
  SQLite::Statement& entry = prepared(entered_at.empty() ? new_entry : dated_entry);
  Places places(entry);
  places.bind(id, journal_word(kind), day_of(value));
  if (!entered_at.empty()) {
    places.bind(entered_at);
  }
  entry.exec();
  const EntryId given = journal_.getLastInsertRowid();
  SQLite::Statement& detail = prepared(static_cast<std::size_t>(kind));
  Places details(detail);
  details.bind(given);
  std::visit([&](const auto& told) { bind(details, told); }, value);
  detail.exec();
  return given;
}

std::vector<Entry> select_entries(SQLite::Database& journal) {
  std::vector<Entry> entries;
  for (std::size_t i = 0; i < tables.size(); ++i) {
    const auto kind = static_cast<EntryKind>(i);
    SQLite::Statement row(journal, select_sql(kind, ""));
    while (row.executeStep()) {
      entries.push_back(read_entry(kind, row));
    }
  }
  std::sort(entries.begin(), entries.end(), [](const Entry& one, const Entry& other) {
    return one.id < other.id;
  });
  mark_undone(entries);
  return entries;
}

std::optional<Entry> select_entry(SQLite::Database& journal, EntryKind kind, EntryId id) {
  SQLite::Statement row(journal, select_sql(kind, "WHERE entries.id = ?"));
  row.bind(1, id);
  return row.executeStep() ? std::optional(read_entry(kind, row)) : std::nullopt;
}

// Whoever undoes comes after what is undone: from the last entry back, each undo is settled before
// what it undoes.
void mark_undone(std::vector<Entry>& entries) {
  std::unordered_set<EntryId> undone;
  std::for_each(entries.rbegin(), entries.rend(), [&](Entry& entry) {
    entry.undone = undone.contains(entry.id);
    const auto* undo = std::get_if<Undo>(&entry.value);
    if (undo != nullptr && !entry.undone) {
      undone.insert(undo->undone);
    }
  });
}

} // namespace nightsow::planner
