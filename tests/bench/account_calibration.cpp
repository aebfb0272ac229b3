#include "planner/answers/account_names.hpp"
#include "planner/model/account.hpp"
#include "tests/support/invented_garden.hpp"
#include "tests/support/simulated_sowings.hpp"

#include <array>
#include <cstdio>
#include <string>

namespace {

using namespace nightsow;

constexpr int sowings_a_genus = 700;

void print(const std::string& of, const support::Held& held) {
  if (held.ranges == 0) {
    std::printf("account of %s: no range that tells anything\n", of.c_str());
    return;
  }
  std::printf("account of %s: 80 %% ranges hold %.1f %% of %d (ends counted whole: %.1f %%), 50 %% "
              "ranges %.1f %%\n",
              of.c_str(),
              100.0 * held.eight_in_ten / held.ranges,
              held.ranges,
              100.0 * held.both_ends / held.ranges,
              100.0 * held.half / held.ranges);
}

void add(const support::Held& part, support::Held& sum) {
  sum.ranges += part.ranges;
  sum.eight_in_ten += part.eight_in_ten;
  sum.half += part.half;
  sum.both_ends += part.both_ends;
}

} // namespace

// How often the account's 80 % ranges hold what is true of simulated sowings: by genus, by loss,
// and in all, where it has to be 76 to 84 %.
int main() {
  const auto catalogue = support::embedded_catalogue();
  std::array<support::Held, planner::all_causes.size()> by_cause;
  int sowings_in_all = 0;
  for (const char* const genus :
       {"Lachenalia", "Conophytum", "Bulbine", "Albuca", "Monsonia", "Pelargonium"}) {
    support::SimulatedSowings sowings(*catalogue->rule_for(genus).found, 1);
    support::Held of_genus;
    for (int i = 0; i < sowings_a_genus; ++i) {
      const support::SimulatedSowing sowing = sowings.next();
      const planner::Account account =
          planner::account(sowings.cases(sowing.water, sowing.today), sowing.record);
      support::add_held(account, sowing, of_genus);
      for (std::size_t cause = 0; cause < account.causes.size(); ++cause) {
        support::add_held(
            account.causes[cause], account.missing, sowing.missing[cause], by_cause.at(cause));
      }
      ++sowings_in_all;
    }
    print(genus, of_genus);
  }
  support::Held all;
  for (const planner::Cause cause : planner::all_causes) {
    const support::Held& held = by_cause.at(static_cast<std::size_t>(cause));
    print(std::string(planner::name_of(cause)), held);
    add(held, all);
  }
  print(std::to_string(sowings_in_all) + " sowings", all);
}
