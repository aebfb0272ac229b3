#include "planner/journal/entry_words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <iterator>

namespace nightsow::planner {

namespace {

constexpr auto entry_kinds = std::to_array<std::string_view>({
    "sowing",
    "count",
    "press_test",
    "germination_test",
    "watering",
    "move",
    "note",
    "undo",
    "packet_use",
    "potting",
    "closing",
});
constexpr auto phases =
    std::to_array<std::string_view>({"emerged", "before_rest", "back_after_rest"});
constexpr auto causes = std::to_array<std::string_view>({
    "unknown",
    "damping_off",
    "gnats",
    "snails",
    "heat",
    "dry",
    "frost",
    "other",
});
constexpr auto waterings =
    std::to_array<std::string_view>({"first_water", "watered", "dry_rest", "rewet"});
constexpr auto moves = std::to_array<std::string_view>({"bench", "shade", "mat", "bag"});
constexpr auto packet_uses = std::to_array<std::string_view>({"given", "tested", "lost", "other"});
constexpr auto pottings = std::to_array<std::string_view>({"pricked_out", "potted_on"});

template <typename Kind, std::size_t Size>
std::optional<Kind> find(const std::array<std::string_view, Size>& words, std::string_view word) {
  const auto* at = std::find(words.begin(), words.end(), word);
  if (at == words.end()) {
    return std::nullopt;
  }
  return static_cast<Kind>(std::distance(words.begin(), at));
}

template <typename Kind, std::size_t Size>
std::string_view at(const std::array<std::string_view, Size>& words, Kind kind) {
  return words.at(static_cast<std::size_t>(kind));
}

} // namespace

std::string_view journal_word(EntryKind kind) {
  return at(entry_kinds, kind);
}

std::string_view journal_word(CountPhase phase) {
  return at(phases, phase);
}

std::string_view journal_word(DeathCause why) {
  return at(causes, why);
}

std::string_view journal_word(WateringKind kind) {
  return at(waterings, kind);
}

std::string_view journal_word(MoveKind kind) {
  return at(moves, kind);
}

std::string_view journal_word(PacketUseKind kind) {
  return at(packet_uses, kind);
}

std::string_view journal_word(PottingKind kind) {
  return at(pottings, kind);
}

std::string_view journal_word(ClosingReason why) {
  return name_of(why);
}

std::optional<EntryKind> entry_kind(std::string_view word) {
  return find<EntryKind>(entry_kinds, word);
}

std::optional<CountPhase> count_phase(std::string_view word) {
  return find<CountPhase>(phases, word);
}

std::optional<DeathCause> death_cause(std::string_view word) {
  return find<DeathCause>(causes, word);
}

std::optional<WateringKind> watering_kind(std::string_view word) {
  return find<WateringKind>(waterings, word);
}

std::optional<MoveKind> move_kind(std::string_view word) {
  return find<MoveKind>(moves, word);
}

std::optional<PacketUseKind> packet_use_kind(std::string_view word) {
  return find<PacketUseKind>(packet_uses, word);
}

std::optional<PottingKind> potting_kind(std::string_view word) {
  return find<PottingKind>(pottings, word);
}

std::optional<ClosingReason> closing_reason(std::string_view word) {
  return find<ClosingReason>(closing_words, word);
}

} // namespace nightsow::planner
