#pragma once

#include "planner/answers/trial_answer.hpp"
#include "planner/garden/load_garden.hpp"

#include <cstdint>

namespace nightsow::planner {

struct TrialRequest {
  std::uint32_t seed_number = 1;
};

/// A packet of fewer seeds is not shared between two arms.
inline constexpr int least_seeds_for_a_trial = 16;

/// The two or three comparisons that would teach most with the seed in hand: by the chance that
/// they come out settled, times how much hangs on the value and how badly it is known. One a packet
/// and one a field; packets that cannot be replaced are left alone. What an arm may bring is what
/// the record (else the rule) says of the kind, and how far the other falls behind is judgement
/// (common practice, no source).
[[nodiscard]] TrialAnswer plan_trial(const LoadedGarden& garden, const TrialRequest& request);

} // namespace nightsow::planner
