#include "planner/answers/rule_value.hpp"

namespace nightsow::planner {

RuleValue rule_value(const species_rules::ExplainedValue& value) {
  RuleValue told{value.key,
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
  if (const auto& other = value.otherwise) {
    told.otherwise = OtherwiseRuleValue{other->value,
                                        other->low,
                                        other->high,
                                        other->word,
                                        other->evidence,
                                        other->source,
                                        other->origin};
  }
  return told;
}

} // namespace nightsow::planner
