#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/saved_plan.hpp"
#include "planner/model/bench_seasons.hpp"

#include <optional>
#include <variant>

namespace nightsow::planner {

/// One packet's place in the plan of a season: among its sowings, or not now.
struct PlanLine {
  std::variant<Sowing, NotNow> place;
  bool passed = false; ///< it would have been a sowing of this season, but that day is over
};

/// `season` is empty where the place has no phases. A packet whose season has passed is looked up
/// in the next one. `saved` is what the saved plan of that season says of it, to be kept to where
/// nothing is gained by leaving it; null: nothing.
[[nodiscard]] PlanLine plan_line(const LoadedGarden& garden,
                                 const Packet& packet,
                                 BenchSeasons& seasons,
                                 const std::optional<climate::Season>& season,
                                 const SavedLine* saved = nullptr);

} // namespace nightsow::planner
