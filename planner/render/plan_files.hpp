#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

// The plan as files for other programs and for paper. Each is the whole content of one.

/// iCalendar (RFC 5545): the diary, all-day, an entry a group of trays and kind of work; sowing has
/// one for each of its days. The ids stay the same from plan to plan, so that a calendar moves what
/// it has instead of doubling it. SEQUENCE is how often a plan of the season has been saved.
/// What was written down as done stays, on the day it was done: an event has no status for it (RFC
/// 5545, 3.8.1.11 keeps COMPLETED to to-dos, which many calendars do not show), so its title says
/// it.
[[nodiscard]] std::string plan_calendar(const PlanAnswer& answer);

/// A row a packet, sowings first (RFC 4180, UTF-8, ISO dates).
[[nodiscard]] std::string plan_csv(const PlanAnswer& answer);

/// Trays in their order, with room to pencil in what was counted: text for A4 upright in a fixed
/// width, `sheet_width` columns, pages parted by form feeds.
[[nodiscard]] std::string bench_sheet(const PlanAnswer& answer, const TextStyle& style);

inline constexpr int sheet_width = 80;
inline constexpr int sheet_lines = 60; ///< of a page

/// One label a pot (a packet, where pots are not counted), tray by tray, then what has no day yet:
/// HTML that a browser prints in black on A4.
[[nodiscard]] std::string plan_labels(const PlanAnswer& answer);

} // namespace nightsow::planner
