#include "planner/answers/lagging_pots.hpp"

#include "planner/answers/account_report.hpp"
#include "planner/answers/pot_prospects.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace nightsow::planner {

namespace {

std::optional<Reason> behind_expected(const SowingAccount& account) {
  if (!account.counted_on || !account.expected_up || account.up >= account.expected_up->p10) {
    return std::nullopt;
  }
  return Reason{ReasonCode::behind_expected,
                {{"up", account.up},
                 {"seeds", account.seeds},
                 {"on", *account.counted_on},
                 {"low", static_cast<int>(std::lround(account.expected_up->p10))},
                 {"high", static_cast<int>(std::lround(account.expected_up->p90))},
                 {"sowing", static_cast<int>(account.sowing)}}};
}

bool main_look_taken(const CarriedPot& pot) {
  return std::any_of(pot.work.begin(), pot.work.end(), [](const PotTask& task) {
    return task.kind == TaskKind::main_look && task.done;
  });
}

} // namespace

void tell_lagging(const LoadedGarden& garden,
                  BenchSeasons& seasons,
                  std::vector<CarriedPot>& pots) {
  for (CarriedPot& pot : pots) {
    if (pot.stage != PotStage::growing || pot.sowing == 0 || !main_look_taken(pot)) {
      continue;
    }
    const auto& sowings = garden.records.sowings;
    const auto sowing = std::ranges::find(sowings, pot.sowing, &RecordedSowing::id);
    if (2 * pot_seen(garden.records, *sowing).ever_up >= pot.seeds) {
      continue;
    }
    if (auto behind = behind_expected(sowing_account(garden, seasons, *sowing, false))) {
      pot.reasons.push_back(*std::move(behind));
    }
  }
}

} // namespace nightsow::planner
