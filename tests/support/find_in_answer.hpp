#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/answers/reason.hpp"

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace nightsow::support {

/// The line whose taxon is written so; what is not there is a fault of the test or the answer.
template <class Line> const Line& line_of(const std::vector<Line>& lines, std::string_view taxon) {
  const auto found = std::find_if(
      lines.begin(), lines.end(), [&](const Line& line) { return line.taxon == taxon; });
  if (found == lines.end()) {
    throw std::out_of_range("no line of " + std::string(taxon) + " in this list of the answer");
  }
  return *found;
}

inline const planner::Sowing& sowing_of(const planner::PlanAnswer& answer, std::string_view taxon) {
  return line_of(answer.sowings, taxon);
}

inline const planner::NotNow& not_now_of(const planner::PlanAnswer& answer,
                                         std::string_view taxon) {
  return line_of(answer.not_now, taxon);
}

inline bool gives(const std::vector<planner::Reason>& reasons, planner::ReasonCode code) {
  return std::any_of(reasons.begin(), reasons.end(), [&](const planner::Reason& reason) {
    return reason.code == code;
  });
}

/// The codes in their order: "gate_waits gate_binds".
inline std::string codes_of(const std::vector<planner::Reason>& reasons) {
  std::string codes;
  for (const planner::Reason& reason : reasons) {
    codes += (codes.empty() ? "" : " ") + std::string(name_of(reason.code));
  }
  return codes;
}

/// The value of that name in the first reason of that code; empty when there is no such reason, or
/// the value is none or of another type.
template <class Value>
std::optional<Value> value_in(const std::vector<planner::Reason>& reasons,
                              planner::ReasonCode code,
                              std::string_view name) {
  for (const planner::Reason& reason : reasons) {
    for (const planner::NamedValue& value : reason.values) {
      if (reason.code == code && value.name == name && std::holds_alternative<Value>(value.value)) {
        return std::get<Value>(value.value);
      }
    }
  }
  return std::nullopt;
}

inline std::vector<std::string> taxa_of(const std::vector<planner::Sowing>& sowings) {
  std::vector<std::string> taxa;
  for (const planner::Sowing& line : sowings) {
    taxa.push_back(line.taxon);
  }
  return taxa;
}

} // namespace nightsow::support
