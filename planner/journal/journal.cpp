#include "planner/journal/journal.hpp"

#include "climate/base/problem.hpp"
#include "planner/journal/entry_rows.hpp"
#include "planner/journal/open_database.hpp"
#include "planner/journal/sqlite_failure.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>

#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

[[noreturn]] void refuse(std::string where, std::string found, std::string expected) {
  throw UsageError({Severity::error,
                    std::move(where),
                    0,
                    0,
                    std::move(found),
                    std::move(expected),
                    "`nightsow journal list` shows every entry; nothing was written"});
}

/// Ends the "together" of a journal whatever happens.
class Flag {
public:
  explicit Flag(bool& flag) : flag_(flag) { flag_ = true; }

  Flag(const Flag&) = delete;
  Flag& operator=(const Flag&) = delete;
  Flag(Flag&&) = delete;
  Flag& operator=(Flag&&) = delete;

  ~Flag() { flag_ = false; }

private:
  bool& flag_;
};

} // namespace

Journal::Journal(std::filesystem::path file) : file_(std::move(file)) {
  telling_failures(file_, [&] {
    journal_ = open_for_writing(file_);
    writer_ = std::make_unique<EntryWriter>(*journal_);
  });
}

Journal::~Journal() = default;

EntryId Journal::add_sowing(const RecordedSowing& sowing) {
  return add(sowing);
}

EntryId Journal::add_count(const SeedlingCount& count) {
  return add(count);
}

EntryId Journal::add_press_test(const PressTest& test) {
  return add(test);
}

EntryId Journal::add_germination_test(const PacketTest& test) {
  return add(test);
}

EntryId Journal::add_watering(const Watering& watering) {
  return add(watering);
}

EntryId Journal::add_move(const Move& move) {
  return add(move);
}

EntryId Journal::add_note(const Note& note) {
  return add(note);
}

EntryId Journal::add_packet_use(const PacketUse& use) {
  return add(use);
}

EntryId Journal::undo(EntryId entry, Date today) {
  return add(Undo{0, entry, today});
}

void Journal::together(const std::function<void()>& work) {
  telling_failures(file_, [&] {
    SQLite::Transaction transaction(*journal_, SQLite::TransactionBehavior::IMMEDIATE);
    const Flag flag(together_);
    work();
    transaction.commit();
  });
}

void Journal::take_in(
    const std::function<std::vector<Entry>(const std::vector<Entry>& there)>& plan) {
  together([&] {
    for (const Entry& entry : plan(select_entries(*journal_))) {
      writer_->insert(entry.value, entry.id, entry.entered_at);
    }
  });
}

std::vector<Entry> Journal::entries() const {
  std::vector<Entry> all;
  telling_failures(file_, [&] {
    const SQLite::Transaction one_moment(*journal_);
    all = select_entries(*journal_);
  });
  return all;
}

EntryId Journal::add(const EntryValue& value) {
  if (const auto* test = std::get_if<PacketTest>(&value); test != nullptr && !test->test.on) {
    refuse("test", "the germination test has no day", "the day on which it was counted");
  }
  EntryId id = 0;
  const auto write = [&] {
    check_sowing(value);
    id = writer_->insert(value);
  };
  if (together_) {
    write();
  } else {
    together(write);
  }
  return id;
}

// Within the transaction, so that no other program undoes the sowing in between.
void Journal::check_sowing(const EntryValue& value) const {
  if (const auto* undo = std::get_if<Undo>(&value)) {
    SQLite::Statement row(*journal_, "SELECT 1 FROM entries WHERE id = ?");
    row.bind(1, undo->undone);
    if (!row.executeStep()) {
      refuse("entry", fmt::format("there is no entry {}", undo->undone), "the number of an entry");
    }
    if (is_undone(undo->undone)) {
      refuse("entry",
             fmt::format("entry {} is undone already", undo->undone),
             "an entry that counts; to bring it back, undo its undoing");
    }
    return;
  }
  const auto sowing = sowing_of(value);
  if (!sowing || kind_of(value) == EntryKind::sowing) {
    return;
  }
  SQLite::Statement row(*journal_, "SELECT on_day FROM entries WHERE id = ? AND kind = 'sowing'");
  row.bind(1, *sowing);
  if (!row.executeStep() || is_undone(*sowing)) {
    refuse("sowing", fmt::format("there is no sowing {}", *sowing), "the number of a sowing");
  }
  const std::string sown = row.getColumn(0).getString();
  if (const std::string day = format_iso_date(day_of(value)); day < sown) {
    refuse("date",
           fmt::format("{} is before sowing {} was sown", day, *sowing),
           fmt::format("{} or later", sown));
  }
  if (kind_of(value) == EntryKind::closing) {
    check_open(*sowing);
  }
}

void Journal::check_open(EntryId sowing) const {
  SQLite::Statement row(*journal_, "SELECT entry FROM closings WHERE sowing = ?");
  row.bind(1, sowing);
  while (row.executeStep()) {
    if (const EntryId closing = row.getColumn(0).getInt64(); !is_undone(closing)) {
      refuse("sowing",
             fmt::format("sowing {} is closed already, by entry {}", sowing, closing),
             "a sowing that is looked after");
    }
  }
}

bool Journal::is_undone(EntryId entry) const {
  SQLite::Statement row(*journal_, "SELECT entry FROM undos WHERE undone = ?");
  row.bind(1, entry);
  while (row.executeStep()) {
    if (!is_undone(row.getColumn(0).getInt64())) {
      return true;
    }
  }
  return false;
}

} // namespace nightsow::planner
