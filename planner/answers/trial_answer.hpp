#pragma once

#include "planner/answers/heads.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// A comparison to be made with a packet in hand, and which pot gets which arm.
struct PlannedTrialLine {
  std::string packet;
  std::string taxon;
  std::string field; ///< of the rules, that it would tell most of: cover, night_limit_c …
  std::string a;     ///< what is done in each arm, in plain words; `a` is expected to bring more
  std::string b;
  int seeds_an_arm = 0;
  int pots_an_arm = 0;
  double share_a = 0.0; ///< expected to come
  double share_b = 0.0;
  double power = 0.0;              ///< chance that the counts settle it
  std::optional<int> seeds_wanted; ///< an arm, for eight in ten; null: over two thousand
  std::vector<std::string> pots;   ///< "a" or "b", in the order of the tray
};

/// Next year's trial.
struct TrialAnswer {
  GardenHead garden;
  Date today{};
  std::uint32_t seed_number = 1; ///< pots are drawn by it
  int packets = 0;               ///< in hand
  int looked_at = 0;             ///< of them with seed enough to share
  int least_seeds = 0;           ///< that a packet needs
  std::vector<PlannedTrialLine> trials;
};

} // namespace nightsow::planner
