#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

/// "First water", "Get ready": what a task is, in a word or two.
[[nodiscard]] std::string task_title(TaskKind kind);

/// The same of an entry's main task, with ", done" where all of it was written down and ", overdue"
/// where some of it is.
[[nodiscard]] std::string entry_title(const DiaryEntry& entry);

/// What to do, in sentences, or when it was done. `lot` is the task's.
[[nodiscard]] std::string task_text(const Task& task, const Lot& lot, const TextStyle& style);

/// Whether one of the entry's tasks is on that tray.
[[nodiscard]] bool concerns(const DiaryEntry& entry, const Lot& lot);

/// The trays of an entry in a word or two: their group, where it is one; else "12 trays".
[[nodiscard]] std::string entry_trays(const DiaryEntry& entry, const std::vector<Lot>& lots);

/// What the entry's tasks say, each sentence once, with the trays that it concerns where these are
/// not all of the entry's.
[[nodiscard]] std::vector<std::string> entry_sentences(const DiaryEntry& entry,
                                                       const std::vector<Lot>& lots,
                                                       const TextStyle& style);

/// Where the tray stands and what its packets share: "cold frame, bag, mat by day; surface".
[[nodiscard]] std::string lot_words(const Lot& lot);

/// "10 of 14 nights lie at or under 13 °C on the cold frame, no day over 30 °C is expected for a
/// week; not before 20 Mar; no later than 20 Jul": empty where there is no condition.
[[nodiscard]] std::string water_condition(const FirstWater& water,
                                          Date near,
                                          const TextStyle& style);

/// "S01, S02".
[[nodiscard]] std::string listed_packets(const std::vector<std::string>& packets);

/// The tray with that id. Requires: there is one.
[[nodiscard]] const Lot& lot_with(const std::vector<Lot>& lots, const std::string& id);

} // namespace nightsow::planner
