#include "planner/journal/entry_table.hpp"

#include "planner/garden/date_range.hpp"
#include "planner/garden/packet_values.hpp"
#include "planner/garden/plain_text.hpp"
#include "planner/garden/store_stages.hpp"
#include "planner/garden/table_text.hpp"
#include "planner/journal/entry_row.hpp"
#include "planner/journal/entry_words.hpp"
#include "planner/journal/packet_copy.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace nightsow::planner {

namespace {

using Column = EntryColumn;

/// The journal's words for the values of an enumeration, in its order.
template <typename Kind, std::size_t Size> std::array<std::string_view, Size> words_of() {
  std::array<std::string_view, Size> words{};
  for (std::size_t i = 0; i < Size; ++i) {
    words.at(i) = journal_word(static_cast<Kind>(i));
  }
  return words;
}

constexpr std::size_t kind_count = std::variant_size_v<EntryValue>;
constexpr std::size_t cause_count = static_cast<std::size_t>(DeathCause::other) + 1;
constexpr std::size_t phase_count = static_cast<std::size_t>(CountPhase::back_after_rest) + 1;
constexpr std::size_t watering_count = static_cast<std::size_t>(WateringKind::rewet) + 1;
constexpr std::size_t move_count = static_cast<std::size_t>(MoveKind::bag) + 1;
constexpr std::size_t potting_count = static_cast<std::size_t>(PottingKind::potted_on) + 1;
constexpr std::size_t closing_count = static_cast<std::size_t>(ClosingReason::other) + 1;
constexpr std::size_t use_count = static_cast<std::size_t>(PacketUseKind::other) + 1;

template <typename Kind, std::size_t Size>
Kind word(const EntryRow& row, Column column, std::optional<Kind> otherwise = std::nullopt) {
  const auto words = words_of<Kind, Size>();
  const auto place = otherwise ? std::optional(static_cast<std::size_t>(*otherwise)) : std::nullopt;
  return static_cast<Kind>(row.word(column, words, place));
}

/// The one kind of which columns of its own are filled.
std::optional<EntryKind> kind_told(const EntryRow& row) {
  std::optional<EntryKind> told;
  for (std::size_t k = 0; k < kind_count; ++k) {
    const auto kind = static_cast<EntryKind>(k);
    bool filled = false;
    for (std::size_t i = 0; i < entry_column_count; ++i) {
      const auto column = static_cast<Column>(i);
      filled = filled || (tells(column, kind) && !row.cell(column).empty());
    }
    if (filled && told) {
      return std::nullopt;
    }
    told = filled ? kind : told;
  }
  const bool plain_sowing = !told && !row.cell(Column::seeds).empty() &&
                            !row.cell(Column::taxon).empty() && row.cell(Column::sowing).empty();
  return plain_sowing ? EntryKind::sowing : told;
}

std::optional<EntryKind> kind_of(const EntryRow& row) {
  if (row.cell(Column::what).empty()) {
    if (const auto told = kind_told(row)) {
      return told;
    }
  }
  const std::size_t faults = row.fault_count();
  const auto kind = word<EntryKind, kind_count>(row, Column::what);
  return row.fault_count() == faults ? std::optional(kind) : std::nullopt;
}

void read_harvest_and_store(const EntryRow& row, Packet& packet) {
  if (const auto cell = row.cell(Column::harvested); !cell.empty()) {
    packet.harvested = parse_date_range(cell);
    if (!packet.harvested) {
      row.refuse(Column::harvested, "a year, a month or a day: 2025, 2025-11 or 2025-11-03");
    }
  }
  if (const auto cell = row.cell(Column::stored); !cell.empty()) {
    const auto stages = parse_store_stages(cell);
    if (!stages) {
      row.refuse(Column::stored, "shelf, fridge, freezer, indoors or unknown, or stages");
    }
    packet.stored = stages.value_or(std::vector<StoreStage>{});
  }
}

RecordedSowing sowing_from(const EntryRow& row, WrittenEntry& entry) {
  RecordedSowing sowing;
  sowing.packet_id = row.text(Column::packet);
  sowing.taxon = row.needed_text(Column::taxon);
  sowing.on = row.day(Column::day);
  sowing.first_water = row.maybe_day(Column::first_water);
  sowing.seeds = row.number(Column::seeds, 1);
  sowing.pots = row.number(Column::pots, 1, 1);
  sowing.bench = row.text(Column::bench);
  sowing.mat = row.text(Column::mat);
  sowing.cover = row.text(Column::cover);
  sowing.mix = row.text(Column::mix);
  sowing.treatment = row.text(Column::treatment);
  sowing.trial = row.text(Column::trial);
  sowing.arm = row.text(Column::arm);
  if (!sowing.arm.empty() && sowing.trial.empty()) {
    row.refuse(Column::trial, "the trial that the arm belongs to");
  }
  if (sowing.first_water && *sowing.first_water < sowing.on) {
    row.refuse(Column::first_water, "the day of sowing or later");
  }
  entry.has_copy = !row.cell(Column::packet_copy).empty();
  read_harvest_and_store(row, sowing.packet);
  if (entry.has_copy) {
    const auto copy = packet_from_copy(row.cell(Column::packet_copy));
    if (!copy) {
      row.refuse(Column::packet_copy, "the copy as it was exported, or an empty cell");
    }
    sowing.packet = copy.value_or(Packet{});
  }
  return sowing;
}

std::optional<double> temperature(const EntryRow& row) {
  const std::string_view cell = row.cell(Column::at_c);
  if (cell.empty()) {
    return std::nullopt;
  }
  auto degrees = parse_decimal(cell);
  if (!degrees) {
    degrees = parse_temperature(cell);
  }
  if (!degrees || *degrees < -80.0 || *degrees > 60.0) {
    row.refuse(Column::at_c, "-80 to 60 °C");
    return std::nullopt;
  }
  return degrees;
}

PacketTest germination_test_from(const EntryRow& row) {
  PacketTest of;
  of.packet_id = row.needed_text(Column::packet);
  of.test.of = row.number(Column::tried, 1);
  of.test.sprouted = row.number(Column::sprouted, 0);
  of.test.on = row.day(Column::day);
  of.test.at_c = temperature(row);
  if (of.test.sprouted > of.test.of) {
    row.refuse(Column::sprouted, fmt::format("0 to {}, the seeds tried", of.test.of));
  }
  return of;
}

PressTest press_test_from(const EntryRow& row) {
  const PressTest test{
      0, 0, row.day(Column::day), row.number(Column::firm, 0, 0), row.number(Column::soft, 0, 0)};
  if (test.firm + test.soft == 0) {
    row.refuse(Column::firm, "firm and soft seed together 1 or more");
  }
  return test;
}

Move move_from(const EntryRow& row) {
  Move move{0,
            0,
            row.day(Column::day),
            word<MoveKind, move_count>(row, Column::move),
            row.needed_text(Column::to)};
  if (move.kind == MoveKind::bag && move.to != "on" && move.to != "off") {
    row.refuse(Column::to, "on or off");
  }
  const auto share = parse_decimal(move.to);
  if (move.kind == MoveKind::shade && (!share || *share < 0.0 || *share > 1.0)) {
    row.refuse(Column::to, "a share of shade, 0 to 1");
  }
  return move;
}

Potting potting_from(const EntryRow& row) {
  Potting potting{
      0, 0, row.day(Column::day), word<PottingKind, potting_count>(row, Column::potting), {}};
  if (!row.cell(Column::plants).empty()) {
    potting.plants = row.number(Column::plants, 1);
  }
  return potting;
}

Note note_from(const EntryRow& row) {
  Note note;
  note.packet_id = row.text(Column::packet);
  note.on = row.day(Column::day);
  note.text = row.text(Column::text);
  note.photo = row.text(Column::photo);
  if (note.text.empty() && note.photo.empty()) {
    row.refuse(Column::text, "a text or a photo");
  }
  return note;
}

EntryValue value_from(const EntryRow& row, EntryKind kind, WrittenEntry& entry) {
  switch (kind) {
  case EntryKind::sowing:
    return sowing_from(row, entry);
  case EntryKind::count:
    return SeedlingCount{0,
                         0,
                         row.day(Column::day),
                         row.number(Column::seen, 0),
                         row.number(Column::dead, 0, 0),
                         word<DeathCause, cause_count>(row, Column::cause, DeathCause::unknown),
                         word<CountPhase, phase_count>(row, Column::phase, CountPhase::emerged)};
  case EntryKind::press_test:
    return press_test_from(row);
  case EntryKind::germination_test:
    return germination_test_from(row);
  case EntryKind::watering:
    return Watering{
        0, 0, row.day(Column::day), word<WateringKind, watering_count>(row, Column::water)};
  case EntryKind::move:
    return move_from(row);
  case EntryKind::note:
    return note_from(row);
  case EntryKind::undo:
    return Undo{0, 0, row.day(Column::day)};
  case EntryKind::packet_use:
    return PacketUse{0,
                     row.needed_text(Column::packet),
                     row.day(Column::day),
                     row.number(Column::seeds, 1),
                     word<PacketUseKind, use_count>(row, Column::used_for, PacketUseKind::other)};
  case EntryKind::potting:
    return potting_from(row);
  case EntryKind::closing:
    return Closing{0,
                   0,
                   row.day(Column::day),
                   word<ClosingReason, closing_count>(row, Column::closed, ClosingReason::other)};
  }
  return {};
}

void refuse_foreign_cells(const EntryRow& row, EntryKind kind) {
  for (std::size_t i = 0; i < entry_column_count; ++i) {
    const auto column = static_cast<Column>(i);
    if (!goes_with(column, kind) && !row.cell(column).empty()) {
      row.refuse(column,
                 fmt::format("an empty cell: {} has no {}", journal_word(kind), name_of(column)));
    }
  }
}

// YYYY-MM-DDTHH:MM:SSZ, as the journal writes it.
bool is_instant(std::string_view text) {
  constexpr std::string_view form = "dddd-dd-ddTdd:dd:ddZ";
  if (text.size() != form.size() || !parse_iso_date(text.substr(0, 10))) {
    return false;
  }
  for (std::size_t i = 0; i < form.size(); ++i) {
    const bool digit = text[i] >= '0' && text[i] <= '9';
    if (form[i] == 'd' ? !digit : text[i] != form[i]) {
      return false;
    }
  }
  return true;
}

void read_belonging(const EntryRow& row, EntryKind kind, WrittenEntry& entry) {
  if (kind == EntryKind::undo) {
    entry.belongs_to = row.needed_text(Column::undoes);
    entry.belongs_at = row.place(Column::undoes);
  }
  if (!goes_with(Column::sowing, kind)) {
    return;
  }
  entry.belongs_to = row.cell(Column::sowing);
  entry.belongs_at = row.place(Column::sowing);
  entry.packet = kind == EntryKind::note ? "" : row.cell(Column::packet);
  entry.taxon = row.cell(Column::taxon);
  if (kind != EntryKind::note && entry.belongs_to.empty() && entry.packet.empty() &&
      entry.taxon.empty()) {
    row.refuse(Column::sowing, "the entry of its sowing, or its packet or taxon");
  }
}

WrittenEntry entry_from(const EntryRow& row) {
  WrittenEntry entry;
  entry.line = row.line();
  entry.key = row.cell(Column::entry);
  if (const auto kind = kind_of(row)) {
    refuse_foreign_cells(row, *kind);
    entry.value = value_from(row, *kind, entry);
    read_belonging(row, *kind, entry);
  }
  if (const auto cell = row.cell(Column::undone); !cell.empty()) {
    const auto undone = parse_yes_or_no(cell);
    if (!undone) {
      row.refuse(Column::undone, "yes or no");
    }
    entry.undone = undone.value_or(false);
  }
  entry.entered_at = row.cell(Column::entered_at);
  if (!entry.entered_at.empty() && !is_instant(entry.entered_at)) {
    row.refuse(Column::entered_at, "such as 2026-03-01T07:30:00Z, or an empty cell");
  }
  return entry;
}

void require_days(const LooseHeader& header, const CsvReader& rows, std::string_view where) {
  if (!header.has(static_cast<std::size_t>(Column::day))) {
    throw InputError({Severity::error,
                      std::string(where),
                      rows.line(),
                      1,
                      "the header has no column day",
                      "a table of entries, its columns separated by comma, semicolon or tab",
                      "`nightsow journal export` shows how its first line looks"});
  }
}

} // namespace

EntryTable read_entry_table(std::string_view text, std::string_view where) {
  EntryTable table;
  const TableText plain = table_text_of(text, where, table.notes);
  CsvReader rows{plain.text, plain.separator, where};
  if (!rows.next()) {
    refuse_empty_table(where);
  }
  LooseHeader header = match_names(rows, entry_column_names(), where);
  require_days(header, rows, where);
  table.notes.insert(table.notes.end(), header.problems.begin(), header.problems.end());
  while (rows.next()) {
    const std::size_t faults = table.faults.size();
    const EntryRow row{rows, header, where, table.faults};
    if (row.blank() && table.faults.size() == faults) {
      continue;
    }
    WrittenEntry entry = entry_from(row);
    if (table.faults.size() == faults) {
      table.entries.push_back(std::move(entry));
      continue;
    }
    table.faulty_lines.push_back(entry.line);
    if (!entry.key.empty()) {
      table.faulty_keys.push_back(std::move(entry.key));
    }
  }
  return table;
}

} // namespace nightsow::planner
