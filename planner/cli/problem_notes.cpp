#include "planner/cli/problem_notes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <span>
#include <string_view>
#include <vector>

namespace nightsow::planner {

namespace {

std::string_view word_for(Severity severity) {
  switch (severity) {
  case Severity::note:
    return "note";
  case Severity::warning:
    return "warning";
  case Severity::error:
    break;
  }
  return "error";
}

/// Those of at least that severity, worst first, otherwise in their order.
std::vector<Problem> worst_first(std::span<const Problem> problems, Severity least) {
  std::vector<Problem> chosen;
  std::copy_if(problems.begin(),
               problems.end(),
               std::back_inserter(chosen),
               [least](const Problem& problem) { return problem.severity >= least; });
  std::stable_sort(chosen.begin(), chosen.end(), [](const Problem& a, const Problem& b) {
    return a.severity > b.severity;
  });
  return chosen;
}

/// Where all of these are listed: faults of a grower's own rules are not told by the climate's.
std::string_view lists_them(std::span<const Problem> problems) {
  const auto of_rules = [](const Problem& problem) { return problem.where.starts_with("rules/"); };
  return std::ranges::all_of(problems, of_rules)
             ? "`nightsow rules check rules/*.json`"
             : "`nightsow climate --all`, which lists those of all files,";
}

} // namespace

std::string problem_line(const Problem& problem) {
  return fmt::format("{}: {}\n", word_for(problem.severity), to_text(problem));
}

std::string note_line(std::string_view text, bool quiet) {
  return quiet ? "" : fmt::format("note: {}\n", text);
}

std::string problem_notes(std::span<const Problem> problems, bool quiet, std::size_t shown) {
  const auto chosen = worst_first(problems, quiet ? Severity::error : Severity::note);
  std::string notes;
  for (std::size_t i = 0; i < std::min(shown, chosen.size()); ++i) {
    notes += problem_line(chosen[i]);
  }
  if (chosen.size() > shown) {
    notes += fmt::format("and {} more; run with --json or {} to see them\n",
                         chosen.size() - shown,
                         lists_them(std::span{chosen}.subspan(shown)));
  }
  return notes;
}

bool has_faults(std::span<const Problem> problems) {
  return std::any_of(problems.begin(), problems.end(), [](const Problem& problem) {
    return problem.severity >= Severity::warning;
  });
}

std::string strict_notes(std::span<const Problem> problems, bool quiet) {
  std::string notes;
  if (!quiet) {
    for (const Problem& problem : worst_first(problems, Severity::note)) {
      notes += problem_line(problem);
    }
  }
  return notes + "error: no answer, because --strict takes no faults in the garden's files\n";
}

} // namespace nightsow::planner
