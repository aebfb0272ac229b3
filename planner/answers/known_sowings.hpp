#pragma once

#include "climate/phases.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/what_came.hpp"
#include "species-rules/catalogue.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// A sowing of the record whose taxon the rules know.
struct KnownSowing {
  const WhatCame* told = nullptr;
  species_rules::RuleFor rule;
  std::string genus;
  int season = 0; ///< whose planning year holds its first water, or, while it is dry, its sowing
  std::optional<double> age_years; ///< of the seed on that day
  const Closing* closed = nullptr; ///< null: it is looked after
  /// Looked at as long after first water as its rule says that seedlings may come, or, unless it
  /// was closed before, until its first season was over.
  bool looked_at_to_the_end = false;
};

/// The record beside the rules. Not to be copied: its sowings point into it.
struct KnownSowings {
  std::vector<WhatCame> told; ///< of all sowings
  std::vector<KnownSowing> sowings;
  int unknown = 0; ///< sowings of taxa that no rule knows
};

/// `phases` are empty where the place has none: seasons are then calendar years. The garden must
/// outlive it.
[[nodiscard]] KnownSowings known_sowings(const LoadedGarden& garden,
                                         const std::optional<climate::Phases>& phases);

/// Seasons among them, in order.
[[nodiscard]] std::vector<int> seasons_of(const std::vector<KnownSowing>& sowings);

/// Whether the sowing is of that family, genus or species.
[[nodiscard]] bool is_of(const KnownSowing& sowing, const std::string& accepted);

} // namespace nightsow::planner
