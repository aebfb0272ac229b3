#include "planner/answers/rule_value.hpp"

namespace nightsow::planner {

RuleValue rule_value(const species_rules::ExplainedValue& value) {
  return {value.key,
          value.unit,
          value.meaning,
          value.number,
          value.value,
          value.low,
          value.high,
          value.word,
          value.evidence,
          value.source,
          value.origin};
}

} // namespace nightsow::planner
