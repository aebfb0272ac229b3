#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"
#include "planner/garden/records.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

// What a person types in seconds, filled up by guesses. All guesses are shown, and can be undone.

/// "albuca 25". Empty text and empty optionals: not typed.
struct QuickSowing {
  std::string what; ///< id of a packet, or the taxon or its first letters
  int seeds = 0;
  std::optional<Date> on; ///< or today
  std::optional<int> pots;
  bool dry = false; ///< not watered on that day
  std::string bench;
  std::string mat;
  std::string cover;
  std::string mix;
  std::string treatment;
  std::string trial;
  std::string arm;
  bool anyway = false; ///< although its packet holds fewer seeds
};

/// "albuca 7".
struct QuickCount {
  std::string what; ///< number of a sowing, id of its packet, or the taxon or its first letters
  int seen = 0;
  std::optional<Date> on; ///< or today
  int dead = 0;
  DeathCause why = DeathCause::unknown;
  CountPhase phase = CountPhase::emerged;
};

/// The packets that a sowing may be of.
struct PacketsToSow {
  const std::vector<Packet>& in_hand; ///< of which seed is left, with what is left
  const std::vector<Packet>& all;     ///< as they stand in packets.csv
};

/// The sowing that was meant: of the packet called so, on the bench of the packet or the garden's
/// first, watered on that day unless `dry`. Of no packet when a plant's name is typed by which none
/// in hand is called; the taxon is then as typed. Throws UsageError when several packets are called
/// so, and lists them; for what looks like a packet and is none; unless `anyway`, for more seeds
/// than are left of it at the most; and for a day after today.
[[nodiscard]] RecordedSowing sowing_meant(const QuickSowing& typed,
                                          const PacketsToSow& packets,
                                          const std::string& first_bench,
                                          Date today);

/// The count that was meant. Throws UsageError when no sowing or several are called so, and lists
/// them with their numbers, and for a day after today.
[[nodiscard]] SeedlingCount count_meant(const QuickCount& typed,
                                        const Records& records,
                                        Date today);

} // namespace nightsow::planner
