#include "planner/model/usual_watering.hpp"

#include "planner/model/seed_place.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

class UsualWatering : public testing::Test {
protected:
  void SetUp() override {
    support::InventedGarden invented;
    invented.climate.hottest_day_of_year = support::hottest_in_the_south;
    hottest_ = support::hottest_night_of(invented);
    garden_ = support::garden_of(invented);
  }

  [[nodiscard]] int every(species_rules::PotTop top, int days_after_hottest) const {
    const StationClimate station = station_climate(garden_);
    return usual_watering_days(station,
                               bench_climate(garden_, station, ""),
                               seed_place(garden_.garden, garden_.garden.benches.front()),
                               top,
                               hottest_ + Days{days_after_hottest});
  }

  LoadedGarden garden_;
  Date hottest_{};
};

// From below, in cool weather, pots under grit (common practice, no source).
TEST_F(UsualWatering, IsAboutTwiceAWeekToOnceAWeekInTheCoolMonths) {
  const int days = every({.grit = true}, 150);
  EXPECT_GE(days, 3);
  EXPECT_LE(days, 9);
}

TEST_F(UsualWatering, IsMoreOftenInTheHeatAndWithoutGritAndSeldomInABag) {
  const int cool = every({.grit = true}, 150);
  EXPECT_LT(every({.grit = true}, 0), cool);
  EXPECT_LT(every({.grit = false}, 150), cool);
  EXPECT_GT(every({.grit = true, .closed_bag = true}, 150), 2 * cool);
}

} // namespace
} // namespace nightsow::planner
