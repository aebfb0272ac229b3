#pragma once

#include "planner/answers/climate_detail_answer.hpp"
#include "planner/render/json_parts.hpp"
#include "planner/render/text_style.hpp"

#include <string>
#include <vector>

namespace nightsow::planner {

// Parts of the report of `climate`; each text is whole lines, or empty.

/// What is odd about a record as a whole, a paragraph each.
[[nodiscard]] std::string suspicions_text(const std::vector<SuspicionLine>& suspicions);

/// What is missing, and whether it is missing on some days more than on others.
[[nodiscard]] std::string completeness_text(const RecordDetail& record);

/// Percentile bands, as a table.
[[nodiscard]] std::string bands_text(const UsualDetail& usual, const TextStyle& style);

/// How single nights stray by season, and how each season warms, as a table.
[[nodiscard]] std::string quarters_text(const UsualDetail& usual, const TextStyle& style);

[[nodiscard]] std::string frost_text(const UsualDetail& usual);

/// How the dates of cool nights move, as a table.
[[nodiscard]] std::string gates_text(const UsualDetail& usual, const TextStyle& style);

[[nodiscard]] Json suspicion_json(const SuspicionLine& line);
[[nodiscard]] Json record_json(const RecordDetail& record);
[[nodiscard]] Json usual_json(const UsualDetail& usual);

} // namespace nightsow::planner
