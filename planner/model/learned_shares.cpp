#include "planner/model/learned_shares.hpp"

#include "planner/statistics/comparison.hpp"
#include "planner/statistics/sample_size.hpp"

#include <map>
#include <tuple>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr int least_sowings = 3;
constexpr double shown_confidence = 0.8;

struct Gathered {
  int sowings = 0;
  Count count;
  double came = 0.0; // worth, after sharing pots
  double sown = 0.0;

  void add(const SownKind& one, double correlation) {
    ++sowings;
    count.came += one.count.came;
    count.sown += one.count.sown;
    const double worth = one.weight / (1.0 + (one.count.sown - 1.0) * correlation);
    came += worth * one.count.came;
    sown += worth * one.count.sown;
  }
};

BetaShares fitted(std::span<const SownKind> sowings) {
  std::vector<Count> counts;
  for (const SownKind& one : sowings) {
    if (one.count.sown > 0) {
      counts.push_back(one.count);
    }
  }
  if (static_cast<int>(counts.size()) < least_sowings) {
    return {};
  }
  const std::optional<BetaFit> fit = fit_beta_binomial(counts);
  return fit ? fit->shares : BetaShares{};
}

// `above` says what is believed without the kind's own sowings.
std::pair<LearnedShare, BetaShares> learned(KindLevel level,
                                            std::string name,
                                            const Gathered& own,
                                            const BetaShares& above) {
  const BetaShares now{above.a + own.came, above.b + own.sown - own.came};
  const double before = above.a + above.b;
  LearnedShare share{level, std::move(name), own.sowings, own.count, now.mean(), {}, 0.0};
  share.limits = interval_of(now, shown_confidence);
  share.leaned = before / (now.a + now.b);
  return {share, now};
}

// The belief handed down: its middle, worth `size` seeds.
BetaShares handed_down(const BetaShares& from, double size) {
  return {from.mean() * size, (1.0 - from.mean()) * size};
}

} // namespace

std::vector<LearnedShare> learned_shares(std::span<const SownKind> sowings) {
  const BetaShares fit = fitted(sowings);
  const double size = fit.a + fit.b;
  Gathered all;
  std::map<std::string, Gathered> families;
  std::map<std::pair<std::string, std::string>, Gathered> genera;             // name, family
  std::map<std::tuple<std::string, std::string, std::string>, Gathered> taxa; // name, genus, family
  for (const SownKind& one : sowings) {
    if (one.count.sown == 0) {
      continue;
    }
    all.add(one, fit.correlation());
    families[one.family].add(one, fit.correlation());
    genera[{one.genus, one.family}].add(one, fit.correlation());
    taxa[{one.taxon, one.genus, one.family}].add(one, fit.correlation());
  }
  std::vector<LearnedShare> list;
  if (all.sowings == 0) {
    return list;
  }
  const auto add =
      [&](KindLevel level, const std::string& name, const Gathered& own, const BetaShares& above) {
        auto [share, now] = learned(level, name, own, above);
        list.push_back(std::move(share));
        return handed_down(now, size);
      };
  const BetaShares garden = add(KindLevel::garden, "", all, {1.0, 1.0});
  std::map<std::string, BetaShares> of_family;
  for (const auto& [name, own] : families) {
    of_family[name] = add(KindLevel::family, name, own, garden);
  }
  std::map<std::string, BetaShares> of_genus;
  for (const auto& [key, own] : genera) {
    of_genus[key.first] = add(KindLevel::genus, key.first, own, of_family[key.second]);
  }
  for (const auto& [key, own] : taxa) {
    add(KindLevel::taxon, std::get<0>(key), own, of_genus[std::get<1>(key)]);
  }
  return list;
}

ComparedArms compared_arms(const Count& a, const Count& b) {
  ComparedArms result{
      a, b, 0.0, newcombe_difference(a, b), fisher_exact(a, b).two_sided, false, {}};
  result.difference = static_cast<double>(a.came) / a.sown - static_cast<double>(b.came) / b.sown;
  result.settled = result.limits.low > 0.0 || result.limits.high < 0.0;
  result.more_seeds_an_arm = seeds_to_settle(a, b);
  return result;
}

} // namespace nightsow::planner
