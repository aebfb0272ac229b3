#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/saved_plan.hpp"

#include <filesystem>
#include <optional>
#include <vector>

namespace nightsow::planner {

struct SavedPlans {
  std::vector<SavedPlan> plans;  ///< of a day up to today
  std::vector<Problem> problems; ///< of those that cannot be used: they are left as they are
};

/// The saved plans of the season asked for and the one after it; of the years about today where
/// none was asked for. A damaged or newer one is a warning, one of a day after today a note.
[[nodiscard]] SavedPlans saved_plans(const std::filesystem::path& garden,
                                     std::optional<int> season,
                                     Date today);

/// Those of all seasons, by season, likewise.
[[nodiscard]] SavedPlans all_saved_plans(const std::filesystem::path& garden, Date today);

/// Writes plans/<season>.json, all or nothing, while no other run does, and counts it: `answer`
/// then knows how often that was done. Throws InputError, and leaves the file, where one stands
/// there that cannot be read; StorageError where it cannot be written. Returns the file.
std::filesystem::path save_plan(const std::filesystem::path& garden,
                                const LoadedGarden& loaded,
                                PlanAnswer& answer);

} // namespace nightsow::planner
