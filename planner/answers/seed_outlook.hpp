#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/seed_outlook_answer.hpp"
#include "planner/garden/packet.hpp"
#include "planner/garden/seed_age.hpp"
#include "species-rules/catalogue.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

struct SeedOutlookRequest {
  std::string taxon;
  SeedAge age;
  std::vector<StoreStage> stored; ///< empty: not known
  std::string stored_as_written;
  std::optional<GerminationTest> tested;
};

/// The chance that a seed is alive and ripe on a day, and the best of three ways to keep it for a
/// year from then: warm and dry, in the fridge, or warm until ripe and then in the fridge. Of seed
/// that dies dry: what some weeks leave of it, cool and barely moist or dry.
/// Throws UsageError when the catalogue does not know the taxon, with the nearest right word, and
/// when the test was made before the seed or is still to come.
[[nodiscard]] SeedOutlookAnswer seed_outlook(const species_rules::Catalogue& catalogue,
                                             const SeedOutlookRequest& request,
                                             Date today);

} // namespace nightsow::planner
