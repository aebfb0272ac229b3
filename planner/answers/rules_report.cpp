#include "planner/answers/rules_report.hpp"

#include "planner/answers/asked_kinds.hpp"
#include "species-rules/explain.hpp"

#include <set>

namespace nightsow::planner {

namespace {

using species_rules::Catalogue;
using species_rules::Estimate;
using species_rules::RuleFor;

std::optional<double> value_of(const std::optional<Estimate>& estimate) {
  return estimate ? std::optional{estimate->value} : std::nullopt;
}

RuleListLine list_line(const std::string& name, const RuleFor& entry) {
  const species_rules::Rule& rule = entry.rule;
  RuleListLine line;
  line.rule = name;
  line.family = entry.family;
  line.growth = rule.gate.growth ? word_of(rule.gate.growth->value) : "";
  line.start = word_of(start_of(rule));
  if (start_of(rule) == species_rules::Start::cool) {
    line.night_limit_c = value_of(rule.gate.night_limit_c);
  }
  if (start_of(rule) == species_rules::Start::hot) {
    line.warm_night_c = value_of(rule.gate.warm_night_c);
  }
  line.half_life_years = value_of(rule.seed.half_life_years);
  return line;
}

} // namespace

RulesListAnswer list_rules(const Catalogue& catalogue) {
  RulesListAnswer answer;
  for (const std::string& name : catalogue.rule_names()) {
    answer.rules.push_back(list_line(name, *catalogue.rule_for(name).found));
  }
  return answer;
}

RuleShowAnswer show_rule(const Catalogue& catalogue, std::string_view taxon) {
  const RuleFor rule = typed_rule(catalogue, taxon);
  RuleShowAnswer answer;
  answer.taxon = taxon;
  answer.accepted = rule.accepted;
  answer.rule = rule.rule_name;
  answer.family = rule.family;
  answer.by_synonym = rule.by_synonym;
  std::set<std::string> named;
  for (species_rules::ExplainedValue& value : explain(rule.rule)) {
    const species_rules::Source* source = catalogue.source(value.source);
    if (source != nullptr && named.insert(source->id).second) {
      answer.sources.push_back(
          {source->id, source->kind, source->author, source->title, source->year});
    }
    answer.values.push_back({std::move(value.key),
                             std::move(value.unit),
                             std::move(value.meaning),
                             value.number,
                             value.value,
                             value.low,
                             value.high,
                             std::move(value.word),
                             std::move(value.evidence),
                             std::move(value.source),
                             std::move(value.origin)});
  }
  return answer;
}

} // namespace nightsow::planner
