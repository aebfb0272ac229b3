#pragma once

#include "planner/answers/plan_trial.hpp"
#include "planner/answers/review.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace nightsow::planner {

// The commands that ask the record.

struct LearnCommand {
  std::vector<std::string> taxa;
  bool write = false;                        ///< the files of rules that are offered
  std::filesystem::path share;               ///< a file to write counts to; empty: none
  std::vector<std::filesystem::path> others; ///< counts of other gardens
};

struct LearnTrialCommand {
  TrialRequest request;
};

struct ReviewCommand {
  ReviewRequest request;
};

} // namespace nightsow::planner
