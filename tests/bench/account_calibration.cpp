#include "planner/model/account.hpp"
#include "tests/support/invented_garden.hpp"
#include "tests/support/simulated_sowings.hpp"

#include <cstdio>

// How often the account's 80 % ranges hold what is true of simulated sowings: 500 a genus.
int main() {
  using namespace nightsow;
  const auto catalogue = support::embedded_catalogue();
  support::Held all;
  for (const char* const genus :
       {"Lachenalia", "Conophytum", "Bulbine", "Albuca", "Monsonia", "Pelargonium"}) {
    support::SimulatedSowings sowings(*catalogue->rule_for(genus).found, 1);
    support::Held held;
    for (int i = 0; i < 500; ++i) {
      const support::SimulatedSowing sowing = sowings.next();
      support::add_held(
          planner::account(sowings.cases(sowing.water, sowing.today), sowing.record), sowing, held);
    }
    std::printf("account of %s: ranges of 8 seeds or more hold %.1f %% of %d, all ranges %.1f %%\n",
                genus,
                100.0 * held.wide_held / held.wide,
                held.wide,
                100.0 * held.held / held.ranges);
    all.ranges += held.ranges;
    all.held += held.held;
    all.wide += held.wide;
    all.wide_held += held.wide_held;
  }
  std::printf("account of all: ranges of 8 seeds or more hold %.1f %%, all ranges %.1f %%\n",
              100.0 * all.wide_held / all.wide,
              100.0 * all.held / all.ranges);
}
