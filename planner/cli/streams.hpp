#pragma once

#include "planner/cli/outcome.hpp"

#include <string>
#include <string_view>

namespace nightsow::planner {

/// Reads the clock, whether stdout is a terminal and NO_COLOR (no-color.org) is unset or empty, and
/// where the cache is (XDG Base Directory: $XDG_CACHE_HOME/nightsow or ~/.cache/nightsow).
[[nodiscard]] Surroundings look_around();

/// From now on a reader that goes away is an error of the write, not the end of the program.
void ignore_broken_pipes();

/// All of standard input; empty when it is a terminal. Throws StorageError when it cannot be read.
[[nodiscard]] std::string read_standard_input();

/// Writes the whole answer. A reader that has seen enough (`| head`) is no failure.
/// Throws StorageError when stdout cannot take it.
void write_answer(std::string_view text);

/// Writes to stderr. When that fails there is nobody left to tell.
void write_notes(std::string_view text);

} // namespace nightsow::planner
