#include "planner/render/answer_text.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/rule_value_text.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <vector>

namespace nightsow::planner {

namespace {

constexpr std::size_t names_shown = 2;

std::string holds_for(const RuleGap& gap) {
  if (gap.rules.size() == 1 && gap.rules.front() == gap.name) {
    return "itself";
  }
  std::vector<std::string> names = gap.rules;
  names.resize(std::min(names.size(), names_shown));
  const std::size_t more = gap.rules.size() - names.size();
  const std::string text = fmt::format("{}", fmt::join(names, ", "));
  return more == 0 ? text : fmt::format("{} and {} more", text, more);
}

std::string who(const RuleGap& gap) {
  return gap.level == "family" ? fmt::format("{} (family)", gap.name) : gap.name;
}

std::string field_text(const FieldGaps& field, const TextStyle& style) {
  std::string text =
      '\n' + heading_text(
                 fmt::format("{} (weighs {} of 5)", with_capital(field.name), field.weight), style);
  text += paragraph("  ", field.why);
  if (field.gaps.empty()) {
    return text;
  }
  const RuleGap& worst = field.gaps.front();
  const bool by_its_range = worst.trial.find('{') != std::string::npos;
  text += paragraph(
      "  Try: ",
      trial_text(worst, style) +
          (by_its_range ? fmt::format(" (The ends of the range of {}.)", worst.name) : ""));
  std::vector<TableRow> rows;
  for (const auto& gap : field.gaps) {
    rows.push_back({{who(gap),
                     rule_value_text(gap.value, style),
                     plain_word("evidence", gap.value.evidence),
                     holds_for(gap)},
                    ""});
  }
  const std::vector<Column> columns{{"Given by", Align::left, true},
                                    {"Taken now", Align::left, true},
                                    {"Known from", Align::left, true},
                                    {"Holds for", Align::left, true}};
  text += table_text(columns, rows, style, 4);
  return field.more == 0 ? text : text + fmt::format("    and {} more\n", field.more);
}

} // namespace

std::string rules_gaps_text(const RulesGapsAnswer& answer, const TextStyle& style) {
  if (answer.rules == 0) {
    return "No rules.\n";
  }
  std::string text = paragraph(
      "",
      fmt::format("What is known worst of what decides most, in {}{}{}. Each trial is one that a "
                  "grower can make; counts of both halves are worth more than a verdict.",
                  counted_text(answer.rules, "rule"),
                  answer.family.empty() ? "" : " of " + answer.family,
                  answer.in_hand ? " of the packets in hand" : ""));
  for (const auto& field : answer.fields) {
    text += field_text(field, style);
  }
  if (answer.more > 0) {
    text += '\n' + paragraph("", fmt::format("And {}: --all", counted_text(answer.more, "field")));
  }
  return text;
}

} // namespace nightsow::planner
