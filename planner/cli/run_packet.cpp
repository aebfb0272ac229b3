#include "climate/base/file.hpp"
#include "climate/base/folder_lock.hpp"
#include "planner/answers/packet_list.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/about_rules.hpp"
#include "planner/cli/enter.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/record_ground.hpp"
#include "planner/cli/run_record.hpp"
#include "planner/cli/typed_values.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/new_packet.hpp"
#include "planner/garden/packet_file.hpp"
#include "planner/garden/packets_in_hand.hpp"
#include "planner/journal/read_records.hpp"
#include "planner/journal/who_is_meant.hpp"
#include "planner/render/packet_list.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace fs = std::filesystem;

namespace {

fs::path packets_of(const CommonOptions& common) {
  return common.garden / packet_file_name;
}

bool given(const std::vector<TypedCell>& cells, std::string_view column) {
  return std::any_of(
      cells.begin(), cells.end(), [&](const TypedCell& one) { return one.column == column; });
}

/// What the packet of one's own harvest has from the sowing, where nothing else was typed.
void add_from_sowing(std::vector<TypedCell>& cells, const RecordedSowing& sowing, Date today) {
  const auto add = [&](const char* column, const std::string& cell) {
    if (!cell.empty() && !given(cells, column)) {
      cells.push_back({column, "--from", cell});
    }
  };
  add("harvested", format_iso_date(today));
  add("number", sowing.packet.number);
  add("provenance", sowing.packet.provenance);
  add("source", fmt::format("own harvest of sowing {}", sowing.id));
}

// A near miss is a slip; a plant that the catalogue does not know may be had all the same.
std::string check_taxon(const std::string& taxon, const CommonOptions& common) {
  const RulesInGarden rules = rules_here(common);
  const species_rules::Lookup lookup = rules.catalogue->rule_for(taxon);
  const std::string& nearest = lookup.found ? lookup.read_as : lookup.suggestion;
  if (!nearest.empty()) {
    throw UsageError({Severity::error,
                      "",
                      0,
                      0,
                      fmt::format("no rule for \"{}\"", taxon),
                      "a genus or species of the catalogue",
                      fmt::format("did you mean {}? nothing was written", nearest)});
  }
  return lookup.found
             ? ""
             : note_line(
                   fmt::format("there is no rule for {}, so that the plan cannot tell when to "
                               "sow it; see `nightsow rules list`",
                               taxon),
                   common.quiet);
}

void refuse_taken(const std::vector<TypedCell>& cells, const std::vector<Packet>& packets) {
  for (const TypedCell& one : cells) {
    const bool taken = one.column == "packet" &&
                       std::any_of(packets.begin(), packets.end(), [&](const Packet& packet) {
                         return packet.id == one.cell;
                       });
    if (taken) {
      wrong_use(one.typed,
                fmt::format("there is a packet {} already", one.cell),
                "a name that no packet has",
                "type another one, or leave it out; nothing was written");
    }
  }
}

// What is not harvested yet is no seed in hand; a year or month that has begun may be meant.
void refuse_harvest_to_come(const std::vector<TypedCell>& cells, Date today) {
  for (const TypedCell& one : cells) {
    const auto harvested =
        one.column == "harvested" ? parse_date_range(one.cell) : std::optional<DateRange>{};
    if (harvested && harvested->first > today) {
      wrong_use(one.typed,
                fmt::format("{} is after today, {}", one.cell, format_iso_date(today)),
                "a year, month or day up to today",
                "correct it; nothing was written");
    }
  }
}

std::vector<PacketCell> cells_of(const std::vector<TypedCell>& typed) {
  std::vector<PacketCell> cells;
  cells.reserve(typed.size());
  for (const TypedCell& one : typed) {
    cells.push_back({one.column, one.typed, one.cell});
  }
  return cells;
}

std::string added_text(const ListedPacket& packet, const fs::path& file, std::size_t line) {
  return fmt::format("Packet {0}: {1}, line {2} of {3}.\nNot so? nightsow packet undo {0}\n",
                     packet.packet,
                     packet.taxon,
                     line,
                     file.string());
}

const Packet& packet_with_id(const std::string& id, const std::vector<Packet>& packets) {
  const auto found = std::find_if(
      packets.begin(), packets.end(), [&](const Packet& packet) { return packet.id == id; });
  if (found == packets.end()) {
    wrong_use("PACKET",
              fmt::format("there is no packet {}", id),
              "the id of a packet",
              "nightsow packet list shows them; nothing was written");
  }
  return *found;
}

// What the journal tells of a packet would be left without it.
void refuse_used(const std::string& id, const Records& records) {
  const auto is_of = [&](const auto& told) { return told.packet_id == id; };
  const auto any = [&](const auto& list) { return std::any_of(list.begin(), list.end(), is_of); };
  if (any(records.sowings) || any(records.uses) || any(records.germination_tests) ||
      any(records.notes)) {
    wrong_use("PACKET",
              fmt::format("the journal tells of packet {}", id),
              "a packet of which nothing was written down",
              fmt::format("nightsow journal list --packet {} shows it, and journal undo takes it "
                          "back; nothing was written",
                          id));
  }
}

} // namespace

Outcome run(const PacketListCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  if (common.strict && has_faults(folder.problems)) {
    return {"", strict_notes(folder.problems, common.quiet), Ending::refused};
  }
  const Date today = today_in(folder.garden, common, around);
  const PacketListAnswer answer =
      list_packets(folder.packets, up_to(folder.records, today), command.request, today);
  return {common.json ? to_json(answer) : packet_list_text(answer, style_of(common, around)),
          problem_notes(folder.problems, common.quiet),
          Ending::answered};
}

Outcome run(const PacketAddCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  std::vector<TypedCell> cells = command.cells;
  std::string taxon = command.taxon;
  if (!command.from.empty()) {
    const RecordedSowing parent = sowing_called(command.from, folder.records);
    taxon = taxon.empty() ? parent.taxon : taxon;
    add_from_sowing(cells, parent, today);
  }
  cells.push_back({"taxon", "TAXON", taxon});
  refuse_taken(cells, folder.packets);
  refuse_harvest_to_come(cells, today);
  const std::string notes = check_taxon(taxon, common);
  for (TypedCell& one : cells) {
    one.cell = one.column == "bench" ? bench_typed(one.cell, folder.garden) : one.cell;
  }
  const fs::path file = packets_of(common);
  const FolderLock lock(common.garden);
  const std::string before = fs::exists(file) ? read_whole_file(file, "the garden") : std::string{};
  const std::string after = with_packet_row(before, file.string(), cells_of(cells));
  write_atomically(file, after);
  const Packet packet =
      read_packet_file(after, file.string(), bench_names(folder.garden)).packets.back();
  const PacketListAnswer answer = list_packets({packet}, {}, {"", true}, today);
  return {common.json ? to_json(answer) : added_text(answer.packets.front(), file, packet.line),
          notes,
          Ending::answered};
}

Outcome run(const PacketUndoCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const fs::path file = packets_of(common);
  const FolderLock lock(common.garden);
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Packet& packet = packet_with_id(command.what, folder.packets);
  refuse_used(packet.id, folder.records);
  const PacketRowTaken taken =
      without_packet_row(read_whole_file(file, "the garden"), file.string(), packet.line);
  write_atomically(file, taken.text);
  const Date today = today_in(folder.garden, common, around);
  const PacketListAnswer answer = list_packets({packet}, {}, {"", true}, today);
  return {common.json
              ? to_json(answer)
              : fmt::format("Packet {}: {}, is out of {}. This was its line {}:\n{}\nNot so? Put "
                            "it back.\n",
                            packet.id,
                            packet.taxon,
                            file.string(),
                            packet.line,
                            taken.row),
          "",
          Ending::answered};
}

Outcome run(const PacketUseCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  const auto in_hand = packets_in_hand(folder.packets, folder.records);
  const PacketUse use = packet_use_meant(command.typed, in_hand, today);
  const auto packet = std::find_if(
      in_hand.begin(), in_hand.end(), [&](const Packet& one) { return one.id == use.packet_id; });
  Outcome outcome = enter(use, common, folder.records);
  if (packet->seeds.high && *packet->seeds.high < use.seeds) {
    outcome.notes =
        note_line(fmt::format("{} are more than the {} seeds left", use.seeds, *packet->seeds.high),
                  common.quiet);
  }
  return outcome;
}

} // namespace nightsow::planner
