#pragma once

#include "planner/answers/heads.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

// What the record says of how seed comes in this garden. Shares 0..1, rounded to 0.001; days after
// first water.

/// The germination share of the garden, a family, a genus or a taxon, leaned on its relatives.
struct LearnedShareLine {
  std::string level; ///< garden, family, genus, taxon
  std::string name;  ///< empty of the garden
  int sowings = 0;
  int came = 0;
  int sown = 0;
  double share = 0.0;
  double low = 0.0; ///< 80 %
  double high = 0.0;
  double leaned = 0.0; ///< part of it that comes from relatives
};

/// After the look on one day, by the look on another.
struct DaysBetween {
  int after = 0;
  int by = 0;
};

struct LearnedTimesLine {
  std::string taxon;
  int sowings = 0;
  int seeds = 0;
  int came = 0;
  double came_share = 0.0; ///< by Kaplan and Meier: what is not up has not failed
  double low = 0.0;        ///< 95 %
  double high = 0.0;
  std::optional<DaysBetween> first;
  std::optional<DaysBetween> half;      ///< of those that came
  std::optional<DaysBetween> half_sown; ///< of all sown; null: fewer than half came
};

struct TrialArmLine {
  std::string arm;
  int sowings = 0;
  int came = 0;
  int sown = 0;
  double low = 0.0; ///< Wilson, 95 %
  double high = 0.0;
};

/// Two arms of a trial. The better one is `a`.
struct TrialPairLine {
  std::string a;
  std::string b;
  double difference = 0.0; ///< share of a less that of b
  double low = 0.0;        ///< Newcombe, 95 %
  double high = 0.0;
  double chance = 1.0; ///< of counts no likelier, were the arms alike: Fisher's exact test
  bool settled = false;
  std::optional<int> more_seeds_an_arm; ///< 0: settled; null: too many to be worth it
};

struct LearnedTrialLine {
  std::string trial;
  std::vector<std::string> taxa;
  std::vector<TrialArmLine> arms;
  std::vector<TrialPairLine> pairs; ///< the best arm against each other one; empty: one arm only
  std::optional<double> chance;     ///< of three arms or more: exact test of all
};

/// What a year of age, or another bench, changes.
struct LearnedEffectLine {
  std::string of;      ///< age, bench
  std::string bench;   ///< of a bench
  std::string against; ///< the bench it is compared with
  std::string refused; ///< too_few_sowings, nothing_differs; empty: told below
  int sowings = 0;
  double usual_share = 0.0;
  double share = 0.0; ///< of seed that would come at the usual share otherwise
  double low = 0.0;   ///< 95 %
  double high = 0.0;
  bool settled = false;
};

struct LearnedNumber {
  double value = 0.0;
  double low = 0.0; ///< 80 %
  double high = 0.0;
};

/// The garden's own night limit for the kinds that share a rule.
struct LearnedLimitLine {
  std::string rule;
  std::string family;
  std::string refused; ///< why the record cannot tell; empty: told below
  int sowings = 0;
  int seasons = 0;
  int seedlings = 0; ///< that came in these looks
  LearnedNumber rule_limit_c;
  LearnedNumber rule_thermal_time_c_d;
  std::optional<LearnedNumber> limit_c;
  std::optional<LearnedNumber> thermal_time_c_d;
  double predicts_better = 0.0; ///< log likelihood of left-out sowings, over that of the rule
  bool offered = false;
};

/// The garden's own share of fresh seed that comes up, for the kinds that share a rule.
struct LearnedGerminationLine {
  std::string rule;
  std::string family;
  std::string refused; ///< why the record cannot tell; empty: told below
  int sowings = 0;
  int seasons = 0;
  int seeds = 0;
  int came = 0;            ///< of them, by the last look of the first season
  double could_come = 0.0; ///< by then, did every living, ripe seed that does not wait come up
  LearnedNumber rule_share;
  std::optional<LearnedNumber> share;
  double predicts_better = 0.0; ///< log likelihood of left-out sowings, over that of the rule
  bool offered = false;
};

/// A file of rules that the record would justify.
struct OfferedRules {
  std::string rule; ///< whose values it gives
  std::string file; ///< where it would stand: rules/learned-lachenalia.json
  std::string text;
  bool written = false;
};

struct LearnAnswer {
  GardenHead garden;
  Date today{};
  std::vector<std::string> asked; ///< taxa as typed; empty: all
  int sowings = 0;                ///< of what was asked for
  int seasons = 0;
  int counted = 0;        ///< of them with a count
  int too_early = 0;      ///< of those: in their first season, and still to be looked at
  int closed_early = 0;   ///< of those: closed before they were looked at to the end
  int unknown = 0;        ///< sowings of taxa that no rule knows; in no figure below
  int others_sowings = 0; ///< of imported counts
  double others_weight = 0.0;
  std::vector<LearnedShareLine> shares;
  std::vector<LearnedTimesLine> times;
  std::vector<LearnedTrialLine> trials;
  std::vector<LearnedEffectLine> effects;
  std::vector<LearnedLimitLine> limits;
  std::vector<LearnedGerminationLine> germinations;
  std::vector<OfferedRules> offered;
  std::string shared_with; ///< the file that counts were written to; empty: none
};

} // namespace nightsow::planner
