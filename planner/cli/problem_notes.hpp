#pragma once

#include "climate/base/problem.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace nightsow::planner {

/// So many problems are shown; of the rest only the number.
inline constexpr std::size_t problems_shown = 5;

/// "warning: file:12: …", with line end.
[[nodiscard]] std::string problem_line(const Problem& problem);

/// A note of the program's own, or nothing when people asked for quiet.
[[nodiscard]] std::string note_line(std::string_view text, bool quiet);

/// The first `shown` problems, worst first, and how many there are besides. `quiet` leaves only
/// errors.
[[nodiscard]] std::string problem_notes(std::span<const Problem> problems,
                                        bool quiet,
                                        std::size_t shown = problems_shown);

/// Whether --strict takes offence: any problem that is more than a note.
[[nodiscard]] bool has_faults(std::span<const Problem> problems);

/// Every problem, none left out, and that --strict is why there is no answer. `quiet` leaves only
/// the last line.
[[nodiscard]] std::string strict_notes(std::span<const Problem> problems, bool quiet);

} // namespace nightsow::planner
