#pragma once

#include "planner/garden/load_garden.hpp"

#include <memory>
#include <string>
#include <variant>
#include <vector>

namespace nightsow::planner {

/// The other hemisphere: every reading, forecast, date of a packet and today move by 183 days,
/// latitude changes its sign. Packets keep their distance to today, so age and ripeness of the seed
/// stay as they are.
struct Mirror {};

/// Every night and day of the readings, forecasts and monthly normals, that much warmer.
struct Warmer {
  CelsiusDelta by;
};

/// All packets on that bench. Its name must be one of the garden's.
struct OnBench {
  std::string name;
};

/// Other packets in place of those in hand.
struct OtherPackets {
  std::string file; ///< as it is called in answers
  std::vector<Packet> packets;
};

/// One value of a rule, as a grower's own file of rules would give it (overrides.hpp).
struct OneRuleValue {
  std::string taxon; ///< a genus or species of the catalogue
  std::string field; ///< as in rule files: rule_fields.hpp
  std::string value; ///< as written: a number or a word
};

/// Readings, forecast, normals, latitude, longitude, height and zone of another place; benches,
/// mats, packets, rules and today stay. Loggers are left out: they know the old place's air.
struct OtherPlace {
  std::shared_ptr<const LoadedGarden> place; ///< never null, known up to the same today
};

using Change = std::variant<Mirror, Warmer, OnBench, OtherPackets, OneRuleValue, OtherPlace>;

inline constexpr int mirror_days = 183;

/// The loaded garden under a change. A pure function of both. (By value, so that a call is never
/// taken for std::apply, which a variant brings into the search.) Throws UsageError on a bench the
/// garden does not have, and on a rule value that a file of rules could not give.
[[nodiscard]] LoadedGarden apply(Change change, LoadedGarden garden);

} // namespace nightsow::planner
