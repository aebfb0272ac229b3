#include "climate/readers/quality_rules.hpp"

#include "climate/base/csv.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/row_reader.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::climate {

namespace {

using Fields = std::span<const std::string_view>;

bool holds_mark(std::string_view marks, std::string_view mark) {
  if (mark.empty()) {
    return false;
  }
  if (marks == any_mark) {
    return true;
  }
  const std::vector<std::string_view> list = split_at_blanks(marks);
  return std::find(list.begin(), list.end(), mark) != list.end();
}

bool must_not_be_used(const QualityRule& rule, std::string_view mark) {
  const auto number = rule.at_most > 0 ? read_whole(mark) : std::nullopt;
  return holds_mark(rule.not_used, mark) || (number && *number > rule.at_most);
}

std::string_view mark_in(Fields fields, std::optional<std::size_t> column, std::size_t place) {
  if (!column || *column >= fields.size()) {
    return {};
  }
  const std::string_view field = trimmed(fields[*column]);
  if (place == 0) {
    return field;
  }
  return place <= field.size() ? field.substr(place - 1, 1) : std::string_view{};
}

std::optional<std::size_t> quality_column(const QualityRule& rule,
                                          const PlacedColumns& columns,
                                          std::optional<std::size_t> value) {
  if (!value) {
    return std::nullopt;
  }
  if (rule.behind == 0) {
    return column_named(columns.names, rule.column);
  }
  const std::size_t at = *value + rule.behind;
  if (at >= columns.names.size() ||
      !column_named(std::span(columns.names).subspan(at, 1), rule.column)) {
    return std::nullopt;
  }
  return at;
}

std::string counted(std::size_t count, std::string_view what, std::string_view verdict) {
  return std::to_string(count) + (count == 1 ? " value is " : " values are ") + std::string(what) +
         ": " + std::string(verdict);
}

} // namespace

std::vector<PlacedRule> place_rules(const TableFormat& format, const PlacedColumns& columns) {
  std::vector<PlacedRule> rules;
  for (const QualityRule& rule : format.quality) {
    if (!rule.column.empty()) {
      rules.push_back({&rule,
                       quality_column(rule, columns, columns.night),
                       quality_column(rule, columns, columns.day)});
    }
  }
  return rules;
}

float judged(std::vector<PlacedRule>& rules,
             Readings& readings,
             std::span<const std::string_view> fields,
             const Reading& row,
             Element element) {
  const bool night = element == Element::night;
  float value = night ? row.night_c : row.day_c;
  for (PlacedRule& placed : rules) {
    const QualityRule& rule = *placed.rule;
    const std::string_view mark = mark_in(
        fields, night ? placed.night : placed.day, night ? rule.night_place : rule.day_place);
    if (std::isnan(value) || mark.empty()) {
      continue;
    }
    if (must_not_be_used(rule, mark)) {
      ++placed.not_used;
      value = unless_flagged(readings, value, mark, row.date, row.line);
    } else if (holds_mark(rule.kept, mark)) {
      ++placed.kept;
    }
  }
  return value;
}

void say_quality(const std::vector<PlacedRule>& rules, Readings& readings) {
  for (const PlacedRule& placed : rules) {
    if (placed.not_used > 0) {
      add_note(readings, counted(placed.not_used, placed.rule->why_not, "not used"), "");
    }
    if (placed.kept > 0) {
      add_note(readings, counted(placed.kept, placed.rule->what_kept, "used all the same"), "");
    }
  }
}

} // namespace nightsow::climate
