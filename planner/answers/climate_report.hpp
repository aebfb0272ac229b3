#pragma once

#include "planner/answers/climate_answer.hpp"
#include "planner/garden/load_garden.hpp"

#include <optional>

namespace nightsow::planner {

struct ClimateRequest {
  bool all_findings = false; ///< otherwise the ten worst
  std::optional<int> season = std::nullopt;
};

/// What the readings are, what is wrong with them, normals, phases and trend.
[[nodiscard]] ClimateAnswer climate_report(const LoadedGarden& garden,
                                           const ClimateRequest& request);

} // namespace nightsow::planner
