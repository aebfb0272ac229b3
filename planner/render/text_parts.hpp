#pragma once

#include "planner/answers/heads.hpp"
#include "planner/answers/reason.hpp"
#include "planner/render/text_style.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

// Parts that several answers share. Each is whole lines, or empty.

/// "Kransfontein slope (33.0° S, 19.0° E), 20 Feb 2026, season 2026".
[[nodiscard]] std::string garden_line(const GardenHead& garden,
                                      Date today,
                                      std::optional<int> season);

/// Where the readings begin and end, and how many seasons and holes there are.
[[nodiscard]] std::string readings_line(const ReadingsHead& readings);

/// The same of warnings, without those about files, which are notes of their own.
[[nodiscard]] std::string warnings_block(std::string_view heading,
                                         std::vector<Reason> warnings,
                                         const TextStyle& style);

/// A heading and each reason as a paragraph, with an empty line before; empty without reasons.
[[nodiscard]] std::string reasons_block(std::string_view heading,
                                        const std::vector<Reason>& reasons,
                                        const TextStyle& style);

/// Below a line of a table: the first reason, or all of them when the reader asked why.
[[nodiscard]] std::string because_lines(const std::vector<Reason>& reasons, const TextStyle& style);

/// What stands before a line under a row.
inline constexpr std::string_view under_row = "      ";

} // namespace nightsow::planner
