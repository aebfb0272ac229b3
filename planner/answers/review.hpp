#pragma once

#include "planner/answers/review_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/saved_plan.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

struct ReviewRequest {
  std::optional<int> season;      ///< empty: the latest with sowings before today's, else today's
  std::vector<SavedPlan> saved{}; ///< of a day up to today
};

/// A season in one page: what was sown, came and failed, against what was promised: by the saved
/// plan, where it was saved up to the day of sowing, of as many seeds of that packet and of first
/// water in the days that it was given; else what a plan would have said on the day of sowing, of
/// first water as it was given. Whether those ranges held; and the three lessons that matter.
/// `folder` is the garden that `garden` is of a day: promises are made with what was known on the
/// day of sowing.
[[nodiscard]] ReviewAnswer review(const GardenFolder& folder,
                                  const LoadedGarden& garden,
                                  const ReviewRequest& request);

} // namespace nightsow::planner
