#pragma once

#include "planner/answers/spread.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_seasons.hpp"
#include "species-rules/catalogue.hpp"

#include <optional>
#include <string>

namespace nightsow::planner {

/// What has been seen of one sowing up to today.
struct PotSeen {
  int ever_up = 0;          ///< seedlings seen in all, those that died since included
  std::optional<int> alive; ///< at the last count; empty: never counted
  std::optional<Date> on;   ///< of the last count
  int firm = 0;             ///< seeds pressed
  int soft = 0;
};

[[nodiscard]] PotSeen pot_seen(const Records& records, const RecordedSowing& sowing);

/// A pot whose seed was wetted in an earlier season.
struct CarriedSeed {
  const species_rules::RuleFor& rule;
  const RecordedSowing& sowing;
  std::string bench;
  Date first_water{};
};

struct PotProspects {
  double living = 0.0;    ///< seeds not up that are alive and wait, mean
  NumberSpread seedlings; ///< of them, up in the season at hand
};

/// What is still to come of the seed in a pot, watered again on `wakes` in the season at hand. What
/// is alive is what the model leaves waiting (not ripe, nights too warm, deferred) at the end of
/// its first season, weighed by what was counted and pressed (account.hpp), and what further
/// seasons leave of that. Empty where the readings do not reach back to its first water, and where
/// every seed came up. Requires: the station has phases; first water in a season before.
[[nodiscard]] std::optional<PotProspects> pot_prospects(const LoadedGarden& garden,
                                                        BenchSeasons& seasons,
                                                        const CarriedSeed& seed,
                                                        const climate::Season& season,
                                                        Date wakes);

} // namespace nightsow::planner
