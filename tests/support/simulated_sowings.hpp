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

/// How often ranges held what was true, over causes that may be of some weight or of none: those
/// where no single number of seeds is likelier than one half.
struct Held {
  int ranges = 0;
  double eight_in_ten = 0.0; ///< of the middle 80 %; a number of seeds that lies across the end of
                             ///< the range counts as far as its chance lies within
  double half = 0.0;         ///< the same of the middle 50 %
  double both_ends = 0.0;    ///< of the stated ranges, their ends counted: more than 80 %
};

void add_held(const planner::Account& account, const SimulatedSowing& truth, Held& held);

/// The same of one cause alone; nothing where its range tells nothing.
void add_held(const planner::CauseShare& cause, int missing, int truth, Held& held);

} // namespace nightsow::support
