#include "planner/render/rule_value_text.hpp"

#include "climate/base/celsius.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/plain_words.hpp"

#include <fmt/format.h>

#include <array>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

// A figure without its unit, as exact as the catalogue has it.
std::string figure_in(double value, const std::string& unit, const TextStyle& style) {
  if (unit == "share") {
    return fmt::format("{:.4g}", value * 100.0);
  }
  if (unit == "°C" && style.fahrenheit) {
    return whole_text(to_fahrenheit(Celsius{value}));
  }
  if ((unit == "°C d" || unit == "K") && style.fahrenheit) {
    return whole_text(to_fahrenheit_degrees(CelsiusDelta{value}));
  }
  return fmt::format("{:.6g}", value);
}

std::string unit_shown(const std::string& unit, const TextStyle& style) {
  if (unit == "share") {
    return "%";
  }
  if (style.fahrenheit && (unit == "K" || unit.starts_with("°C"))) {
    return unit == "°C d" ? "°F d" : "°F";
  }
  return unit;
}

std::string figure_with_unit(double value, const std::string& unit, const TextStyle& style) {
  std::string text = figure_in(value, unit, style);
  if (unit.empty()) {
    return text;
  }
  text += ' ' + unit_shown(unit, style);
  if (value == 1.0 && text.ends_with('s')) {
    text.pop_back();
  }
  return text;
}

} // namespace

std::string range_text(const RuleValue& value, const TextStyle& style) {
  if (value.low == value.high) {
    return {};
  }
  return fmt::format(" ({} to {})",
                     figure_in(value.low, value.unit, style),
                     figure_in(value.high, value.unit, style));
}

std::string rule_value_text(const RuleValue& value, const TextStyle& style) {
  if (!value.number) {
    return plain_word(value.key, value.word);
  }
  return figure_with_unit(value.value, value.unit, style) + range_text(value, style);
}

std::string range_end_text(const RuleValue& value, double end, const TextStyle& style) {
  return value.unit == "years" ? counted_text(end, "year")
                               : figure_with_unit(end, value.unit, style);
}

std::string trial_text(const RuleGap& gap, const TextStyle& style) {
  std::string text = gap.trial;
  const std::array<std::pair<std::string_view, double>, 2> ends{
      {{"{low}", gap.value.low}, {"{high}", gap.value.high}}};
  for (const auto& [mark, end] : ends) {
    if (const auto at = text.find(mark); at != std::string::npos) {
      text.replace(at, mark.size(), range_end_text(gap.value, end, style));
    }
  }
  return text;
}

} // namespace nightsow::planner
