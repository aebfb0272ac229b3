#include "planner/cli/typed_packet.hpp"

#include "planner/cli/typed_entry_parts.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <array>
#include <span>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

struct CellOption {
  const char* column;
  const char* option;
  const TypedWords::MaybeText* text;
};

std::vector<TypedCell> cells_typed(const TypedWords& typed) {
  const std::array<CellOption, 12> all{{{"packet", "--id", &typed.id},
                                        {"harvested", "--harvested", &typed.harvested},
                                        {"received", "--received", &typed.received},
                                        {"stored", "--stored", &typed.stored},
                                        {"tested", "--tested", &typed.tested},
                                        {"bench", "--bench", &typed.bench},
                                        {"wanted_plants", "--wanted", &typed.wanted},
                                        {"grown_in", "--grown-in", &typed.grown_in},
                                        {"number", "--number", &typed.number},
                                        {"provenance", "--provenance", &typed.provenance},
                                        {"source", "--source", &typed.source},
                                        {"notes", "--notes", &typed.notes}}};
  std::vector<TypedCell> cells;
  for (const CellOption& one : all) {
    if (*one.text) {
      cells.push_back({one.column, one.option, typed_text(one.option, **one.text)});
    }
  }
  if (typed.irreplaceable) {
    cells.push_back({"irreplaceable", "--irreplaceable", "yes"});
  }
  return cells;
}

} // namespace

PacketListCommand typed_packet_list(const TypedWords& typed) {
  PacketListCommand command;
  if (!typed.text.empty()) {
    command.request.text = typed_text("TEXT", fmt::format("{}", fmt::join(typed.text, " ")));
  }
  command.request.all = typed.all;
  return command;
}

PacketAddCommand typed_packet_add(const TypedWords& typed) {
  const auto& words = typed.entry_words;
  PacketAddCommand command;
  command.from = maybe_text("--from", typed.from);
  if (words.empty() || (words.size() < 2 && command.from.empty())) {
    wrong_use("nightsow packet add",
              "a taxon and a number of seeds are needed",
              "such as: nightsow packet add Albuca spiralis 40",
              "add what is missing; nothing was written");
  }
  const std::span<const std::string> name(words.data(), words.size() - 1);
  if (!name.empty()) {
    command.taxon = typed_text("TAXON", fmt::format("{}", fmt::join(name, " ")));
  }
  command.cells = cells_typed(typed);
  command.cells.push_back({"seeds", "SEEDS", typed_text("SEEDS", words.back())});
  return command;
}

PacketUndoCommand typed_packet_undo(const TypedWords& typed) {
  if (typed.entry_words.empty()) {
    wrong_use("nightsow packet undo",
              "one packet is needed",
              "the id of a packet",
              "nightsow packet list shows them; nothing was written");
  }
  return {typed_text("PACKET", fmt::format("{}", fmt::join(typed.entry_words, " ")))};
}

PacketUseCommand typed_packet_use(const TypedWords& typed) {
  auto [what, seeds] = name_and_number("nightsow packet use", typed.entry_words, 1);
  QuickPacketUse use;
  use.what = std::move(what);
  use.seeds = seeds;
  // In the order of the enumeration.
  use.kind =
      typed.purpose
          ? one_of<PacketUseKind>("--for", typed.purpose, {"given", "tested", "lost", "other"})
          : PacketUseKind::other;
  use.on = maybe_date("--on", typed.on);
  return {use};
}

} // namespace nightsow::planner
