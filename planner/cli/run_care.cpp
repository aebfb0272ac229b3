#include "planner/cli/about_rules.hpp"
#include "planner/cli/enter.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/record_ground.hpp"
#include "planner/cli/run_record.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/journal/quick_care.hpp"
#include "planner/journal/who_is_meant.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <filesystem>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <variant>

namespace nightsow::planner {

namespace {

std::string note_of(const std::vector<EntryId>& left_out, std::string_view why, bool quiet) {
  return left_out.empty()
             ? ""
             : note_line(fmt::format("left out, {}: {}", why, fmt::join(left_out, ", ")), quiet);
}

std::string notes_of(const CareMeant& care, bool quiet) {
  return note_of(care.left_out_dry, "as their seed is still dry (--first waters it)", quiet) +
         note_of(care.left_out_resting, "as they are in a dry rest (--rewet ends it)", quiet) +
         note_of(care.left_out_not_dried_off,
                 "as their kinds are not dried off (--even-so writes it all the same)",
                 quiet);
}

Outcome enter_care(const CareMeant& care,
                   const CommonOptions& common,
                   const Surroundings& around,
                   const Records& records) {
  Outcome outcome = care.group ? enter_all(care.entries, common, around, records)
                               : enter(care.entries.front(), common, records);
  outcome.notes = notes_of(care, common.quiet);
  return outcome;
}

std::string note_of_photo(const Note& note, const CommonOptions& common) {
  std::error_code ignored;
  const bool missing =
      !note.photo.empty() && !std::filesystem::exists(common.garden / note.photo, ignored);
  return missing ? note_line(fmt::format("there is no file {} in the garden's folder", note.photo),
                             common.quiet)
                 : "";
}

/// A photo with one word is of whatever is called so, where something is.
QuickNote settled(QuickNote note, const Records& records, const std::vector<Packet>& packets) {
  const bool one_word = note.what.empty() && !note.text.empty() && !note.photo.empty();
  if (one_word && is_called(note.text, records, packets)) {
    note.what = std::exchange(note.text, {});
  }
  return note;
}

} // namespace

Outcome run(const CheckCommand& command, const CommonOptions& common, const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  if (const auto* pressed = std::get_if<QuickPressTest>(&command.typed)) {
    return enter(press_test_meant(*pressed, folder.records, today), common, folder.records);
  }
  const auto& test = std::get<QuickGerminationTest>(command.typed);
  return enter(germination_test_meant(test, folder.packets, today), common, folder.records);
}

Outcome run(const WaterCommand& command, const CommonOptions& common, const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  const auto open = open_sowings(folder.records, bench_names(folder.garden), today);
  const bool dries = command.typed.kind == WateringKind::dry_rest;
  const auto not_dried = dries ? not_dried_off(folder.records,
                                               *rules_here(common).catalogue,
                                               command.typed.on.value_or(today))
                               : std::vector<NotDriedOff>{};
  return enter_care(waterings_meant(command.typed, open, folder.records, not_dried, today),
                    common,
                    around,
                    folder.records);
}

Outcome run(const PotCommand& command, const CommonOptions& common, const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  return enter(potting_meant(command.typed, folder.records, today), common, folder.records);
}

Outcome run(const CloseCommand& command, const CommonOptions& common, const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  return enter(closing_meant(command.typed, folder.records, today), common, folder.records);
}

Outcome run(const MoveCommand& command, const CommonOptions& common, const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  QuickMove typed = command.typed;
  if (typed.kind == MoveKind::bench) {
    typed.to = bench_typed(typed.to, folder.garden);
  }
  if (typed.kind == MoveKind::mat && typed.to != "off") {
    typed.to = mat_typed(typed.to, folder.garden);
  }
  const auto open = open_sowings(folder.records, bench_names(folder.garden), today);
  return enter_care(
      moves_meant(typed, open, folder.records, today), common, around, folder.records);
}

Outcome run(const NoteCommand& command, const CommonOptions& common, const Surroundings& around) {
  const GardenFolder folder = load_seed_and_records(common.garden);
  const Date today = today_in(folder.garden, common, around);
  const QuickNote typed = settled(command.typed, folder.records, folder.packets);
  const Note note = note_meant(typed, folder.records, folder.packets, today);
  Outcome outcome = enter(note, common, folder.records);
  outcome.notes = note_of_photo(note, common);
  return outcome;
}

} // namespace nightsow::planner
