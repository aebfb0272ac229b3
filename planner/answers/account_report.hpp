#pragma once

#include "planner/answers/account_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_seasons.hpp"

#include <vector>

namespace nightsow::planner {

struct AccountRequest {
  std::vector<EntryId> sowings; ///< of the garden's records; empty: all open ones
  bool all = false;             ///< with none named: closed ones, too
  bool deciding = true;         ///< find out which values of the rule decide: takes its time
};

/// Where the seeds of a sowing are, and what to do next: what its rule, its packet as it was sown
/// and the weather that came on its bench make of it, weighed by what was counted and pressed. What
/// the record leaves open is guessed, and said among the notes. A sowing is closed once all of it
/// is up or its pot has had all the seasons that its rule asks for.
[[nodiscard]] AccountAnswer account_report(const LoadedGarden& garden,
                                           const AccountRequest& request);

/// That of one sowing of the garden's records; `deciding` as in the request.
[[nodiscard]] SowingAccount sowing_account(const LoadedGarden& garden,
                                           BenchSeasons& seasons,
                                           const RecordedSowing& sowing,
                                           bool deciding);

} // namespace nightsow::planner
