#pragma once

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

// How much a plan needs, and how it lies on the free days.

/// How many seeds the plants wanted need, by how sure it shall be. Empty: no number that anybody
/// would sow, fifty for each plant wanted and more than the packet holds.
struct Wish {
  int plants = 0;
  std::optional<int> seeds_8_in_10;
  std::optional<int> seeds_9_in_10;
  std::optional<int> seeds_19_in_20;
  double chance = 0.0; ///< that the whole packet gives so many
};

/// Of a round pot, in cm.
struct PotAcross {
  double top_cm = 0.0;
  double base_cm = 0.0;
  double deep_cm = 0.0;
};

/// Something to have at hand for the sowings of the season.
struct ShoppingItem {
  enum class Kind { mix, cover, pots, labels };

  Kind kind = Kind::mix;
  std::string what; ///< the part of the mix, the cover's word, or the pot's depth class
  std::string mix;  ///< of a part of a mix: the recipe's name; else empty
  double amount = 0.0;
  std::string unit;             ///< "l" or "pieces"
  std::optional<PotAcross> pot; ///< of pots
};

struct Shopping {
  std::vector<ShoppingItem> items;
  double shrink = 0.0; ///< allowed for: so much of the parts' volume is lost when they are mixed
  std::vector<std::string> not_counted; ///< packets whose seeds, and so pots, are not counted
};

/// How the sowings were laid on free days. Value is in plants expected.
struct FreeDaysAnswer {
  int sowings = 0;
  int left_over = 0; ///< for which no day in time is left
  double value = 0.0;
  double bound = 0.0;                         ///< no other way of laying them is worth more
  double gap = 0.0;                           ///< share by which the value may fall short
  std::vector<std::string> packets_left_over; ///< by packet
};

} // namespace nightsow::planner
