#include "planner/answers/rules_gaps.hpp"

#include "planner/answers/deciding_fields.hpp"
#include "planner/answers/rule_value.hpp"
#include "planner/answers/rules_report.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "species-rules/explain.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <tuple>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::ExplainedValue;
using species_rules::RuleFor;

/// Of one field: the scores of the rules that have it, and the values by who gives them.
struct Collected {
  double sum = 0.0;
  std::map<std::string, RuleGap> by_name;
};

using ByField = std::map<std::string_view, Collected>;

// No score is known better.
double hundredths(double score) {
  return std::round(score * 100.0) / 100.0;
}

std::string giver(const RuleFor& entry, const std::string& rule, const std::string& level) {
  if (level == word_of(species_rules::Origin::family)) {
    return entry.family;
  }
  return level == word_of(species_rules::Origin::genus) ? rule.substr(0, rule.find(' ')) : rule;
}

void collect(ByField& fields, const std::string& rule, const RuleFor& entry) {
  for (const ExplainedValue& value : explain(entry.rule)) {
    const DecidingField* field = deciding_field(value.key, start_of(entry.rule));
    if (field == nullptr) {
      continue;
    }
    Collected& collected = fields[field->key];
    const double score = gap_score(*field, value);
    collected.sum += score;
    const std::string name = giver(entry, rule, value.origin);
    RuleGap& gap = collected.by_name[name];
    if (gap.rules.empty()) {
      gap = {
          name, value.origin, rule_value(value), hundredths(score), {}, std::string{field->trial}};
    }
    gap.rules.push_back(rule);
  }
}

FieldGaps field_gaps(const DecidingField& field,
                     const Collected& collected,
                     double rules,
                     std::size_t shown) {
  FieldGaps found;
  found.key = field.key;
  found.name = field.name;
  found.weight = field.weight;
  found.why = field.why;
  found.score = hundredths(collected.sum / rules);
  for (const auto& [name, gap] : collected.by_name) {
    found.gaps.push_back(gap);
  }
  std::ranges::stable_sort(found.gaps, [](const RuleGap& a, const RuleGap& b) {
    return std::tuple(-a.score, b.rules.size()) < std::tuple(-b.score, a.rules.size());
  });
  if (found.gaps.size() > shown) {
    found.more = static_cast<int>(found.gaps.size() - shown);
    found.gaps.resize(shown);
  }
  return found;
}

} // namespace

RulesGapsAnswer rules_gaps(const species_rules::Catalogue& catalogue,
                           const RulesGapsRequest& request) {
  RulesGapsAnswer answer;
  answer.family = typed_family(catalogue, request.family);
  answer.in_hand = request.in_hand.has_value();
  ByField fields;
  for (const std::string& name : catalogue.rule_names()) {
    const RuleFor entry = *catalogue.rule_for(name).found;
    if ((answer.family.empty() || entry.family == answer.family) &&
        (!request.in_hand || request.in_hand->contains(name))) {
      ++answer.rules;
      collect(fields, name, entry);
    }
  }
  for (const DecidingField& field : deciding_fields()) {
    if (const auto found = fields.find(field.key); found != fields.end()) {
      answer.fields.push_back(
          field_gaps(field, found->second, answer.rules, request.all ? SIZE_MAX : gaps_shown));
    }
  }
  std::ranges::stable_sort(
      answer.fields, [](const FieldGaps& a, const FieldGaps& b) { return a.score > b.score; });
  if (!request.all && answer.fields.size() > fields_shown) {
    answer.more = static_cast<int>(answer.fields.size() - fields_shown);
    answer.fields.resize(fields_shown);
  }
  return answer;
}

} // namespace nightsow::planner
