#pragma once

namespace nightsow::planner {

// When to look at pots whose rule does not say, in days from first water (common practice, no
// source). The rules of the program say it of all kinds.

inline constexpr int usual_first_look_days = 14;
inline constexpr int usual_main_look_days = 28; ///< most are up; a mat is on until then
inline constexpr int usual_last_look_days = 90; ///< where nothing came, a dry rest

} // namespace nightsow::planner
