#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/garden.hpp"

#include <vector>

namespace nightsow::planner {

// Common practice, no source.
inline constexpr int days_to_get_ready = 3;
inline constexpr int bag_off_days = 3;   ///< after the first look
inline constexpr int dry_rest_days = 21; ///< of pots in which nothing came, before they are wetted

/// When the grower is there.
struct Presence {
  Date today{};
  std::vector<AwayPeriod> away;
};

/// The work of the season on each tray, by date, from today on. What falls into days away moves to
/// the nearest day before them, or behind them where that lies in the past or would be too early
/// for first water. A tray without a day for sowing or for first water has no tasks.
/// Requires: lots are those of the sowings.
[[nodiscard]] std::vector<Task> tasks_of(const std::vector<Lot>& lots,
                                         const std::vector<Sowing>& sowings,
                                         const Presence& presence);

/// The tasks drawn together, so that a calendar of two hundred packets stays readable: getting
/// ready goes with sowing, mats with water and the main look, bags and shade with the first look,
/// dry rests with the first rest, what is done behind it with its end.
/// Requires: tasks are those of the lots.
[[nodiscard]] std::vector<DiaryEntry> diary_of(const std::vector<Lot>& lots,
                                               const std::vector<Task>& tasks);

} // namespace nightsow::planner
