#include "planner/cli/run_journal.hpp"

#include "planner/cli/about_garden.hpp"
#include "planner/cli/enter.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/record_ground.hpp"
#include "planner/cli/typed_values.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/packets_in_hand.hpp"
#include "planner/journal/filter_entries.hpp"
#include "planner/journal/quick_entry.hpp"
#include "planner/journal/read_records.hpp"
#include "planner/journal/salvage.hpp"
#include "planner/journal/who_is_meant.hpp"
#include "planner/render/journal.hpp"
#include "planner/render/json_parts.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>

namespace nightsow::planner {

namespace {

const RecordedSowing& sowing_numbered(EntryId id, const Records& records) {
  return *std::find_if(records.sowings.begin(),
                       records.sowings.end(),
                       [&](const RecordedSowing& sown) { return sown.id == id; });
}

// A person who counts more than were sown mostly means another pot; it may also be true.
std::string note_of_more(const SeedlingCount& count, const RecordedSowing& sowing, bool quiet) {
  return count.seen <= sowing.seeds
             ? ""
             : note_line(
                   fmt::format("{} are more than the {} seeds sown", count.seen, sowing.seeds),
                   quiet);
}

Outcome listed_entries(const EntryFilter& filter,
                       const CommonOptions& common,
                       const Surroundings& around) {
  const std::vector<Entry> entries = filtered(read_entries(journal_of(common)), filter);
  return {common.json ? journal_json(entries) : journal_text(entries, style_of(common, around)),
          "",
          Ending::answered};
}

} // namespace

Outcome run(const SowCommand& command, const CommonOptions& common, const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  const std::string bench = folder.garden.benches.empty() ? "" : folder.garden.benches.front().name;
  QuickSowing typed = command.typed;
  typed.bench = bench_typed(typed.bench, folder.garden);
  typed.mat = mat_typed(typed.mat, folder.garden);
  const std::vector<Packet> in_hand = packets_in_hand(folder.packets, folder.records);
  const RecordedSowing sowing = sowing_meant(typed, {in_hand, folder.packets}, bench, today);
  Outcome outcome = enter(sowing, common, folder.records);
  if (sowing.packet_id.empty()) {
    outcome.notes = note_line(
        fmt::format("no packet with seed left is called \"{}\"; it is written down without one",
                    command.typed.what),
        common.quiet);
  }
  return outcome;
}

Outcome run(const CountCommand& command, const CommonOptions& common, const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  const SeedlingCount count = count_meant(command.typed, folder.records, today);
  const RecordedSowing& sowing = sowing_numbered(count.sowing, folder.records);
  Outcome outcome = enter(count, common, folder.records);
  outcome.notes = note_of_more(count, sowing, common.quiet);
  return outcome;
}

Outcome run(const JournalListCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  // The records are read twice, in exchange for being told where there is no garden.
  static_cast<void>(load_seed_and_records(common.garden));
  return listed_entries(command.filter, common, around);
}

Outcome run(const JournalShowCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const std::vector<Entry> entries = read_entries(journal_of(common));
  const auto at = std::find_if(entries.begin(), entries.end(), [&](const Entry& entry) {
    return std::to_string(entry.id) == command.what;
  });
  EntryFilter filter;
  if (at == entries.end()) {
    filter.sowing = sowing_called(command.what, folder.records).id;
  } else if (kind_of(at->value) == EntryKind::sowing) {
    filter.sowing = at->id;
  } else {
    filter.entry = at->id;
  }
  return listed_entries(filter, common, around);
}

Outcome run(const JournalUndoCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  if (command.first == command.last) {
    return enter(Undo{0, command.first, today}, common, folder.records);
  }
  std::vector<EntryValue> undos;
  const std::vector<Entry> entries = read_entries(journal_of(common));
  std::for_each(entries.rbegin(), entries.rend(), [&](const Entry& entry) {
    const bool within = entry.id >= command.first && entry.id <= command.last;
    if (within && !entry.undone && kind_of(entry.value) != EntryKind::undo) {
      undos.emplace_back(Undo{0, entry.id, today});
    }
  });
  if (undos.empty()) {
    wrong_use("nightsow journal undo",
              fmt::format("of {} to {} no entry counts", command.first, command.last),
              "",
              "`nightsow journal list` shows every entry; nothing was written");
  }
  return enter_all(undos, common, around, folder.records);
}

Outcome run(const JournalSalvageCommand& command,
            const CommonOptions& common,
            const Surroundings& /*around*/) {
  const Salvaged salvaged = salvage(journal_of(common), command.into);
  if (common.json) {
    Json json = json_top();
    json["into"] = command.into.string();
    json["kept"] = salvaged.kept;
    json["lost"] = salvaged.lost;
    return {json_dump(json), "", Ending::answered};
  }
  std::string text = fmt::format("{} entries were read and written to {}, {} are lost.\n",
                                 salvaged.kept.size(),
                                 command.into.string(),
                                 salvaged.lost.size());
  for (const std::string& lost : salvaged.lost) {
    text += "  " + lost + "\n";
  }
  return {text, "", Ending::answered};
}

} // namespace nightsow::planner
