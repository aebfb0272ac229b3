#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/date_range.hpp"
#include "species-rules/seed_moisture.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// How many seeds: "40" (40..40), "~40" (a fifth less to a fifth more), "30-60", or "0.2g" (number
/// unknown).
struct SeedCount {
  std::optional<double> low;
  std::optional<double> high;
  std::optional<double> grams;

  /// The middle of the range; empty when only a weight is known.
  [[nodiscard]] std::optional<double> middle() const;
};

/// Where the seed was kept, in the order of time. Empty `until`: up to today.
struct StoreStage {
  std::string place; ///< as written: shelf, fridge, freezer, indoors, unknown, or any other word
  double store_c = 20.0;
  std::optional<Date> until;                      ///< included
  double humidity = species_rules::room_humidity; ///< of its air, 0..1
  bool known = true; ///< false: how it was kept is not known, and the numbers mean nothing
};

/// "14/20 2026-01-10 15C".
struct GerminationTest {
  int sprouted = 0;
  int of = 0;
  std::optional<Date> on;
  std::optional<double> at_c;
};

/// Seed in hand: one row of packets.csv.
struct Packet {
  std::string id;
  std::string taxon; ///< as written
  SeedCount seeds;
  std::optional<DateRange> harvested; ///< known, or guessed from `received`
  bool harvest_guessed = false;
  std::optional<DateRange> received;
  std::vector<StoreStage> stored;
  std::optional<GerminationTest> tested;
  std::string bench; ///< empty: the first bench
  std::optional<int> wanted_plants;
  std::string grown_in;
  std::string number;
  std::string provenance;
  bool irreplaceable = false;
  std::string source;
  std::string notes;
  std::size_t line = 0;
  std::optional<Date> in_hand_from{}; ///< it is harvested or received later than today: then
};

/// Harvest unknown: the seed is taken to be 2 to 14 months older than the day it was received.
inline constexpr int guessed_harvest_months_least = 2;
inline constexpr int guessed_harvest_months_most = 14;

} // namespace nightsow::planner
