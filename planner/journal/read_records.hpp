#pragma once

#include "planner/garden/records.hpp"
#include "planner/journal/entry.hpp"

#include <filesystem>
#include <vector>

namespace nightsow::planner {

/// The entries of a journal, by number, without waiting for who writes. Where there is no file:
/// none, and nothing is made. Throws InputError for a newer or damaged journal and another
/// program's file, StorageError when it cannot be read.
[[nodiscard]] std::vector<Entry> read_entries(const std::filesystem::path& file);

/// What counts of these entries: without what was undone, and without what belongs to a sowing that
/// was undone. Each list by date, then number. A sowing without first water gets the day of its
/// first watering, if there is one.
[[nodiscard]] Records records_of(const std::vector<Entry>& entries);

/// records_of(read_entries(file)).
[[nodiscard]] Records read_records(const std::filesystem::path& file);

/// The records up to a day, as they were known then: later entries and what belongs to a later
/// sowing are left out. Undone entries are out whenever they were undone.
[[nodiscard]] Records up_to(Records records, Date today);

} // namespace nightsow::planner
