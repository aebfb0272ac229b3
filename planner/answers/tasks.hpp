#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/answers/presence.hpp"

#include <vector>

namespace nightsow::planner {

// Common practice, no source.
inline constexpr int days_to_get_ready = 3;
inline constexpr int bag_off_days = 3;   ///< after the first look
inline constexpr int dry_rest_days = 21; ///< of pots in which nothing came, before they are wetted

/// Seed goes into its pots by it, dry or wet.
[[nodiscard]] constexpr bool is_sowing(TaskKind kind) {
  return kind == TaskKind::sow_dry || kind == TaskKind::sow_wet;
}

/// The work of the season on each tray, by date, from today on. What falls into days away moves to
/// the nearest day before them, or behind them where that lies in the past or would be too early
/// for first water. Getting ready and sowing are a task for each day on which some of the tray is
/// sown; seed that is sown at once is watered with it. What comes with the first resting season
/// goes by how each kind passes it. Where no rule says when to look it is as usual
/// (model/usual_looks.hpp). Requires: lots are those of the sowings.
[[nodiscard]] std::vector<Task> tasks_of(const std::vector<Lot>& lots,
                                         const std::vector<Sowing>& sowings,
                                         const Presence& presence);

/// The tasks drawn together, so that a calendar of two hundred packets stays readable: getting
/// ready goes with sowing, one entry for each day of it, whatever the trays; mats and watering go
/// with first water and the main look, bags and shade with the first look of a group; dry rests go
/// with the first rest, what is done behind it with its end, one entry for the trays of a bench
/// that have the same start.
/// Requires: tasks are those of the lots.
[[nodiscard]] std::vector<DiaryEntry> diary_of(const std::vector<Lot>& lots,
                                               const std::vector<Task>& tasks);

} // namespace nightsow::planner
