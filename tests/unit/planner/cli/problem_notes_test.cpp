#include "planner/cli/problem_notes.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

namespace nightsow::planner {
namespace {

Problem problem(Severity severity, std::string found) {
  return {severity, "f.csv", 3, 0, std::move(found), "", ""};
}

TEST(ProblemNotes, TheWorstComesFirstOtherwiseTheOrderStays) {
  const std::vector<Problem> problems{problem(Severity::note, "a"),
                                      problem(Severity::warning, "b"),
                                      problem(Severity::error, "c"),
                                      problem(Severity::warning, "d")};
  EXPECT_EQ(problem_notes(problems, false),
            "error: f.csv:3: c\nwarning: f.csv:3: b\nwarning: f.csv:3: d\nnote: f.csv:3: a\n");
}

TEST(ProblemNotes, QuietLeavesErrorsOnly) {
  const std::vector<Problem> problems{
      problem(Severity::note, "a"), problem(Severity::warning, "b"), problem(Severity::error, "c")};
  EXPECT_EQ(problem_notes(problems, true), "error: f.csv:3: c\n");
}

TEST(ProblemNotes, FiveAreShownAndTheRestIsCounted) {
  const std::vector<Problem> five(5, problem(Severity::warning, "x"));
  EXPECT_EQ(problem_notes(five, false).find("more"), std::string::npos);
  const std::vector<Problem> seven(7, problem(Severity::warning, "x"));
  EXPECT_NE(problem_notes(seven, false).find("and 2 more;"), std::string::npos);
}

TEST(ProblemNotes, NothingWrongIsNothingSaid) {
  EXPECT_EQ(problem_notes({}, false), "");
}

TEST(Strict, TakesNotesButNoWarning) {
  EXPECT_FALSE(has_faults(std::vector{problem(Severity::note, "a")}));
  EXPECT_TRUE(has_faults(std::vector{problem(Severity::warning, "a")}));
  EXPECT_TRUE(has_faults(std::vector{problem(Severity::error, "a")}));
}

TEST(Strict, ListsEveryProblemAndSaysWhyThereIsNoAnswer) {
  const std::vector<Problem> seven(7, problem(Severity::warning, "x"));
  const std::string notes = strict_notes(seven, false);
  EXPECT_EQ(std::count(notes.begin(), notes.end(), '\n'), 8);
  EXPECT_EQ(strict_notes(seven, true),
            "error: no answer, because --strict takes no faults in the garden's files\n");
}

} // namespace
} // namespace nightsow::planner
