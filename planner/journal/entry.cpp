#include "planner/journal/entry.hpp"

#include <type_traits>

namespace nightsow::planner {

EntryKind kind_of(const EntryValue& value) {
  return static_cast<EntryKind>(value.index());
}

std::optional<EntryId> sowing_of(const EntryValue& value) {
  return std::visit(
      [](const auto& told) -> std::optional<EntryId> {
        using Told = std::decay_t<decltype(told)>;
        if constexpr (std::is_same_v<Told, RecordedSowing>) {
          return told.id;
        } else if constexpr (std::is_same_v<Told, PacketTest> || std::is_same_v<Told, Undo> ||
                             std::is_same_v<Told, PacketUse>) {
          return std::nullopt;
        } else {
          return told.sowing;
        }
      },
      value);
}

Date day_of(const EntryValue& value) {
  return std::visit(
      [](const auto& told) {
        if constexpr (std::is_same_v<std::decay_t<decltype(told)>, PacketTest>) {
          return told.test.on.value();
        } else {
          return told.on;
        }
      },
      value);
}

} // namespace nightsow::planner
