#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// How many seeds, as far as it is known.
struct SeedsKnown {
  std::optional<double> low;
  std::optional<double> high;
  std::optional<double> grams; ///< only the weight is known
};

/// A test of a packet, the last there is.
struct ListedTest {
  int germinated = 0;
  int of = 0;
  std::optional<Date> on;
  std::optional<double> at_c;
};

struct ListedPacket {
  std::string packet;
  std::string taxon;
  SeedsKnown acquired;
  SeedsKnown left; ///< after what was sown and used
  int sown = 0;    ///< seeds
  int sowings = 0;
  int used = 0; ///< seeds given away, tested, lost
  std::optional<Date> harvested_from;
  std::optional<Date> harvested_to;
  bool harvest_guessed = false;
  std::optional<double> age_years; ///< from the middle of the harvest; at least 0
  std::optional<ListedTest> tested;
  std::string bench; ///< empty: the first
  bool irreplaceable = false;
};

struct PacketListAnswer {
  Date today{};
  std::vector<ListedPacket> packets; ///< in the order of packets.csv
  int used_up = 0;                   ///< left out, as nothing is left of them
};

} // namespace nightsow::planner
