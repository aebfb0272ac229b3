#pragma once

#include "planner/answers/nights_answer.hpp"
#include "planner/garden/load_garden.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

struct NightsRequest {
  std::vector<std::string> genera = {}; ///< empty: every genus in hand that waits for cool nights
  std::optional<int> season = std::nullopt;
};

/// Are nights cool enough yet, for each genus; if not, when, and how sure.
/// Throws UsageError on a genus the catalogue does not know, with the nearest right word.
[[nodiscard]] NightsAnswer nights(const LoadedGarden& garden, const NightsRequest& request);

struct PastNightsRequest {
  std::vector<std::string> genera = {};         ///< empty: in hand, unless a limit is given
  std::optional<double> limit_c = std::nullopt; ///< a limit of the grower's own, instead of genera
  std::optional<double> day_limit_c = std::nullopt; ///< goes with limit_c
};

/// Every past season's dates as observed, trend not removed.
[[nodiscard]] PastNightsAnswer past_nights(const LoadedGarden& garden,
                                           const PastNightsRequest& request);

} // namespace nightsow::planner
