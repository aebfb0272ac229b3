#include "climate/base/problem.hpp"

#include <utility>

namespace nightsow {

std::string to_text(const Problem& problem) {
  std::string text = problem.where;
  if (problem.line > 0) {
    text += ':' + std::to_string(problem.line);
    if (problem.column > 0) {
      text += ':' + std::to_string(problem.column);
    }
  }
  if (!text.empty()) {
    text += ": ";
  }
  text += problem.found;
  if (!problem.expected.empty()) {
    text += "; expected " + problem.expected;
  }
  if (!problem.remedy.empty()) {
    text += "; " + problem.remedy;
  }
  return text;
}

ProblemError::ProblemError(Problem problem)
    : std::runtime_error(to_text(problem)), problem_(std::move(problem)) {}

} // namespace nightsow
