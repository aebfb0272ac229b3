#include "planner/answers/expectation.hpp"
#include "planner/answers/plan.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

struct OnMat {
  std::string taxon;
  bool uses_mat;
};

// A hot starter, two that start in any mild season, a cool starter that gains by one, and a cool
// one that does not.
const std::vector<OnMat> kinds{{"Pachypodium namaquanum", true},
                               {"Crocosmia aurea", true},
                               {"Aloe ferox", true},
                               {"Veltheimia capensis", false},
                               {"Bulbine annua", false}};

LoadedGarden garden_with_mat(int days_after_hottest) {
  support::InventedGarden invented;
  invented.climate.hottest_day_of_year = support::hottest_in_the_south;
  invented.days_after_hottest = days_after_hottest;
  invented.mats = {support::mat_with(8.0, 26.0)};
  for (const OnMat& kind : kinds) {
    invented.packets.push_back(kind.taxon + ", 40 seeds, harvested 100 days ago");
  }
  return support::garden_of(invented);
}

TEST(Mat, IsUsedByWhatGainsByItAndDoesNotWaitForCoolNights) {
  const auto catalogue = support::embedded_catalogue();
  for (const OnMat& kind : kinds) {
    const species_rules::Lookup lookup = catalogue->rule_for(kind.taxon);
    ASSERT_TRUE(lookup.found) << kind.taxon;
    EXPECT_EQ(uses_mat(lookup.found->rule), kind.uses_mat) << kind.taxon;
  }
}

// What is expected, the tray and the work all say the same.
TEST(Mat, IsTheSameInExpectationTrayAndWork) {
  int on_mat = 0;
  for (const int day : {-60, 20, 60}) {
    const PlanAnswer answer = plan(garden_with_mat(day), {});
    for (const Lot& lot : answer.lots) {
      for (const LotPacket& packet : lot.packets) {
        const Sowing& sowing = support::sowing_of(answer, packet.taxon);
        EXPECT_EQ(sowing.work.on_mat, lot.mat) << packet.taxon;
        EXPECT_EQ(support::gives(sowing.reasons, ReasonCode::mat_gives), lot.mat) << packet.taxon;
        on_mat += lot.mat ? 1 : 0;
      }
    }
    for (const Task& task : answer.tasks) {
      if (task.kind == TaskKind::mat_on || task.kind == TaskKind::mat_off) {
        for (const std::string& packet : task.packets) {
          EXPECT_TRUE(std::any_of(
              answer.sowings.begin(),
              answer.sowings.end(),
              [&](const Sowing& one) { return one.packet == packet && one.work.on_mat; }))
              << packet;
        }
      }
    }
  }
  EXPECT_GT(on_mat, 2);
}

TEST(Mat, OfOnePotHoldsNoTwoKindsAtOnceWhateverTheirStart) {
  LoadedGarden garden = garden_with_mat(20);
  garden.packets = {
      support::packet_from("Crocosmia aurea, 5 seeds, harvested 100 days ago", garden.today),
      support::packet_from("Crocosmia paniculata, 5 seeds, harvested 100 days ago", garden.today)};
  garden.garden.mats.front().pots = 1;
  garden.garden.sowing_days = {"sat"};
  const PlanAnswer answer = plan(garden, {});
  ASSERT_EQ(answer.sowings.size(), 2U);
  std::vector<Date> waters;
  for (const Sowing& sowing : answer.sowings) {
    if (sowing.sow_on) {
      waters.push_back(std::max(*sowing.sow_on,
                                *day_of_water(sowing.verdict, sowing.first_water, answer.today)));
    }
  }
  const bool apart = waters.size() < 2 || waters[0] != waters[1];
  EXPECT_TRUE(apart) << "both on a mat of one pot";
}

} // namespace
} // namespace nightsow::planner
