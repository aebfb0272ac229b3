#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_seasons.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

/// The pots of the record, up to today: those sown dry, those that grow, and those carried over
/// from earlier seasons, with the day of their next water and what may still come. `season` is the
/// one planned; empty where the place has no phases: then nothing tells when they wake.
/// Left out is a sowing that is closed, and one of which every seed came up and none is alive.
[[nodiscard]] std::vector<CarriedPot> carried_pots(const LoadedGarden& garden,
                                                   BenchSeasons& seasons,
                                                   const std::optional<climate::Season>& season);

/// That of one sowing; empty where it is left out, or sown after today.
[[nodiscard]] std::optional<CarriedPot> carried_pot(const LoadedGarden& garden,
                                                    BenchSeasons& seasons,
                                                    const std::optional<climate::Season>& season,
                                                    const RecordedSowing& sowing);

/// The same pots as trays: those of one bench and stage that wait for the same, by 3 K of their
/// night limits.
[[nodiscard]] std::vector<Lot> carried_lots(const std::vector<CarriedPot>& pots, Date today);

/// Their work: first water of what is dry, looks, bag, mat, shade and rest of what grows, waking of
/// what rests, and what of it the record tells as done (recorded_work.hpp). What was due before
/// today is on today and says since when. Days away are minded as in tasks_of. Requires: lots are
/// those of the pots.
[[nodiscard]] std::vector<Task> carried_tasks(const std::vector<Lot>& lots,
                                              const std::vector<CarriedPot>& pots,
                                              Date today,
                                              const std::vector<AwayPeriod>& away);

} // namespace nightsow::planner
