#include "planner/model/nights_for_rule.hpp"

#include <cmath>

namespace nightsow::planner {

using species_rules::Estimate;
using species_rules::Start;

double value_or(const std::optional<Estimate>& estimate, double otherwise) {
  return estimate ? estimate->value : otherwise;
}

Start start_of(const species_rules::Rule& rule) {
  if (rule.gate.start) {
    return rule.gate.start->value;
  }
  return rule.gate.night_limit_c ? Start::cool : Start::any;
}

std::optional<climate::NightLimit> night_limit(const species_rules::Rule& rule) {
  if (start_of(rule) != Start::cool || !rule.gate.night_limit_c) {
    return std::nullopt;
  }
  climate::NightLimit limit;
  limit.at_or_under = Celsius{rule.gate.night_limit_c->value};
  if (rule.gate.day_limit_c) {
    limit.day_limit = Celsius{rule.gate.day_limit_c->value};
  }
  limit.nights = static_cast<int>(std::lround(value_or(rule.gate.nights, limit.nights)));
  limit.of = static_cast<int>(std::lround(value_or(rule.gate.of, limit.of)));
  return limit;
}

} // namespace nightsow::planner
