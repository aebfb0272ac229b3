#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"
#include "planner/garden/garden.hpp"

#include <filesystem>

namespace nightsow::planner {

// What the commands that keep the record stand on.

[[nodiscard]] std::filesystem::path journal_of(const CommonOptions& common);

[[nodiscard]] Date today_in(const Garden& garden,
                            const CommonOptions& common,
                            const Surroundings& around);

} // namespace nightsow::planner
