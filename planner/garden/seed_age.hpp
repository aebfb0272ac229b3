#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/date_range.hpp"

#include <optional>
#include <string_view>

namespace nightsow::planner {

/// How old seed is, as told: to half a unit of what was written.
struct SeedAge {
  double days = 0.0;
  double give_or_take_days = 0.0;
};

/// "18mo", "2y", "1.5 years", "90d", "6 weeks": a number and days, weeks, months or years; up to
/// 200 years. Empty for anything else.
[[nodiscard]] std::optional<SeedAge> parse_seed_age(std::string_view text);

/// When seed of that age was harvested; no later than today.
[[nodiscard]] DateRange harvest_of(const SeedAge& age, Date today);

} // namespace nightsow::planner
