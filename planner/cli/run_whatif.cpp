#include "planner/cli/run_whatif.hpp"

#include "climate/base/file.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/garden/packet_file.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"
#include "planner/render/whatif_csv.hpp"

#include <fmt/format.h>

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace nightsow::planner {

namespace {

/// The changes in the order in which they are made, and what was not as it should be in their
/// files.
struct ReadChanges {
  std::vector<Change> changes;
  std::vector<Problem> problems;
};

void add(std::vector<Problem>& problems, const std::vector<Problem>& more) {
  problems.insert(problems.end(), more.begin(), more.end());
}

ReadChanges read_changes(const WhatIfCommand& command, const LoadedGarden& garden) {
  ReadChanges read;
  if (!command.place.empty()) {
    auto place = std::make_shared<const LoadedGarden>(
        other_place(command.place, command.where, garden.garden.time_zone, garden.today));
    add(read.problems, place->problems);
    read.changes.emplace_back(OtherPlace{std::move(place)});
  }
  if (!command.packets.empty()) {
    std::vector<std::string> benches;
    for (const Bench& bench : garden.garden.benches) {
      benches.push_back(bench.name);
    }
    const std::string name = command.packets.string();
    PacketFile file =
        read_packet_file(read_whole_file(command.packets, "--packets"), name, benches);
    add(read.problems, file.problems);
    read.changes.emplace_back(OtherPackets{name, std::move(file.packets)});
  }
  read.changes.insert(
      read.changes.end(), command.request.changes.begin(), command.request.changes.end());
  return read;
}

// What is to be printed in place of the answer, or beside it when the table went into a file.
std::string with_table(const WhatIfCommand& command,
                       const std::string& table,
                       std::string answer,
                       std::string& notes,
                       bool quiet) {
  if (command.csv == "-") {
    return table;
  }
  if (!command.csv.empty()) {
    write_atomically(command.csv, table);
    notes += note_line("the table is in " + command.csv, quiet);
  }
  return answer;
}

} // namespace

Outcome run(const WhatIfCommand& command, const CommonOptions& common, const Surroundings& around) {
  return about_garden(common, around, [&](const LoadedGarden& garden) {
    const ReadChanges read = read_changes(command, garden);
    const WhatIfRequest request{read.changes, command.request.plan};
    const TextStyle style = style_of(common, around);
    Outcome outcome;
    outcome.notes = problem_notes(read.problems, common.quiet);
    if (command.sweep_k.empty()) {
      const WhatIfAnswer answer = whatif(garden, request);
      outcome.answer = with_table(command,
                                  command.csv.empty() ? "" : whatif_csv(answer),
                                  common.json ? to_json(answer) : whatif_text(answer, style),
                                  outcome.notes,
                                  common.quiet);
    } else {
      const SweepAnswer answer = whatif_sweep(garden, request, command.sweep_k);
      outcome.answer = with_table(command,
                                  command.csv.empty() ? "" : sweep_csv(answer),
                                  common.json ? to_json(answer) : sweep_text(answer, style),
                                  outcome.notes,
                                  common.quiet);
    }
    return outcome;
  });
}

} // namespace nightsow::planner
