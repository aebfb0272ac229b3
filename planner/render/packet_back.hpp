#pragma once

#include "planner/answers/rules_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

/// One line of what stands on the back of a good seed packet.
struct PacketBackLine {
  std::string about; ///< "when", "how", "expect", "keep", "seedlings", "rest", "differ", "mind",
                     ///< "how sure"
  std::string text;  ///< whole sentences
};

/// A rule in plain sentences, in the order in which a grower needs them. What the rule does not
/// tell is left out.
[[nodiscard]] std::vector<PacketBackLine> packet_back(const RuleShowAnswer& answer,
                                                      const TextStyle& style);

} // namespace nightsow::planner
