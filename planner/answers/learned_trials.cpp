#include "planner/answers/learned_trials.hpp"

#include "planner/answers/figures.hpp"
#include "planner/model/learned_shares.hpp"
#include "planner/statistics/comparison.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>

namespace nightsow::planner {

namespace {

struct Arm {
  int sowings = 0;
  Count count;
};

struct Trial {
  std::set<std::string> taxa;
  std::map<std::string, Arm> arms;
};

TrialArmLine line_of(const std::string& name, const Arm& arm) {
  const Interval limits = wilson(arm.count);
  return {name,
          arm.sowings,
          arm.count.came,
          arm.count.sown,
          rounded_share(limits.low),
          rounded_share(limits.high)};
}

TrialPairLine pair_of(const TrialArmLine& a, const TrialArmLine& b) {
  const ComparedArms compared = compared_arms({a.came, a.sown}, {b.came, b.sown});
  TrialPairLine pair;
  pair.a = a.arm;
  pair.b = b.arm;
  pair.difference = rounded_share(compared.difference);
  pair.low = rounded_share(compared.limits.low);
  pair.high = rounded_share(compared.limits.high);
  pair.chance = rounded_share(compared.chance);
  pair.settled = compared.settled;
  pair.more_seeds_an_arm = compared.more_seeds_an_arm;
  return pair;
}

double share_of(const TrialArmLine& arm) {
  return static_cast<double>(arm.came) / arm.sown;
}

LearnedTrialLine line_of(const std::string& name, const Trial& trial) {
  LearnedTrialLine line;
  line.trial = name;
  line.taxa.assign(trial.taxa.begin(), trial.taxa.end());
  for (const auto& [arm, counts] : trial.arms) {
    line.arms.push_back(line_of(arm, counts));
  }
  std::stable_sort(line.arms.begin(), line.arms.end(), [](const auto& a, const auto& b) {
    return share_of(a) > share_of(b);
  });
  for (std::size_t i = 1; i < line.arms.size(); ++i) {
    line.pairs.push_back(pair_of(line.arms.front(), line.arms[i]));
  }
  if (line.arms.size() > 2) {
    std::vector<std::vector<int>> rows;
    for (const TrialArmLine& arm : line.arms) {
      rows.push_back({arm.came, arm.sown - arm.came});
    }
    if (const std::optional<double> chance = exact_test(rows)) {
      line.chance = rounded_share(*chance);
    }
  }
  return line;
}

} // namespace

std::vector<LearnedTrialLine> learned_trials(const std::vector<const KnownSowing*>& sowings) {
  std::map<std::string, Trial> trials;
  for (const KnownSowing* sowing : sowings) {
    const RecordedSowing& sown = *sowing->told->sowing;
    if (sown.trial.empty() || !sowing->told->counted()) {
      continue;
    }
    Trial& trial = trials[sown.trial];
    trial.taxa.insert(sowing->rule.accepted);
    Arm& arm = trial.arms[sown.arm];
    ++arm.sowings;
    arm.count.came += sowing->told->came();
    arm.count.sown += std::max(sown.seeds, sowing->told->came());
  }
  std::vector<LearnedTrialLine> lines;
  lines.reserve(trials.size());
  for (const auto& [name, trial] : trials) {
    lines.push_back(line_of(name, trial));
  }
  return lines;
}

} // namespace nightsow::planner
