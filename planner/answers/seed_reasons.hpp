#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/answers/reason.hpp"
#include "planner/garden/packet.hpp"
#include "planner/model/seed_state.hpp"
#include "species-rules/rule.hpp"

#include <vector>

namespace nightsow::planner {

/// The state of a packet's seed as figures of an answer.
[[nodiscard]] SeedAnswer seed_answer(const SeedState& seed);

/// What the seed itself has to say in its line of the plan.
struct SeedReasons {
  std::vector<Reason> reasons;
  std::vector<Reason> risks;
  bool first = false; ///< the reasons belong before all others
};

/// `sown`: the packet is sown this season.
[[nodiscard]] SeedReasons seed_reasons(const Packet& packet,
                                       const species_rules::Rule& rule,
                                       const SeedState& seed,
                                       bool sown);

} // namespace nightsow::planner
