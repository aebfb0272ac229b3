#include "climate/base/problem.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow {
namespace {

TEST(Problem, IsOneLineWithPlaceFindingExpectationAndRemedy) {
  const Problem problem{Severity::error, "a.csv", 12, 4, "'x'", "a number", "correct it"};
  EXPECT_EQ(to_text(problem), "a.csv:12:4: 'x'; expected a number; correct it");
}

TEST(Problem, LeavesOutWhatIsNotKnown) {
  EXPECT_EQ(to_text({Severity::note, "a.csv", 12, 0, "late", "", ""}), "a.csv:12: late");
  EXPECT_EQ(to_text({Severity::note, "a.csv", 0, 4, "late", "", ""}), "a.csv: late");
  EXPECT_EQ(to_text({Severity::note, "", 0, 0, "late", "", "wait"}), "late; wait");
}

TEST(Problem, ErrorsCarryTheirProblemAndItsText) {
  const InputError error{{Severity::error, "a.csv", 1, 0, "bad", "good", ""}};
  EXPECT_EQ(error.problem().expected, "good");
  EXPECT_EQ(std::string(error.what()), "a.csv:1: bad; expected good");
}

TEST(Problem, TheThreeErrorsShareOneBaseAndNothingElse) {
  static_assert(std::is_base_of_v<ProblemError, InputError>);
  static_assert(std::is_base_of_v<ProblemError, UsageError>);
  static_assert(std::is_base_of_v<ProblemError, StorageError>);
  EXPECT_THROW(throw UsageError(Problem{}), ProblemError);
}

} // namespace
} // namespace nightsow
