#pragma once

#include "planner/model/account.hpp"
#include "species-rules/catalogue.hpp"

#include <map>
#include <optional>
#include <random>
#include <utility>
#include <vector>

namespace nightsow::support {

/// A sowing whose seeds' fates are known.
struct SimulatedSowing {
  planner::SowingRecord record;
  std::vector<int> missing; ///< seeds, in the order of planner::all_causes
  int water = 0;
  int today = 0;
};

/// Sowings of one kind in one invented season, each with a truth drawn within the ranges of the
/// rule: first water, looks, how many seeds and pots differ. The truths are other draws of the rule
/// than those that the account weighs. The same seed number gives the same sowings.
class SimulatedSowings {
public:
  SimulatedSowings(const species_rules::RuleFor& kind, unsigned seed_number);

  [[nodiscard]] SimulatedSowing next();

  /// What the account weighs.
  [[nodiscard]] const std::vector<planner::SeedsOnDay>& cases(int water, int today);

private:
  planner::SeedCourse course_;
  planner::SeasonDays season_;
  std::vector<species_rules::SeedParameters> truths_;
  std::vector<species_rules::SeedParameters> draws_;
  std::vector<planner::SeedSeason> truth_seasons_;
  std::vector<planner::SeedSeason> seasons_;
  std::map<std::pair<int, int>, std::vector<planner::SeedsOnDay>> cases_;
  std::mt19937 random_;
};

/// How often the 80 % ranges of causes held what was true.
struct Held {
  int ranges = 0;
  double held = 0.0;      ///< both ends counted, so more than 80 % where seeds are few
  int wide = 0;           ///< ranges of eight seeds or more
  double wide_held = 0.0; ///< of these, ends counted half
};

void add_held(const planner::Account& account, const SimulatedSowing& truth, Held& held);

} // namespace nightsow::support
