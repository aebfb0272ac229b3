#include "planner/model/account.hpp"
#include "tests/support/invented_garden.hpp"
#include "tests/support/simulated_sowings.hpp"

#include <cstdio>

namespace {

void print(const char* of, const nightsow::support::Held& held) {
  std::printf("account of %s: 80 %% ranges hold %.1f %% of %d (ends counted whole: %.1f %%), 50 %% "
              "ranges %.1f %%\n",
              of,
              100.0 * held.eight_in_ten / held.ranges,
              held.ranges,
              100.0 * held.both_ends / held.ranges,
              100.0 * held.half / held.ranges);
}

} // namespace

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
    print(genus, held);
    all.ranges += held.ranges;
    all.eight_in_ten += held.eight_in_ten;
    all.half += held.half;
    all.both_ends += held.both_ends;
  }
  print("all", all);
}
