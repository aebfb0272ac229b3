#pragma once

#include "planner/answers/review_answer.hpp"
#include "planner/garden/load_garden.hpp"

#include <optional>

namespace nightsow::planner {

struct ReviewRequest {
  std::optional<int> season; ///< empty: the latest with sowings before today's, else today's
};

/// A season in one page: what was sown, came and failed, against what the plan would have said on
/// each day of sowing; whether its ranges held; and the three lessons that matter. `folder` is the
/// garden that `garden` is of a day: promises are made with what was known on the day of sowing.
[[nodiscard]] ReviewAnswer review(const GardenFolder& folder,
                                  const LoadedGarden& garden,
                                  const ReviewRequest& request);

} // namespace nightsow::planner
