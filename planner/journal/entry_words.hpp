#pragma once

#include "planner/garden/records.hpp"
#include "planner/journal/entry.hpp"

#include <optional>
#include <string_view>

namespace nightsow::planner {

// The words that stand in the journal's file for what can be one of a few. They never change.

[[nodiscard]] std::string_view journal_word(EntryKind kind);
[[nodiscard]] std::string_view journal_word(CountPhase phase);
[[nodiscard]] std::string_view journal_word(DeathCause why);
[[nodiscard]] std::string_view journal_word(WateringKind kind);
[[nodiscard]] std::string_view journal_word(MoveKind kind);
[[nodiscard]] std::string_view journal_word(PacketUseKind kind);
[[nodiscard]] std::string_view journal_word(PottingKind kind);
[[nodiscard]] std::string_view journal_word(ClosingReason why);

// The way back. Empty when the word is none of them.

[[nodiscard]] std::optional<EntryKind> entry_kind(std::string_view word);
[[nodiscard]] std::optional<CountPhase> count_phase(std::string_view word);
[[nodiscard]] std::optional<DeathCause> death_cause(std::string_view word);
[[nodiscard]] std::optional<WateringKind> watering_kind(std::string_view word);
[[nodiscard]] std::optional<MoveKind> move_kind(std::string_view word);
[[nodiscard]] std::optional<PacketUseKind> packet_use_kind(std::string_view word);
[[nodiscard]] std::optional<PottingKind> potting_kind(std::string_view word);
[[nodiscard]] std::optional<ClosingReason> closing_reason(std::string_view word);

} // namespace nightsow::planner
