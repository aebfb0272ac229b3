#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/records.hpp"

#include <optional>
#include <string>
#include <variant>

namespace nightsow::planner {

/// Takes an earlier entry out of what counts. An undo is an entry too: undone, what it took out
/// counts again.
struct Undo {
  EntryId id = 0;
  EntryId undone = 0; ///< an earlier entry
  Date on{};          ///< the day of the undoing
};

/// In the order of EntryValue.
enum class EntryKind {
  sowing,
  count,
  press_test,
  germination_test,
  watering,
  move,
  note,
  undo,
  packet_use,
  potting,
  closing,
};

using EntryValue = std::variant<RecordedSowing,
                                SeedlingCount,
                                PressTest,
                                PacketTest,
                                Watering,
                                Move,
                                Note,
                                Undo,
                                PacketUse,
                                Potting,
                                Closing>;

/// One entry of the journal as it was made. Never changed, never deleted.
struct Entry {
  EntryId id = 0;
  Date on{};              ///< the day it tells of
  std::string entered_at; ///< when it was written down: 2026-03-01T07:30:00Z
  bool undone = false;    ///< itself; what belongs to an undone sowing is not marked
  EntryValue value;
};

[[nodiscard]] EntryKind kind_of(const EntryValue& value);

/// The sowing that an entry belongs to; of a sowing itself its own id. Empty: to none.
[[nodiscard]] std::optional<EntryId> sowing_of(const EntryValue& value);

/// The day that an entry tells of. Requires: a germination test has its day.
[[nodiscard]] Date day_of(const EntryValue& value);

} // namespace nightsow::planner
