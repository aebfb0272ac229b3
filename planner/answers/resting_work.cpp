#include "planner/answers/resting_work.hpp"

namespace nightsow::planner {

using species_rules::FirstRestWay;

TaskKind resting_task(FirstRestWay way) {
  switch (way) {
  case FirstRestWay::barely_moist:
    return TaskKind::rest_moist;
  case FirstRestWay::none:
    return TaskKind::keep_watering;
  case FirstRestWay::dies:
    return TaskKind::gather_seed;
  case FirstRestWay::dry:
    break;
  }
  return TaskKind::rest;
}

Reason rests_reason(FirstRestWay way, Date begins) {
  switch (way) {
  case FirstRestWay::barely_moist:
    return {ReasonCode::rests_from, {{"moist", begins}}};
  case FirstRestWay::none:
    return {ReasonCode::rests_from, {{"evergreen", begins}}};
  case FirstRestWay::dies:
    return {ReasonCode::rests_from, {{"annual", begins}}};
  case FirstRestWay::dry:
    break;
  }
  return {ReasonCode::rests_from, {{"rest", begins}}};
}

bool grows_in_summer(const species_rules::Rule& rule) {
  return rule.gate.growth && rule.gate.growth->value == species_rules::Growth::summer;
}

} // namespace nightsow::planner
