#include "planner/cli/run_journal.hpp"

#include "planner/cli/about_garden.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/record_ground.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/packets_in_hand.hpp"
#include "planner/journal/journal.hpp"
#include "planner/journal/quick_entry.hpp"
#include "planner/journal/read_records.hpp"
#include "planner/journal/salvage.hpp"
#include "planner/render/journal.hpp"
#include "planner/render/json_parts.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>

namespace nightsow::planner {

namespace {

Outcome entered(EntryId id,
                const EntryValue& value,
                const CommonOptions& common,
                const RecordedSowing* sowing = nullptr) {
  return {common.json ? entered_json(id, value) : entered_text(id, value, sowing),
          "",
          Ending::answered};
}

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

} // namespace

Outcome run(const SowCommand& command, const CommonOptions& common, const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  const std::string bench = folder.garden.benches.empty() ? "" : folder.garden.benches.front().name;
  const RecordedSowing sowing =
      sowing_meant(command.typed, packets_in_hand(folder.packets, folder.records), bench, today);
  Outcome outcome = entered(Journal(journal_of(common)).add_sowing(sowing), sowing, common);
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
  Outcome outcome = entered(Journal(journal_of(common)).add_count(count), count, common, &sowing);
  outcome.notes = note_of_more(count, sowing, common.quiet);
  return outcome;
}

Outcome run(const JournalListCommand& /*command*/,
            const CommonOptions& common,
            const Surroundings& around) {
  // The records are read twice, in exchange for being told where there is no garden.
  static_cast<void>(load_seed_and_records(common.garden));
  const std::vector<Entry> entries = read_entries(journal_of(common));
  return {common.json ? journal_json(entries) : journal_text(entries, style_of(common, around)),
          "",
          Ending::answered};
}

Outcome run(const JournalUndoCommand& command,
            const CommonOptions& common,
            const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Undo undo{0, command.entry, today_in(folder.garden, common, around)};
  return entered(Journal(journal_of(common)).undo(undo.undone, undo.on), undo, common);
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
