#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace nightsow::planner {

/// A comparison that could be made with seed in hand.
struct TrialIdea {
  std::string name;     ///< of what is compared
  int seeds = 0;        ///< in hand for it
  double share_a = 0.0; ///< what each arm is expected to bring, 0..1
  double share_b = 0.0;
  double matters = 1.0; ///< how much is won by knowing, any scale
};

struct PlannedTrial {
  std::string name;
  int seeds_an_arm = 0;            ///< half of those in hand, rounded down
  std::optional<int> seeds_wanted; ///< an arm, for eight in ten to come out settled
  double power = 0.0;              ///< chance that it comes out settled with the seeds there are
};

/// The ideas that would teach most, at most `most` of them: by power times what matters, best
/// first; of equal ones the first named. Those without two seeds, or with arms alike, are left out.
[[nodiscard]] std::vector<PlannedTrial> planned_trials(std::span<const TrialIdea> ideas, int most);

/// Chance that Newcombe's 95 % interval leaves out zero, summed over all counts that may come.
/// Requires: 1 <= seeds_an_arm <= 500.
[[nodiscard]] double chance_to_settle(double share_a, double share_b, int seeds_an_arm);

/// Which arm each pot is, 0 to arms - 1: as many of each as can be, in an order that follows from
/// the seed number alone, the same on every machine. Requires: arms >= 1, pots >= 0.
[[nodiscard]] std::vector<int> drawn_arms(int pots, int arms, std::uint32_t seed_number);

} // namespace nightsow::planner
