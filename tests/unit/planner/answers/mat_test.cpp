#include "planner/answers/expectation.hpp"
#include "planner/answers/plan.hpp"
#include "tests/support/find_in_answer.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <variant>
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
        const bool gains = support::gives(sowing.reasons, ReasonCode::mat_gives) ||
                           support::gives(sowing.reasons, ReasonCode::mat_gives_alike);
        EXPECT_EQ(gains, lot.mat) << packet.taxon;
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

int number_of(const Reason& reason, std::string_view name) {
  const auto found = std::find_if(reason.values.begin(),
                                  reason.values.end(),
                                  [&](const NamedValue& value) { return value.name == name; });
  return std::get<int>(found->value);
}

void expect_figures_and_tray_agree(const Sowing& sowing, const PlanAnswer& bare) {
  SCOPED_TRACE(sowing.taxon);
  const Sowing& without = support::sowing_of(bare, sowing.taxon);
  const auto plants = static_cast<int>(std::lround(sowing.expected->plants.mean));
  const auto of_bare = static_cast<int>(std::lround(without.expected->plants.mean));
  for (const Reason& reason : sowing.reasons) {
    if (reason.code == ReasonCode::mat_gives) {
      EXPECT_TRUE(sowing.work.on_mat);
      EXPECT_EQ(number_of(reason, "plants"), plants);
      EXPECT_EQ(number_of(reason, "other"), of_bare);
      EXPECT_GT(plants, of_bare);
    } else if (reason.code == ReasonCode::mat_gives_alike) {
      EXPECT_TRUE(sowing.work.on_mat);
      EXPECT_EQ(number_of(reason, "plants"), plants);
    } else if (reason.code == ReasonCode::mat_left_off) {
      EXPECT_FALSE(sowing.work.on_mat);
      EXPECT_EQ(number_of(reason, "plants"), plants);
      EXPECT_EQ(plants, of_bare);
    }
  }
}

// A mat that takes plants is not laid under them, and what it gives is what both plans expect.
TEST(Mat, IsLaidOnlyWhereItGivesWhatIsTold) {
  int off = 0;
  for (const int day : {-60, 20}) {
    LoadedGarden garden = garden_with_mat(day);
    garden.packets.push_back(
        support::packet_from("Clivia miniata, 40 seeds, harvested 10 days ago", garden.today));
    const PlanAnswer answer = plan(garden, {});
    garden.garden.mats.clear();
    const PlanAnswer bare = plan(garden, {});
    for (const Sowing& sowing : answer.sowings) {
      expect_figures_and_tray_agree(sowing, bare);
      off += support::gives(sowing.reasons, ReasonCode::mat_left_off) ? 1 : 0;
    }
  }
  EXPECT_GT(off, 0);
}

TEST(Mat, WithRoomForOneKindHoldsNoTwoAtOnce) {
  LoadedGarden garden = garden_with_mat(-60);
  garden.packets = {
      support::packet_from("Pachypodium namaquanum, 40 seeds, harvested 100 days ago",
                           garden.today),
      support::packet_from("Adenia glauca, 40 seeds, harvested 100 days ago", garden.today)};
  garden.garden.sowing_days = {"sat"};
  garden.garden.mats.front().pots = plan(garden, {}).sowings.at(0).how.pots;
  const PlanAnswer answer = plan(garden, {});
  ASSERT_EQ(answer.sowings.size(), 2U);
  for (const Sowing& sowing : answer.sowings) {
    EXPECT_TRUE(sowing.work.on_mat) << sowing.taxon;
  }
  std::vector<Date> waters;
  for (const Sowing& sowing : answer.sowings) {
    if (sowing.sow_on) {
      waters.push_back(std::max(*sowing.sow_on,
                                *day_of_water(sowing.verdict, sowing.first_water, answer.today)));
    }
  }
  const bool apart = waters.size() < 2 || waters[0] != waters[1];
  EXPECT_TRUE(apart) << "both on a mat with room for one";
}

} // namespace
} // namespace nightsow::planner
