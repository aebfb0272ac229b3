#pragma once

#include "planner/garden/not_dried_off.hpp"
#include "planner/garden/open_sowings.hpp"
#include "planner/garden/records.hpp"
#include "planner/journal/entry.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

// What a person types in seconds about sown pots and packets, filled up by guesses. Empty text and
// empty optionals: not typed. All throw UsageError for a day after today, and when what is meant is
// nothing or several things, which are then listed.

struct QuickPressTest {
  std::string what;
  int firm = 0;
  int soft = 0;
  std::optional<Date> on;
};

[[nodiscard]] PressTest press_test_meant(const QuickPressTest& typed,
                                         const Records& records,
                                         Date today);

struct QuickPotting {
  std::string what;
  PottingKind kind = PottingKind::pricked_out;
  std::optional<int> plants;
  std::optional<Date> on;
};

[[nodiscard]] Potting potting_meant(const QuickPotting& typed, const Records& records, Date today);

struct QuickClosing {
  std::string what;
  ClosingReason why = ClosingReason::other;
  std::optional<Date> on;
};

/// Throws UsageError also when it is closed already, or something is told of a later day.
[[nodiscard]] Closing closing_meant(const QuickClosing& typed, const Records& records, Date today);

struct QuickGerminationTest {
  std::string what;
  int sprouted = 0;
  int tried = 0;
  std::optional<double> at_c;
  std::optional<Date> on;
};

[[nodiscard]] PacketTest germination_test_meant(const QuickGerminationTest& typed,
                                                const std::vector<Packet>& packets,
                                                Date today);

struct QuickPacketUse {
  std::string what;
  int seeds = 0;
  PacketUseKind kind = PacketUseKind::other;
  std::optional<Date> on;
};

[[nodiscard]] PacketUse packet_use_meant(const QuickPacketUse& typed,
                                         const std::vector<Packet>& packets,
                                         Date today);

/// Of the garden when `what` is empty; else of a sowing, or of a packet where no sowing is called
/// so.
struct QuickNote {
  std::string what;
  std::string text;
  std::string photo;
  std::optional<Date> on;
};

[[nodiscard]] Note note_meant(const QuickNote& typed,
                              const Records& records,
                              const std::vector<Packet>& packets,
                              Date today);

/// `what` is "all", a bench, or a sowing.
struct QuickWatering {
  std::string what;
  std::optional<WateringKind> kind;
  std::optional<Date> on;
  bool even_so = false; ///< a dry rest is written down of kinds that are not dried off, too
};

/// Entries for one or many sowings, and those of a bench or of all that were left out.
struct CareMeant {
  std::vector<EntryValue> entries;
  bool group = false;                    ///< of a bench or all, though it may be one
  std::vector<EntryId> left_out_dry;     ///< not wetted yet
  std::vector<EntryId> left_out_resting; ///< in a dry rest
  std::vector<EntryId> left_out_not_dried_off;
};

/// Without `kind`: the first water of one that was sown dry, the re-wetting of one in a dry rest,
/// else water. Of a bench or all, seed that is still dry gets water only as `first_water`, a pot in
/// dry rest only as `rewet`, and the other two kinds go to those that are wet. A dry rest of one of
/// `not_dried_off` is refused, and of a bench or all left out, unless it is to be written
/// `even_so`.
[[nodiscard]] CareMeant waterings_meant(const QuickWatering& typed,
                                        const std::vector<OpenSowing>& open,
                                        const Records& records,
                                        const std::vector<NotDriedOff>& not_dried_off,
                                        Date today);

/// `what` as with water.
struct QuickMove {
  std::string what;
  MoveKind kind = MoveKind::bench;
  std::string to;
  std::optional<Date> on;
};

[[nodiscard]] CareMeant moves_meant(const QuickMove& typed,
                                    const std::vector<OpenSowing>& open,
                                    const Records& records,
                                    Date today);

} // namespace nightsow::planner
