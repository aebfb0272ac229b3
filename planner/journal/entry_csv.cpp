#include "planner/journal/entry_csv.hpp"

#include "climate/base/csv.hpp"
#include "planner/journal/entry_words.hpp"
#include "planner/journal/packet_copy.hpp"

#include <fmt/format.h>

#include <cstddef>
#include <map>
#include <optional>

namespace nightsow::planner {

namespace {

std::string& at(EntryCells& cells, EntryColumn column) {
  return cells.at(static_cast<std::size_t>(column));
}

void put(EntryCells& cells, const RecordedSowing& sowing) {
  at(cells, EntryColumn::packet) = sowing.packet_id;
  at(cells, EntryColumn::taxon) = sowing.taxon;
  at(cells, EntryColumn::seeds) = std::to_string(sowing.seeds);
  at(cells, EntryColumn::pots) = std::to_string(sowing.pots);
  if (sowing.first_water) {
    at(cells, EntryColumn::first_water) = format_iso_date(*sowing.first_water);
  }
  at(cells, EntryColumn::bench) = sowing.bench;
  at(cells, EntryColumn::mat) = sowing.mat;
  at(cells, EntryColumn::cover) = sowing.cover;
  at(cells, EntryColumn::mix) = sowing.mix;
  at(cells, EntryColumn::treatment) = sowing.treatment;
  at(cells, EntryColumn::trial) = sowing.trial;
  at(cells, EntryColumn::arm) = sowing.arm;
}

void put(EntryCells& cells, const SeedlingCount& count) {
  at(cells, EntryColumn::seen) = std::to_string(count.seen);
  at(cells, EntryColumn::dead) = std::to_string(count.dead);
  if (count.dead > 0 || count.why != DeathCause::unknown) {
    at(cells, EntryColumn::cause) = journal_word(count.why);
  }
  at(cells, EntryColumn::phase) = journal_word(count.phase);
}

void put(EntryCells& cells, const PressTest& test) {
  at(cells, EntryColumn::firm) = std::to_string(test.firm);
  at(cells, EntryColumn::soft) = std::to_string(test.soft);
}

void put(EntryCells& cells, const PacketTest& of) {
  at(cells, EntryColumn::packet) = of.packet_id;
  at(cells, EntryColumn::sprouted) = std::to_string(of.test.sprouted);
  at(cells, EntryColumn::tried) = std::to_string(of.test.of);
  if (of.test.at_c) {
    at(cells, EntryColumn::at_c) = fmt::format("{}", *of.test.at_c);
  }
}

void put(EntryCells& cells, const Watering& watering) {
  at(cells, EntryColumn::water) = journal_word(watering.kind);
}

void put(EntryCells& cells, const Move& move) {
  at(cells, EntryColumn::move) = journal_word(move.kind);
  at(cells, EntryColumn::to) = move.to;
}

void put(EntryCells& cells, const Potting& potting) {
  at(cells, EntryColumn::potting) = journal_word(potting.kind);
  if (potting.plants) {
    at(cells, EntryColumn::plants) = std::to_string(*potting.plants);
  }
}

void put(EntryCells& cells, const Closing& closing) {
  at(cells, EntryColumn::closed) = journal_word(closing.why);
}

void put(EntryCells& cells, const Note& note) {
  at(cells, EntryColumn::packet) = note.packet_id;
  at(cells, EntryColumn::text) = note.text;
  at(cells, EntryColumn::photo) = note.photo;
}

void put(EntryCells& cells, const Undo& undo) {
  at(cells, EntryColumn::undoes) = std::to_string(undo.undone);
}

void put(EntryCells& cells, const PacketUse& use) {
  at(cells, EntryColumn::packet) = use.packet_id;
  at(cells, EntryColumn::seeds) = std::to_string(use.seeds);
  at(cells, EntryColumn::used_for) = journal_word(use.kind);
}

void add_row(std::string& text, const EntryCells& cells) {
  for (std::size_t i = 0; i < cells.size(); ++i) {
    text += i == 0 ? "" : ",";
    text += csv_field(cells.at(i), ',');
  }
  text += "\r\n";
}

EntryCells header() {
  EntryCells cells;
  const auto names = entry_column_names();
  for (std::size_t i = 0; i < cells.size(); ++i) {
    cells.at(i) = names[i].name;
  }
  return cells;
}

/// What a reader of the table wants to know of the sowing that the row belongs to.
void name_sowing(EntryCells& cells, const RecordedSowing& sowing, EntryKind kind) {
  at(cells, EntryColumn::taxon) = sowing.taxon;
  if (kind != EntryKind::note) {
    at(cells, EntryColumn::packet) = sowing.packet_id;
  }
}

} // namespace

EntryCells told_cells(const EntryValue& value) {
  EntryCells cells;
  at(cells, EntryColumn::what) = journal_word(kind_of(value));
  at(cells, EntryColumn::day) = format_iso_date(day_of(value));
  const auto sowing = sowing_of(value);
  if (sowing && kind_of(value) != EntryKind::sowing) {
    at(cells, EntryColumn::sowing) = std::to_string(*sowing);
  }
  std::visit([&](const auto& told) { put(cells, told); }, value);
  return cells;
}

std::string entries_csv(const std::vector<Entry>& entries) {
  std::map<EntryId, const RecordedSowing*> sowings;
  std::string text;
  add_row(text, header());
  for (const Entry& entry : entries) {
    EntryCells cells = told_cells(entry.value);
    at(cells, EntryColumn::entry) = std::to_string(entry.id);
    at(cells, EntryColumn::undone) = entry.undone ? "yes" : "";
    at(cells, EntryColumn::entered_at) = entry.entered_at;
    if (const auto* sown = std::get_if<RecordedSowing>(&entry.value)) {
      sowings[entry.id] = sown;
      at(cells, EntryColumn::packet_copy) = packet_copy(sown->packet);
    } else if (const auto sowing = sowing_of(entry.value)) {
      name_sowing(cells, *sowings.at(*sowing), kind_of(entry.value));
    }
    add_row(text, cells);
  }
  return text;
}

} // namespace nightsow::planner
