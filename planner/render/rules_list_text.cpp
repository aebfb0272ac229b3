#include "planner/render/answer_text.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"
#include "planner/render/table.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <array>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

// Shorter than elsewhere: a rule should stand on one line.
constexpr std::array<std::pair<std::string_view, std::string_view>, 4> starts{
    {{"cool", "cool nights"}, {"hot", "heat"}, {"any", "any mild time"}, {"at_once", "at once"}}};

std::string start_text(const std::string& word) {
  for (const auto& [start, text] : starts) {
    if (start == word) {
      return std::string{text};
    }
  }
  return word;
}

std::string nights_cell(const RuleListLine& rule, const TextStyle& style) {
  if (rule.night_limit_c) {
    return "to " + temperature_text(*rule.night_limit_c, style);
  }
  return rule.warm_night_c ? "from " + temperature_text(*rule.warm_night_c, style) : "";
}

std::string growth_cell(const std::string& growth) {
  return growth == "opportunist" ? "when mild" : plain_word("growth", growth);
}

/// Columns that not every list needs.
struct Shown {
  bool family = false; ///< there are several
  bool weakness = false;
};

TableRow list_row(const RuleListLine& rule, const Shown& shown, const TextStyle& style) {
  TableRow row{{rule.rule,
                growth_cell(rule.growth),
                start_text(rule.start),
                nights_cell(rule, style),
                plain_word("seed_size", rule.seed_size),
                rule.half_life_years ? counted_text(*rule.half_life_years, "year") : ""},
               ""};
  if (shown.family) {
    row.cells.insert(row.cells.begin() + 1, rule.family);
  }
  if (shown.weakness) {
    row.cells.push_back(fmt::format("{} of {}", rule.weak.value_or(0), rule.deciding));
  }
  return row;
}

std::string foot(const RulesListAnswer& answer) {
  std::vector<std::string> counts;
  for (const auto& count : answer.starts) {
    counts.push_back(fmt::format("{} {}", start_text(count.start), count.rules));
  }
  std::string text = fmt::format("{} of {}{}",
                                 answer.rules.size(),
                                 counted_text(answer.of, "rule"),
                                 answer.in_hand ? ", of the packets in hand" : "");
  if (!answer.rules.empty()) {
    text += fmt::format(", {}: {}",
                        answer.families == 1 ? "all " + answer.rules.front().family
                                             : fmt::format("in {} families", answer.families),
                        fmt::join(counts, ", "));
  }
  text += '.';
  if (!answer.evidence_below.empty()) {
    text += fmt::format(" Weaker: so many of the values that decide much stand on weaker ground "
                        "than {}.",
                        plain_word("evidence", answer.evidence_below));
  }
  return paragraph("", text);
}

} // namespace

std::string rules_list_text(const RulesListAnswer& answer, const TextStyle& style) {
  const Shown shown{answer.families > 1, !answer.evidence_below.empty()};
  std::vector<TableRow> rows;
  for (const auto& rule : answer.rules) {
    rows.push_back(list_row(rule, shown, style));
  }
  std::vector<Column> columns{
      {"Rule", Align::left, true}, {"Grows"}, {"Started by"}, {"Nights"}, {"Seed"}, {"Half-life"}};
  if (shown.family) {
    columns.insert(columns.begin() + 1, {"Family", Align::left, true});
  }
  if (shown.weakness) {
    columns.push_back({"Weaker"});
  }
  return rows.empty() ? foot(answer) : table_text(columns, rows, style, 0) + '\n' + foot(answer);
}

} // namespace nightsow::planner
