#include "planner/answers/plan_trial.hpp"

#include "planner/answers/deciding_fields.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/known_sowings.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/model/bench_climate.hpp"
#include "planner/model/learned_shares.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/seed_state.hpp"
#include "planner/model/trial_design.hpp"
#include "species-rules/explain.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::Rule;
using species_rules::RuleFor;
using species_rules::SeedSize;
using species_rules::Start;

constexpr int most_trials = 3;
constexpr double usual_seeds_per_pot = 20.0;
constexpr int least_pots_an_arm = 2; // pots differ: one would tell of itself
constexpr double warmer_k = 4.0;     // of the arm that is watered early

/// A comparison that may be made with kinds of a sort.
struct Comparison {
  std::string_view field; ///< of the rules
  std::string_view a;
  std::string_view b;
  double odds = 2.0; ///< odds of a over odds of b, as growers may find (common practice, no source)
  bool (*fits)(const Rule&) = nullptr;
};

bool is_fine(const Rule& rule) {
  return rule.seed.size &&
         (rule.seed.size->value == SeedSize::dust || rule.seed.size->value == SeedSize::fine);
}

template <class E> bool gains(const std::optional<species_rules::Choice<E>>& choice) {
  return choice && (choice->value == E::needed || choice->value == E::helpful);
}

bool fine_without_harm(const Rule& rule) {
  using species_rules::HumidityCover;
  return is_fine(rule) && !(rule.sowing.humidity_cover &&
                            rule.sowing.humidity_cover->value == HumidityCover::harmful);
}

bool coarse(const Rule& rule) {
  return rule.seed.size && !is_fine(rule) && rule.seed.size->value != SeedSize::fleshy &&
         rule.sowing.cover;
}

bool waits_for_cool(const Rule& rule) {
  return start_of(rule) == Start::cool && rule.gate.night_limit_c.has_value();
}

bool is_nicked(const Rule& rule) {
  return gains(rule.sowing.scarify);
}

bool is_smoked(const Rule& rule) {
  return gains(rule.sowing.smoke);
}

bool is_rinsed(const Rule& rule) {
  return gains(rule.sowing.leach);
}

bool wants_light(const Rule& rule) {
  return gains(rule.sowing.light) && !is_fine(rule);
}

bool wants_a_mat(const Rule& rule) {
  return start_of(rule) == Start::hot && gains(rule.sowing.mat);
}

constexpr std::array<Comparison, 8> comparisons{{
    {"cover", "bare, in a closed bag", "under a thin cover, without a bag", 3.0, fine_without_harm},
    {"cover", "covered by the seed's own thickness", "bare", 2.0, coarse},
    {"night_limit_c",
     "first water when nights hold at or under {limit}",
     "first water when nights hold at or under {warmer}",
     2.5,
     waits_for_cool},
    {"scarify", "nicked or rubbed", "left whole", 4.0, is_nicked},
    {"smoke", "first water with smoke water", "first water plain", 2.5, is_smoked},
    {"leach", "rinsed in several waters", "as it is", 2.0, is_rinsed},
    {"light", "in the light", "wrapped in foil", 2.5, wants_light},
    {"mat", "on the mat", "beside it", 3.0, wants_a_mat},
}};

double behind(double share, double odds_ratio) {
  const double odds = share / (1.0 - share) / odds_ratio;
  return odds / (1.0 + odds);
}

// Of the seed as it is now: the record's own share of the taxon where it was sown before, else what
// the rule makes of its age and store.
double expected_share(const Packet& packet,
                      const RuleFor& rule,
                      Date today,
                      const std::vector<LearnedShare>& learned) {
  for (const LearnedShare& share : learned) {
    if (share.level == KindLevel::taxon && share.name == rule.accepted) {
      return share.share;
    }
  }
  const SeedState seed = seed_state(packet, rule.rule, today);
  return seed.alive_and_ripe * seed.germination *
         (1.0 - value_or(rule.rule.seed.deferral_share, 0.0));
}

// How much hangs on the field, and how badly it is known.
double matters(std::string_view field, const Rule& rule) {
  const DecidingField* deciding = deciding_field(field, start_of(rule));
  if (deciding == nullptr) {
    return 0.0;
  }
  for (const species_rules::ExplainedValue& value : species_rules::explain(rule)) {
    if (value.key == field) {
      return gap_score(*deciding, value);
    }
  }
  return 0.0;
}

std::string arm_text(std::string_view words, const Rule& rule) {
  if (words.find('{') == std::string_view::npos) {
    return std::string(words);
  }
  const double limit_c = rule.gate.night_limit_c->value;
  return fmt::format(fmt::runtime(words),
                     fmt::arg("limit", fmt::format("{:g} °C", limit_c)),
                     fmt::arg("warmer", fmt::format("{:g} °C", limit_c + warmer_k)));
}

/// An idea, and the line that it becomes.
struct Candidate {
  TrialIdea idea;
  PlannedTrialLine line;
  int seeds_per_pot = 0;
};

std::vector<LearnedShare> shares_of(const LoadedGarden& garden) {
  const StationClimate station = station_climate(garden);
  const KnownSowings record = known_sowings(garden, station.turning.phases);
  std::vector<SownKind> kinds;
  for (const KnownSowing& sowing : record.sowings) {
    if (sowing.looked_at_to_the_end) {
      const int came = sowing.told->came();
      kinds.push_back({sowing.rule.accepted,
                       sowing.genus,
                       sowing.rule.family,
                       {came, std::max(came, sowing.told->sowing->seeds)},
                       1.0});
    }
  }
  return learned_shares(kinds);
}

void add_candidates(const Packet& packet,
                    const RuleFor& rule,
                    int seeds,
                    double share,
                    std::vector<Candidate>& list) {
  const int per_pot =
      static_cast<int>(std::lround(value_or(rule.rule.sowing.seeds_per_pot, usual_seeds_per_pot)));
  for (const Comparison& comparison : comparisons) {
    const double weight = matters(comparison.field, rule.rule);
    if (!comparison.fits(rule.rule) || weight <= 0.0) {
      continue;
    }
    Candidate candidate;
    candidate.seeds_per_pot = std::max(1, per_pot);
    candidate.idea = {
        std::to_string(list.size()), seeds, share, behind(share, comparison.odds), weight};
    candidate.line.packet = packet.id;
    candidate.line.taxon = rule.accepted;
    candidate.line.field = comparison.field;
    candidate.line.a = arm_text(comparison.a, rule.rule);
    candidate.line.b = arm_text(comparison.b, rule.rule);
    list.push_back(std::move(candidate));
  }
}

PlannedTrialLine line_of(const Candidate& candidate,
                         const PlannedTrial& planned,
                         std::uint32_t seed_number) {
  PlannedTrialLine line = candidate.line;
  line.seeds_an_arm = planned.seeds_an_arm;
  line.seeds_wanted = planned.seeds_wanted;
  line.power = rounded_share(planned.power);
  line.share_a = rounded_share(candidate.idea.share_a);
  line.share_b = rounded_share(candidate.idea.share_b);
  const int filled = (line.seeds_an_arm + candidate.seeds_per_pot - 1) / candidate.seeds_per_pot;
  line.pots_an_arm = std::max(least_pots_an_arm, filled);
  for (const int arm : drawn_arms(2 * line.pots_an_arm, 2, seed_number)) {
    line.pots.emplace_back(arm == 0 ? "a" : "b");
  }
  return line;
}

} // namespace

TrialAnswer plan_trial(const LoadedGarden& garden, const TrialRequest& request) {
  const std::vector<LearnedShare> learned = shares_of(garden);
  TrialAnswer answer;
  answer.garden = garden_head(garden.garden);
  answer.today = garden.today;
  answer.seed_number = request.seed_number;
  answer.packets = static_cast<int>(garden.packets.size());
  answer.least_seeds = least_seeds_for_a_trial;
  std::vector<Candidate> candidates;
  for (const Packet& packet : garden.packets) {
    const std::optional<double> seeds = packet.seeds.middle();
    const species_rules::Lookup lookup = garden.catalogue->rule_for(packet.taxon);
    if (!seeds || *seeds < least_seeds_for_a_trial || !lookup.found || packet.irreplaceable) {
      continue;
    }
    ++answer.looked_at;
    const double share =
        std::clamp(expected_share(packet, *lookup.found, garden.today, learned), 0.01, 0.99);
    add_candidates(packet, *lookup.found, static_cast<int>(*seeds), share, candidates);
  }
  std::vector<TrialIdea> ideas;
  ideas.reserve(candidates.size());
  for (const Candidate& candidate : candidates) {
    ideas.push_back(candidate.idea);
  }
  std::set<std::string> taken;
  for (const PlannedTrial& planned : planned_trials(ideas, static_cast<int>(ideas.size()))) {
    const Candidate& candidate = candidates[std::stoul(planned.name)];
    if (static_cast<int>(answer.trials.size()) < most_trials &&
        !taken.contains(candidate.line.packet) && !taken.contains(candidate.line.field)) {
      taken.insert({candidate.line.packet, candidate.line.field});
      answer.trials.push_back(line_of(candidate, planned, request.seed_number));
    }
  }
  return answer;
}

} // namespace nightsow::planner
