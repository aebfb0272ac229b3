#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/outcome.hpp"
#include "planner/garden/garden.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace nightsow::planner {

// What the commands that keep the record stand on.

[[nodiscard]] std::filesystem::path journal_of(const CommonOptions& common);

[[nodiscard]] Date today_in(const Garden& garden,
                            const CommonOptions& common,
                            const Surroundings& around);

/// The names of the garden's benches, in their order.
[[nodiscard]] std::vector<std::string> bench_names(const Garden& garden);

/// The bench of that name, capitals or not; a garden without benches takes any. Throws UsageError
/// with the nearest name when there is none.
[[nodiscard]] std::string bench_typed(const std::string& name, const Garden& garden);

/// The heat mat of that name, likewise.
[[nodiscard]] std::string mat_typed(const std::string& name, const Garden& garden);

} // namespace nightsow::planner
