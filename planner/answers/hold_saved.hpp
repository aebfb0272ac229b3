#pragma once

#include "planner/answers/kept_ways.hpp"
#include "planner/answers/line_timing.hpp"
#include "planner/garden/saved_plan.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace nightsow::planner {

// What a saved plan said stays, unless another day or way gains more than the doubt about both: a
// grower who has written a date down is not to be sent another one each morning.

/// Whether so many plants of a packet's seeds are enough more to leave a saved plan for: by more
/// than 3 % and half a seedling (common practice, no source).
[[nodiscard]] bool worth_moving(double share, double than, std::optional<double> seeds);

/// The saved way of keeping, unless another is worth moving for; the best one where that way is not
/// among them, or `saved` is null.
[[nodiscard]] const KeptWay& best_or_saved_way(const std::vector<KeptWay>& ways,
                                               const Packet& packet,
                                               std::optional<double> seeds,
                                               const SavedLine* saved);

/// Plants of the seeds, a share, by day of first water.
using ShareOnDay = std::function<double(Date)>;

/// Keeps the saved days of a packet that waits: the planned one (`held`) as long as it lies ahead
/// and not before `first_possible`, the first day that nights are likely to allow; the last one as
/// long as it is not past. What is kept is among the reasons. Nothing is done where `saved` is
/// null.
void hold_days(const SavedLine* saved,
               Date today,
               Date first_possible,
               const ShareOnDay& share_on,
               std::optional<double> seeds,
               LineTiming& timing);

} // namespace nightsow::planner
