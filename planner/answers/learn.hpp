#pragma once

#include "planner/answers/learn_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/shared_counts.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

/// Counts of other gardens weigh so much against one's own (common practice, no source): other
/// seed, other nights, other eyes.
inline constexpr double others_weigh = 0.3;

struct LearnRequest {
  std::vector<std::string> taxa;    ///< families, genera or species as typed; empty: all
  std::vector<SharedCounts> others; ///< of other gardens
};

/// What the record says of how seed comes here, and what it cannot tell. Shares and effects are of
/// sowings looked at to the end; they are pooled over the whole record, whatever was asked for.
/// Throws UsageError on a taxon that the rules do not know.
[[nodiscard]] LearnAnswer learn(const LoadedGarden& garden, const LearnRequest& request);

/// What may be given to others: every sowing looked at to the end, the rules in use, and how the
/// nights run.
[[nodiscard]] SharedCounts counts_to_share(const LoadedGarden& garden);

} // namespace nightsow::planner
