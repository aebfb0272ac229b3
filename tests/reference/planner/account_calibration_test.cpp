#include "planner/model/account.hpp"
#include "tests/support/invented_garden.hpp"
#include "tests/support/simulated_sowings.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

// Sowings whose seeds' fates are known: fewer of what tests/bench/account_calibration prints. Of so
// few, the share held strays by about two in a hundred.
TEST(AccountOfSowings, EightInTenRangesHoldTheTruth) {
  const auto catalogue = support::embedded_catalogue();
  support::Held held;
  for (const char* const genus : {"Lachenalia", "Conophytum"}) {
    support::SimulatedSowings sowings(*catalogue->rule_for(genus).found, 7);
    for (int i = 0; i < 120; ++i) {
      const support::SimulatedSowing sowing = sowings.next();
      const Account result = account(sowings.cases(sowing.water, sowing.today), sowing.record);
      support::add_held(result, sowing, held);
    }
  }
  ASSERT_GT(held.ranges, 300);
  EXPECT_GT(held.eight_in_ten / held.ranges, 0.76);
  EXPECT_LT(held.eight_in_ten / held.ranges, 0.84);
  EXPECT_GT(held.half / held.ranges, 0.44);
  EXPECT_LT(held.half / held.ranges, 0.56);
}

} // namespace
} // namespace nightsow::planner
