#pragma once

#include "planner/answers/work_answer.hpp"
#include "planner/garden/records.hpp"
#include "planner/garden/saved_plan.hpp"
#include "species-rules/rule.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

// Judgement: how the record is taken to tell of work.
inline constexpr int early_look_days = 7; ///< a count so long before a look's day is that look
inline constexpr int late_work_days = 28; ///< bags, mats, shade and dry rests that nobody wrote of
                                          ///< are let go of so long after their day

/// What the rule of a sowing asks for in the season of its first water.
struct PotNeeds {
  int first_look_days = 0; ///< from first water, as the next two
  int main_look_days = 0;
  int last_look_days = 0;
  bool bag = false;            ///< until the first seedlings are up
  bool mat = false;            ///< and the garden has one
  std::optional<double> shade; ///< share of the sun kept off in the first year
  bool defers = false;         ///< enough waits to keep the pots in which nothing came
  std::optional<Date> rests;   ///< first resting season
  bool may_go_dry = true;      ///< those pots are let go dry, and wetted again
  species_rules::FirstRestWay first_rest = species_rules::FirstRestWay::dry;
  std::optional<int> water_every_days{};  ///< usually, from first water until the main look
  std::optional<int> waters_later_days{}; ///< usually, from then on
};

/// The same in a later season, from the day on which its growth begins.
struct LaterPotNeeds {
  Date grows_from{};
  bool woken = true;      ///< it rested, and water woke it on that day
  bool prick_out = false; ///< it may be, and there are seedlings
  bool pot_on = false;    ///< its third season or a later one, and there are seedlings
  std::optional<Date> rests;
  species_rules::FirstRestWay rest = species_rules::FirstRestWay::dry;
  std::optional<int> water_every_days{}; ///< usually

  /// The water that woke it is none by need.
  [[nodiscard]] Date by_need_from() const { return grows_from + Days{woken ? 1 : 0}; }
};

/// The work on a sowing in the season of its first water, by date: what the record tells of as done
/// on the day that it tells, and what is still to be done on the day it was or will be due. A look
/// is done by a count from `early_look_days` before its day on, the first one also by seedlings
/// seen. Watering by need stands there only where somebody writes it down: as done on the last day
/// told, and due again as long after it as is usual. What a later look, or the first rest, makes
/// needless is left out. `first_water` is empty
/// while the seed is dry: then only its sowing is told.
[[nodiscard]] std::vector<PotTask> recorded_work(const Records& records,
                                                 const RecordedSowing& sowing,
                                                 const std::optional<Date>& first_water,
                                                 const PotNeeds& needs,
                                                 Date today);

/// The work of a later season: waking, watering by need as above, and what of pricking out and
/// potting on was done in it; where never, it is asked for from the day of waking on, for
/// `late_work_days`; its rest.
[[nodiscard]] std::vector<PotTask> recorded_later_work(const Records& records,
                                                       const RecordedSowing& sowing,
                                                       const LaterPotNeeds& needs,
                                                       Date today);

/// What its resting season brings, from the day that it usually begins: a dry rest, until it was
/// written down, at most for `late_work_days`; the other ways for a week.
[[nodiscard]] std::optional<PotTask> recorded_rest(const Records& records,
                                                   EntryId sowing,
                                                   species_rules::FirstRestWay way,
                                                   const std::optional<Date>& rests,
                                                   Date today);

/// Whether water by need was written down of it on that day or later.
[[nodiscard]] bool waters_are_told(const Records& records, EntryId sowing, Date from);

/// Marks sowings as overdue whose day the saved plan had before today, and of whose packet nothing
/// was sown since it was saved.
void mark_overdue_sowings(const SavedPlan& saved,
                          const Records& records,
                          Date today,
                          std::vector<Task>& tasks);

} // namespace nightsow::planner
