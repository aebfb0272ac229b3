#include "planner/render/answer_text.hpp"
#include "planner/render/figure_text.hpp"
#include "planner/render/table.hpp"

#include <fmt/format.h>

namespace nightsow::planner {

namespace {

std::string file_line(const CheckedRuleFile& file) {
  return paragraph("",
                   fmt::format("{}: {}{}, {} species, {}.",
                               file.file,
                               file.family.empty() ? "" : file.family + ", ",
                               file.genera == 1 ? "1 genus" : fmt::format("{} genera", file.genera),
                               file.species,
                               counted_text(file.values, "value")));
}

std::string fault_text(const RuleFault& fault) {
  std::string text = fault.file;
  if (fault.line > 0) {
    text += fmt::format(", line {}, column {}", fault.line, fault.column);
  }
  if (!fault.pointer.empty()) {
    text += ", " + fault.pointer;
  }
  text += ": " + fault.found;
  if (!fault.expected.empty()) {
    text += "; expected " + fault.expected;
  }
  if (!fault.remedy.empty()) {
    text += "; " + fault.remedy;
  }
  return paragraph("  ", text);
}

} // namespace

std::string rules_check_text(const RulesCheckAnswer& answer, const TextStyle& style) {
  std::string text;
  for (const CheckedRuleFile& file : answer.files) {
    text += file_line(file);
  }
  if (answer.faults.empty()) {
    return text + "No faults.\n";
  }
  text += '\n' + heading_text(counted_text(static_cast<int>(answer.faults.size()), "fault"), style);
  for (const RuleFault& fault : answer.faults) {
    text += fault_text(fault);
  }
  return text;
}

} // namespace nightsow::planner
