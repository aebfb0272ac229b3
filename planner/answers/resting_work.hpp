#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/reason.hpp"
#include "planner/answers/work_answer.hpp"
#include "species-rules/rule.hpp"

namespace nightsow::planner {

// Where a rule says nothing (common practice, no source).
inline constexpr double usual_wake_above_k = 2.0; ///< a resting plant wakes so far above its limit
inline constexpr int usual_keep_seasons = 3;      ///< cool ones, before a pot may be emptied

/// What is done with a kind when its resting season begins.
[[nodiscard]] TaskKind resting_task(species_rules::FirstRestWay way);

/// The same said of what grows: when its resting season usually begins, and what it makes of it.
[[nodiscard]] Reason rests_reason(species_rules::FirstRestWay way, Date begins);

/// It grows in the warm season, and rests in the cool one.
[[nodiscard]] bool grows_in_summer(const species_rules::Rule& rule);

} // namespace nightsow::planner
