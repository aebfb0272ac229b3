#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/answers/reason.hpp"
#include "planner/answers/rules_answer.hpp"
#include "planner/answers/spread.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// Chances of a seed, each with its range.
struct SeedChances {
  NumberSpread alive;
  NumberSpread ripe;
  NumberSpread alive_and_ripe;
};

/// A way to keep seed from today on, and what it leads to in a year.
struct KeepingAnswer {
  std::string way;              ///< warm_dry, cool_dry, warm_then_cool
  std::optional<int> warm_days; ///< of warm_then_cool: so long, then cool
  double warm_c = 0.0;          ///< of the ways that begin warm
  double cool_c = 0.0;          ///< of those that end cool
  SeedChances in_a_year;
  bool best = false;
};

/// A way to let seed that dies dry wait, and what it leaves alive.
struct WaitAnswer {
  std::string way; ///< cool_moist, cool_dry, warm_dry
  NumberSpread after_two_weeks;
  NumberSpread after_eight_weeks;
  bool best = false;
};

/// What is to be expected of seed of some age and store, and how to keep it on.
struct SeedOutlookAnswer {
  std::string taxon; ///< as asked for
  std::string accepted;
  std::string rule;
  std::string family;
  bool by_synonym = false;
  int age_days = 0;
  double age_years = 0.0;
  std::string stored; ///< as asked for; empty: not told
  bool store_known = true;
  std::optional<TestAnswer> tested;
  SeedChances today;
  std::optional<double> comes_up; ///< of living ripe seed left whole: share of its first season
  /// The same, smoked, soaked or nicked first; empty: not counted, or no such treatment helps.
  std::optional<double> comes_up_treated;
  std::vector<std::string> treatments; ///< those that help: smoke, leach, scarify
  std::string advice;              ///< of the rule: warm_dry, cool_dry, warm_then_cool, sow_at_once
  std::vector<KeepingAnswer> ways; ///< for a year; empty: it dies dry and cannot be kept
  std::vector<WaitAnswer> waits;   ///< for weeks, of seed that dies dry; empty: see `ways`
  double lost_in_a_year = 0.0;     ///< of living seed, in the best of the ways
  std::vector<Reason> reasons;
  RuleShowAnswer grounds; ///< of the rule, only the values that this stands on, and their sources
};

} // namespace nightsow::planner
