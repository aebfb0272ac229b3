#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// Number of an entry of the journal, counted from 1 and never used twice.
using EntryId = std::int64_t;

/// When seedlings were counted. A season is judged by those back after the first rest.
enum class CountPhase { emerged, before_rest, back_after_rest };

/// What seedlings died of, as far as the grower could tell.
enum class DeathCause { unknown, damping_off, gnats, snails, heat, dry, frost, other };

/// One lot of seed put into pots on one day. `packet` is how the seed was when it was sown, not how
/// packets.csv has it now.
struct RecordedSowing {
  EntryId id = 0;
  std::string packet_id;           ///< id of the row in packets.csv; empty: of no packet there
  std::string taxon;               ///< as written
  Date on{};                       ///< seed put into the pot, wet or dry
  std::optional<Date> first_water; ///< or of its first watering; empty: still dry, or not noted
  int seeds = 0;                   ///< 1 or more
  int pots = 1;                    ///< 1 or more
  std::string bench;     ///< where it was sown; later moves are in Records::moves; may be empty
  std::string mat;       ///< empty: none
  std::string cover;     ///< as written: grit, sand, none …
  std::string mix;       ///< recipe as written
  std::string treatment; ///< as written: soaked, smoked …; empty: none
  std::string trial;     ///< name of the trial; empty: none
  std::string arm;       ///< of that trial; empty where `trial` is
  Packet packet;         ///< copy of the packet's row on the day of sowing
};

/// A look at a sowing. Also 0 seen is a count: it says that nothing was up.
struct SeedlingCount {
  EntryId id = 0;
  EntryId sowing = 0;
  Date on{};
  int seen = 0;                         ///< seedlings alive on that day, not new ones; 0 or more
  int dead = 0;                         ///< died since the count before; 0 or more
  DeathCause why = DeathCause::unknown; ///< of `dead`
  CountPhase phase = CountPhase::emerged;
};

/// Seed dug out of a sowing and pressed: firm is alive, soft is dead.
struct PressTest {
  EntryId id = 0;
  EntryId sowing = 0;
  Date on{};
  int firm = 0; ///< 0 or more
  int soft = 0; ///< 0 or more; firm + soft is 1 or more
};

/// Seed of a packet tried before it is sown. It takes nothing off what the packet holds.
struct PacketTest {
  EntryId id = 0;
  std::string packet_id;
  GerminationTest test; ///< `on` is always there
};

enum class WateringKind { first_water, watered, dry_rest, rewet };

/// A change of how wet a sowing is; `dry_rest` is the day from which it was left dry.
struct Watering {
  EntryId id = 0;
  EntryId sowing = 0;
  Date on{};
  WateringKind kind = WateringKind::watered;
};

enum class MoveKind { bench, shade, mat, bag };

/// A pot taken elsewhere, or its surroundings changed.
struct Move {
  EntryId id = 0;
  EntryId sowing = 0;
  Date on{};
  MoveKind kind = MoveKind::bench;
  std::string to; ///< the bench; share of shade 0..1; the mat, or "off"; bag: "on" or "off"
};

enum class PottingKind { pricked_out, potted_on };

/// Seedlings taken out of the pot they were sown in, or plants given larger pots.
struct Potting {
  EntryId id = 0;
  EntryId sowing = 0;
  Date on{};
  PottingKind kind = PottingKind::pricked_out;
  std::optional<int> plants; ///< so many, 1 or more; empty: not counted
};

/// What became of the pots of a sowing that is closed.
enum class ClosingReason { thrown_out, emptied, given_away, moved_on, other };

/// As they stand in the journal and in JSON, in that order; they never change.
inline constexpr std::array<std::string_view, 5> closing_words{
    "thrown_out", "emptied", "given_away", "moved_on", "other"};

[[nodiscard]] constexpr std::string_view name_of(ClosingReason why) {
  return closing_words.at(static_cast<std::size_t>(why));
}

/// A sowing that is looked after no longer: its pots were thrown out, emptied (and the mix looked
/// through), given away, or its plants moved on to a life of their own. What was written down about
/// it stays; what did not come up by then has not failed, nobody could see it.
struct Closing {
  EntryId id = 0;
  EntryId sowing = 0;
  Date on{};
  ClosingReason why = ClosingReason::other;
};

/// Free words on a sowing, a packet, or (both empty) the garden.
struct Note {
  EntryId id = 0;
  std::optional<EntryId> sowing;
  std::string packet_id;
  Date on{};
  std::string text;
  std::string photo; ///< path as given, from the garden's folder; empty: none
};

/// What became of seed that was not sown.
enum class PacketUseKind { given, tested, lost, other };

/// Seed taken out of a packet without being sown.
struct PacketUse {
  EntryId id = 0;
  std::string packet_id;
  Date on{};
  int seeds = 0; ///< 1 or more
  PacketUseKind kind = PacketUseKind::other;
};

/// All that was recorded and not undone, up to today, each list by date, then id. A plain value:
/// who answers a question from it never sees the journal's file.
struct Records {
  std::vector<RecordedSowing> sowings;
  std::vector<SeedlingCount> counts;
  std::vector<PressTest> press_tests;
  std::vector<PacketTest> germination_tests;
  std::vector<Watering> waterings;
  std::vector<Move> moves;
  std::vector<Note> notes;
  std::vector<PacketUse> uses;
  std::vector<Potting> pottings;
  std::vector<Closing> closings;
};

} // namespace nightsow::planner
