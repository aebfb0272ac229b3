#pragma once

#include "planner/garden/records.hpp"
#include "planner/journal/entry.hpp"

#include <filesystem>
#include <functional>
#include <memory>
#include <vector>

namespace SQLite {
class Database;
}

namespace nightsow::planner {

class EntryWriter;

/// The record of a garden: one file, journal.db, made when it is first written to. What was entered
/// is never changed and never deleted, only undone. When a call comes back, its entry is on the
/// disk; when it throws, nothing of it is there. Several programs may write at once.
///
/// Every call throws StorageError (lock, permission, full disk), InputError (damaged file), and
/// UsageError for an entry that cannot be: a number below its lowest, a sowing that is not there or
/// was undone, a day before that of its sowing, a second closing of a sowing.
class Journal {
public:
  /// Makes the file, or brings an older one up to date after a copy beside it. Throws InputError
  /// for a journal of a newer version, a damaged one and another program's file, all untouched.
  explicit Journal(std::filesystem::path file);
  ~Journal();

  Journal(const Journal&) = delete;
  Journal& operator=(const Journal&) = delete;
  Journal(Journal&&) = delete;
  Journal& operator=(Journal&&) = delete;

  // Each gives the number of the new entry; the id in what is handed over does not matter.

  EntryId add_sowing(const RecordedSowing& sowing);
  EntryId add_count(const SeedlingCount& count);
  EntryId add_press_test(const PressTest& test);
  EntryId add_germination_test(const PacketTest& test);
  EntryId add_watering(const Watering& watering);
  EntryId add_move(const Move& move);
  EntryId add_note(const Note& note);
  EntryId add_packet_use(const PacketUse& use);
  /// Any of them.
  EntryId add(const EntryValue& value);

  /// Takes out an entry, or, of an undo, brings back what it took out. With a sowing goes all that
  /// belongs to it. `today` is the day of the undoing. Throws UsageError when there is no such
  /// entry or it is undone already.
  EntryId undo(EntryId entry, Date today);

  /// All or nothing of what `work` adds, and much quicker than one by one. Not within another.
  void together(const std::function<void()>& work);

  /// Adds entries that are numbered already, all or nothing. `plan` is given what the journal
  /// holds; no other program writes until what it gives back is written. Each comes after what it
  /// belongs to, its number is free, and it has been checked as the functions above do. Not within
  /// `together`.
  void take_in(const std::function<std::vector<Entry>(const std::vector<Entry>& there)>& plan);

  /// All entries by number, undone ones marked.
  [[nodiscard]] std::vector<Entry> entries() const;

private:
  void check_sowing(const EntryValue& value) const;
  void check_open(EntryId sowing) const;
  [[nodiscard]] bool is_undone(EntryId entry) const;

  std::filesystem::path file_;
  std::unique_ptr<SQLite::Database> journal_;
  std::unique_ptr<EntryWriter> writer_; ///< closed before the journal
  bool together_ = false;
};

} // namespace nightsow::planner
