#pragma once

namespace nightsow::planner {

/// How a person wants to read an answer. None of it changes a figure.
struct TextStyle {
  bool fahrenheit = false;
  bool colour = false; ///< never the only carrier of a meaning
  bool why = false;    ///< all reasons, not only the first of a line
  bool work = false;   ///< trays and dated work behind the plan
};

/// No line of a table is wider, in columns on the screen.
inline constexpr int text_width = 100;

} // namespace nightsow::planner
