#include "planner/journal/read_records.hpp"

#include "planner/journal/entry_rows.hpp"
#include "planner/journal/open_database.hpp"
#include "planner/journal/sqlite_failure.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Transaction.h>

#include <algorithm>
#include <type_traits>
#include <unordered_map>
#include <unordered_set>
#include <utility>

namespace nightsow::planner {

namespace {

void put(Records& into, const RecordedSowing& sowing) {
  into.sowings.push_back(sowing);
}

void put(Records& into, const SeedlingCount& count) {
  into.counts.push_back(count);
}

void put(Records& into, const PressTest& test) {
  into.press_tests.push_back(test);
}

void put(Records& into, const PacketTest& test) {
  into.germination_tests.push_back(test);
}

void put(Records& into, const Watering& watering) {
  into.waterings.push_back(watering);
}

void put(Records& into, const Move& move) {
  into.moves.push_back(move);
}

void put(Records& into, const Note& note) {
  into.notes.push_back(note);
}

void put(Records& into, const PacketUse& use) {
  into.uses.push_back(use);
}

void put(Records& into, const Potting& potting) {
  into.pottings.push_back(potting);
}

void put(Records& into, const Closing& closing) {
  into.closings.push_back(closing);
}

void put(Records& /*into*/, const Undo& /*undo*/) {}

Date day_told(const PacketTest& test) {
  return test.test.on.value();
}

template <typename Told> Date day_told(const Told& told) {
  return told.on;
}

// They come by number.
template <typename Told> void by_date(std::vector<Told>& list) {
  std::stable_sort(list.begin(), list.end(), [](const Told& one, const Told& other) {
    return day_told(one) < day_told(other);
  });
}

template <typename Visit> void for_each_list(Records& records, Visit visit) {
  visit(records.sowings);
  visit(records.counts);
  visit(records.press_tests);
  visit(records.germination_tests);
  visit(records.waterings);
  visit(records.moves);
  visit(records.notes);
  visit(records.uses);
  visit(records.pottings);
  visit(records.closings);
}

// Seed that was sown dry got its first water with the first watering that was written down.
void take_first_waters(Records& records) {
  std::unordered_map<EntryId, Date> first;
  for (const Watering& watering : records.waterings) {
    if (watering.kind != WateringKind::dry_rest) {
      first.emplace(watering.sowing, watering.on);
    }
  }
  for (RecordedSowing& sowing : records.sowings) {
    const auto at = first.find(sowing.id);
    if (!sowing.first_water && at != first.end()) {
      sowing.first_water = at->second;
    }
  }
}

} // namespace

std::vector<Entry> read_entries(const std::filesystem::path& file) {
  std::vector<Entry> entries;
  telling_failures(file, [&] {
    if (const auto journal = open_for_reading(file)) {
      const SQLite::Transaction one_moment(*journal);
      entries = select_entries(*journal);
    }
  });
  return entries;
}

Records records_of(const std::vector<Entry>& entries) {
  Records records;
  std::unordered_set<EntryId> sowings;
  for (const Entry& entry : entries) {
    const auto sowing = sowing_of(entry.value);
    if (kind_of(entry.value) == EntryKind::sowing && !entry.undone) {
      sowings.insert(entry.id);
    }
    if (!entry.undone && (!sowing || sowings.contains(*sowing))) {
      std::visit([&](const auto& told) { put(records, told); }, entry.value);
    }
  }
  for_each_list(records, [](auto& list) { by_date(list); });
  take_first_waters(records);
  return records;
}

Records read_records(const std::filesystem::path& file) {
  return records_of(read_entries(file));
}

// No entry is before its sowing, so that a later sowing takes all that belongs to it along.
Records up_to(Records records, Date today) {
  for_each_list(records, [&](auto& list) {
    list.erase(std::find_if(list.begin(),
                            list.end(),
                            [&](const auto& told) { return day_told(told) > today; }),
               list.end());
  });
  for (RecordedSowing& sowing : records.sowings) {
    if (sowing.first_water && *sowing.first_water > today) {
      sowing.first_water.reset();
    }
  }
  return records;
}

} // namespace nightsow::planner
