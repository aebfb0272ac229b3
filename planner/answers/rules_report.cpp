#include "planner/answers/rules_report.hpp"

#include "climate/base/nearest_name.hpp"
#include "climate/base/problem.hpp"
#include "planner/answers/asked_kinds.hpp"
#include "planner/answers/deciding_fields.hpp"
#include "planner/answers/rule_value.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "species-rules/explain.hpp"
#include "species-rules/older_families.hpp"
#include "species-rules/ripeness.hpp"
#include "species-rules/seed_moisture.hpp"
#include "species-rules/viability.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::Catalogue;
using species_rules::Choice;
using species_rules::Estimate;
using species_rules::Evidence;
using species_rules::ExplainedValue;
using species_rules::RuleFor;

std::optional<double> value_of(const std::optional<Estimate>& estimate) {
  return estimate ? std::optional{estimate->value} : std::nullopt;
}

template <class E> std::string word_of_choice(const std::optional<Choice<E>>& choice) {
  return choice ? std::string{word_of(choice->value)} : std::string{};
}

template <class E> bool asked(const std::optional<E>& wanted, const std::optional<Choice<E>>& is) {
  return !wanted || (is && is->value == *wanted);
}

std::string in_small_letters(std::string_view text) {
  std::string small{text};
  std::ranges::transform(
      small, small.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? char(c - 'A' + 'a') : c; });
  return small;
}

bool has_text(const RuleListLine& line, std::string_view text) {
  const std::string wanted = in_small_letters(text);
  const auto holds = [&](const std::string& name) {
    return in_small_letters(name).find(wanted) != std::string::npos;
  };
  return holds(line.rule) || std::ranges::any_of(line.older_names, holds);
}

/// The values of a rule that decide much.
std::vector<ExplainedValue> deciding_values(const species_rules::Rule& rule) {
  std::vector<ExplainedValue> values = explain(rule);
  std::erase_if(values, [&](const ExplainedValue& value) {
    const DecidingField* field = deciding_field(value.key, start_of(rule));
    return field == nullptr || field->weight < deciding_weight;
  });
  return values;
}

bool is_weaker(const ExplainedValue& value, Evidence than) {
  // Evidence stands best first.
  return species_rules::from_word<Evidence>(value.evidence).value_or(Evidence::memory) > than;
}

RuleListLine list_line(const std::string& name, const RuleFor& entry) {
  const species_rules::Rule& rule = entry.rule;
  RuleListLine line;
  line.rule = name;
  line.family = entry.family;
  line.growth = word_of_choice(rule.gate.growth);
  line.start = word_of(start_of(rule));
  if (start_of(rule) == species_rules::Start::cool) {
    line.night_limit_c = value_of(rule.gate.night_limit_c);
  }
  if (start_of(rule) == species_rules::Start::hot) {
    line.warm_night_c = value_of(rule.gate.warm_night_c);
  }
  line.half_life_years = value_of(rule.seed.half_life_years);
  line.seed_size = word_of_choice(rule.seed.size);
  line.mat = word_of_choice(rule.sowing.mat);
  line.first_rest = word_of_choice(rule.seedling.first_rest);
  return line;
}

void count_ground(RuleListLine& line,
                  const species_rules::Rule& rule,
                  const std::optional<Evidence>& than) {
  const std::vector<ExplainedValue> values = deciding_values(rule);
  line.deciding = static_cast<int>(values.size());
  if (than) {
    line.weak = static_cast<int>(std::ranges::count_if(
        values, [&](const ExplainedValue& value) { return is_weaker(value, *than); }));
  }
}

bool is_asked(const RulesListRequest& request, const RuleListLine& line, const RuleFor& entry) {
  const species_rules::Rule& rule = entry.rule;
  return (request.family.empty() || line.family == request.family) &&
         (!request.in_hand || request.in_hand->contains(line.rule)) &&
         (!request.start || start_of(rule) == *request.start) &&
         asked(request.growth, rule.gate.growth) && asked(request.mat, rule.sowing.mat) &&
         asked(request.seed_size, rule.seed.size) &&
         asked(request.first_rest, rule.seedling.first_rest) &&
         (!line.weak || *line.weak > a_few) && has_text(line, request.text);
}

void count_lines(RulesListAnswer& answer) {
  std::set<std::string> families;
  for (const RuleListLine& line : answer.rules) {
    families.insert(line.family);
  }
  answer.families = static_cast<int>(families.size());
  for (const auto& entry : species_rules::Words<species_rules::Start>::table) {
    const std::string_view word = entry.second;
    const auto rules =
        std::ranges::count_if(answer.rules, [&](const auto& line) { return line.start == word; });
    if (rules > 0) {
      answer.starts.push_back({std::string{word}, static_cast<int>(rules)});
    }
  }
}

RuleGround ground_of(const species_rules::Rule& rule) {
  RuleGround ground;
  std::vector<std::pair<double, std::string>> worst;
  for (const ExplainedValue& value : deciding_values(rule)) {
    ++ground.deciding;
    ground.experiment += value.evidence == word_of(Evidence::experiment) ? 1 : 0;
    ground.institution += value.evidence == word_of(Evidence::institution) ? 1 : 0;
    ground.grower += value.evidence == word_of(Evidence::grower) ? 1 : 0;
    ground.less += is_weaker(value, Evidence::grower) ? 1 : 0;
    if (is_weaker(value, Evidence::grower)) {
      const DecidingField& field = *deciding_field(value.key, start_of(rule));
      worst.emplace_back(gap_score(field, value), field.name);
    }
  }
  std::ranges::stable_sort(worst, [](const auto& a, const auto& b) { return a.first > b.first; });
  for (std::size_t i = 0; i < worst.size() && i < 3; ++i) {
    ground.weakest.push_back(worst[i].second);
  }
  return ground;
}

std::optional<RipeningDays> ripening_days(const species_rules::Rule& rule) {
  const auto& sum = rule.seed.after_ripening_c_d;
  if (!sum || start_of(rule) == species_rules::Start::at_once) {
    return std::nullopt;
  }
  const double base_c =
      rule.seed.after_ripening_base_c.value_or(species_rules::usual_ripening_base_c()).value;
  const double a_day = species_rules::ripening_c_d_a_day(
      species_rules::room_c, species_rules::room_humidity, base_c);
  return RipeningDays{
      sum->value / a_day, sum->low / a_day, sum->high / a_day, species_rules::room_c};
}

void add_names(RuleShowAnswer& answer, const Catalogue& catalogue) {
  const bool species = answer.accepted.find(' ') != std::string::npos;
  answer.own_rule = !species || answer.rule.find(' ') != std::string::npos;
  answer.older_names = catalogue.older_names(species ? answer.accepted : answer.rule);
  for (const std::string& name : catalogue.rule_names()) {
    if (!species && name.starts_with(answer.rule + ' ')) {
      answer.species_rules.push_back(name);
    }
  }
}

// A species of which the catalogue has a caution or a note alone is still known as its genus is.
bool says_more_than_remarks(const RuleShowAnswer& answer) {
  const bool is_species = answer.accepted.find(' ') != std::string::npos;
  return !is_species || std::ranges::any_of(answer.values, [](const RuleValue& value) {
    return value.key != "notes" && value.key != "cautions" &&
           (value.origin == word_of(species_rules::Origin::species) ||
            value.origin == word_of(species_rules::Origin::grower));
  });
}

} // namespace

std::string typed_family(const Catalogue& catalogue, std::string_view typed) {
  std::set<std::string> known;
  for (const std::string& name : catalogue.rule_names()) {
    known.insert(catalogue.rule_for(name).found->family);
  }
  for (const auto& [older, family] : species_rules::older_families) {
    if (in_small_letters(older) == in_small_letters(typed)) {
      return std::string(family);
    }
  }
  for (const std::string& family : known) {
    if (typed.empty() || in_small_letters(family) == in_small_letters(typed)) {
      return typed.empty() ? std::string{} : family;
    }
  }
  const auto nearest = nearest_name(typed, std::vector<std::string>(known.begin(), known.end()));
  throw UsageError({Severity::error,
                    "--family",
                    0,
                    0,
                    "no family called \"" + std::string(typed) + "\"",
                    "a family of the catalogue",
                    nearest ? "did you mean " + nearest->name + "?" : "see `nightsow rules list`"});
}

RulesListAnswer list_rules(const Catalogue& catalogue, const RulesListRequest& request) {
  RulesListRequest wanted = request;
  wanted.family = typed_family(catalogue, request.family);
  RulesListAnswer answer;
  answer.in_hand = request.in_hand.has_value();
  answer.evidence_below =
      request.evidence_below ? word_of(*request.evidence_below) : std::string_view{};
  for (const std::string& name : catalogue.rule_names()) {
    const RuleFor entry = *catalogue.rule_for(name).found;
    RuleListLine line = list_line(name, entry);
    line.older_names = catalogue.older_names(name);
    count_ground(line, entry.rule, request.evidence_below);
    ++answer.of;
    if (is_asked(wanted, line, entry)) {
      answer.rules.push_back(std::move(line));
    }
  }
  count_lines(answer);
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
  add_names(answer, catalogue);
  answer.ground = ground_of(rule.rule);
  answer.half_ripe = ripening_days(rule.rule);
  std::set<std::string> named;
  for (const ExplainedValue& value : explain(rule.rule, rule.otherwise)) {
    const species_rules::Source* source = catalogue.source(value.source);
    if (source != nullptr && named.insert(source->id).second) {
      answer.sources.push_back(
          {source->id, source->kind, source->author, source->title, source->year});
    }
    if (value.origin == word_of(species_rules::Origin::grower) && value.key != "notes" &&
        value.key != "cautions") {
      answer.yours.push_back(value.key);
    }
    answer.values.push_back(rule_value(value));
  }
  answer.own_rule = answer.own_rule && says_more_than_remarks(answer);
  return answer;
}

} // namespace nightsow::planner
