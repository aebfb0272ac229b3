#include "planner/cli/about_rules.hpp"

#include "planner/cli/problem_notes.hpp"

#include <filesystem>
#include <utility>

namespace nightsow::planner {

RulesInGarden rules_here(const CommonOptions& common) {
  return rules_in_garden(common.garden.empty() ? std::filesystem::path{"."} : common.garden);
}

Outcome outcome_of(std::string answer, const RulesInGarden& rules, const CommonOptions& common) {
  if (common.strict && has_faults(rules.problems)) {
    return {"", strict_notes(rules.problems, common.quiet), Ending::refused};
  }
  return {std::move(answer), problem_notes(rules.problems, common.quiet), Ending::answered};
}

} // namespace nightsow::planner
