#pragma once

#include "climate/base/date.hpp"

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// Whether the name is one of the IANA time zones ("Africa/Johannesburg"). Throws StorageError when
/// this machine has no time zone data.
[[nodiscard]] bool is_time_zone(std::string_view name);

/// Throws StorageError when this machine has no time zone data.
[[nodiscard]] std::vector<std::string> time_zone_names();

/// The civil day that it is in a zone at an instant. An empty zone is the machine's own.
/// Requires: zone is empty or is_time_zone(zone).
[[nodiscard]] Date civil_date(std::chrono::system_clock::time_point instant,
                              const std::string& zone);

} // namespace nightsow::planner
