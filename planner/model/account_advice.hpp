#pragma once

#include "planner/model/account.hpp"

#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// What to do with the pots of a sowing.
enum class NextStep {
  nothing_missing,
  too_early,          ///< hardly any would be up by now, whatever is wrong
  wait,               ///< more are on their way
  cool_it,            ///< sound seed waits for nights that will not come by themselves
  keep_for_next_limb, ///< sound seed that will not come in this season
  sow_again,          ///< little sound seed is left; the pots are kept all the same
  stop,               ///< hardly any is left, and it was pressed or had all its cool seasons
};

struct SowingSituation {
  int today = 0; ///< of the course
  int rest_begins = 0;
  int cool_seasons_had = 0;
  int cool_seasons_kept = 3; ///< so many before a pot may be emptied
};

inline constexpr int pressed_at_once = 5;

struct AccountAdvice {
  NextStep step = NextStep::wait;
  std::optional<int> wait_until; ///< of wait and too_early: a day of the course
  double how_sure = 1.0;         ///< weight of the cases that lead to this step by themselves
  bool press_five = false;       ///< pressing five recovered seeds would likely change the step
  std::vector<NextStep> by_firm; ///< of press_five: the step by how many of them are firm
};

/// The step that follows from what is believed of the missing seeds, and whether the one cheap
/// fact, five seeds pressed, would change it in at least a fifth of cases. What counts as few is
/// judgement (common practice, no source): under one seedling still to come; under half a sound
/// seed left.
[[nodiscard]] AccountAdvice advice_for(std::span<const SeedsOnDay> cases,
                                       const SowingRecord& record,
                                       const Account& account,
                                       const SowingSituation& situation);

} // namespace nightsow::planner
