#include "planner/answers/decided_timing.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace nightsow::planner {

void tell_late_nights(LineTiming& timing) {
  const std::optional<Date>& latest = timing.water.no_later_than;
  const bool waits = timing.verdict == Verdict::wait && timing.gate && timing.gate->binds;
  if (waits && latest && timing.gate->holds.p90 && *timing.gate->holds.p90 > *latest) {
    timing.risks.push_back({ReasonCode::holds_after_best,
                            {{"when", *timing.gate->holds.p90}, {"no_later_than", *latest}}});
  }
}

void tell_hardly_any(const std::optional<Expected>& expected, LineTiming& timing) {
  if (!expected || expected->plants.p90 > 0.0 || expected->seedlings.mean < 1.0) {
    return;
  }
  const LostSeeds& lost = expected->losses;
  const std::array<std::pair<double, const char*>, 5> losses{{{lost.frost, "frost"},
                                                              {lost.heat, "heat"},
                                                              {lost.lost_wet, "lost_wet"},
                                                              {lost.too_late, "too_late"},
                                                              {lost.rest, "rest"}}};
  const auto* most = std::max_element(losses.begin(), losses.end());
  timing.reasons.insert(timing.reasons.begin(),
                        {ReasonCode::hardly_any_lives, {{"lost_to", std::string(most->second)}}});
}

void drop_passed_limit(Date today, LineTiming& timing) {
  if (!timing.missed && timing.water.no_later_than < today) {
    timing.water.no_later_than.reset();
  }
}

} // namespace nightsow::planner
