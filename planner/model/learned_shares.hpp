#pragma once

#include "planner/statistics/pooled_shares.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace nightsow::planner {

/// What came of one sowing, by the kind that was sown.
struct SownKind {
  std::string taxon;
  std::string genus;
  std::string family;
  Count count;
  double weight = 1.0; ///< under 1 for counts of other gardens; 0..1
};

enum class KindLevel { garden, family, genus, taxon };

/// The germination share of one kind: what its own sowings say, leaned on its relatives.
struct LearnedShare {
  KindLevel level = KindLevel::garden;
  std::string name; ///< empty of the garden
  int sowings = 0;
  Count count;
  double share = 0.0;  ///< middle (mean)
  Interval limits;     ///< 80 %
  double leaned = 0.0; ///< part of it that comes from relatives, 0..1
};

/// Partial pooling from the garden down to families, genera and taxa. How much sowings differ is
/// fitted to all of them (beta-binomial, empirical Bayes); each level starts from the one above it,
/// taken as worth so many seeds as that fit says, and adds its own counts, each sowing worth what
/// its seeds are worth when they share a pot: n / (1 + (n - 1) r) of n seeds, r the correlation.
/// With fewer than three sowings that differ, the fit is taken as Beta(1, 1). Sorted: the garden,
/// then families, genera and taxa, each by name. Sowings without seeds count for nothing.
[[nodiscard]] std::vector<LearnedShare> learned_shares(std::span<const SownKind> sowings);

/// Two arms of a trial.
struct ComparedArms {
  Count a;
  Count b;
  double difference = 0.0;              ///< share of a less that of b
  Interval limits;                      ///< Newcombe, 95 %
  double chance = 1.0;                  ///< Fisher's exact test, two-sided
  bool settled = false;                 ///< limits leave out 0
  std::optional<int> more_seeds_an_arm; ///< to settle it, should shares stay; empty: too many
};

/// Requires: seeds in both arms.
[[nodiscard]] ComparedArms compared_arms(const Count& a, const Count& b);

} // namespace nightsow::planner
