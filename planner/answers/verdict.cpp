#include "planner/answers/gate_reasons.hpp"
#include "planner/answers/nights_answer.hpp"
#include "planner/answers/plan_answer.hpp"

namespace nightsow::planner {

std::string_view name_of(Verdict verdict) {
  switch (verdict) {
  case Verdict::water_now:
    return "water_now";
  case Verdict::wait:
    return "wait";
  case Verdict::unknown:
    return "unknown";
  }
  return {};
}

std::optional<Date> day_of_water(Verdict verdict, const FirstWater& water, Date today) {
  if (verdict == Verdict::water_now) {
    return today;
  }
  return water.held ? water.held : water.expected.p50;
}

Verdict verdict_of(Open open) {
  switch (open) {
  case Open::yes:
    return Verdict::water_now;
  case Open::no:
    return Verdict::wait;
  case Open::unknown:
    break;
  }
  return Verdict::unknown;
}

std::string_view name_of(Open open) {
  switch (open) {
  case Open::yes:
    return "yes";
  case Open::no:
    return "no";
  case Open::unknown:
    return "unknown";
  }
  return {};
}

} // namespace nightsow::planner
