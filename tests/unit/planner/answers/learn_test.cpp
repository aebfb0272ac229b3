#include "planner/answers/learn.hpp"

#include "climate/base/problem.hpp"
#include "climate/seasons.hpp"
#include "planner/answers/plan_trial.hpp"
#include "planner/model/bench_seasons.hpp"
#include "planner/model/establishment.hpp"
#include "species-rules/seed_parameters.hpp"
#include "tests/support/invented_garden.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

constexpr int look_every = 7;
constexpr int looks = 20;

support::InventedGarden on_half(int hottest) {
  support::InventedGarden garden;
  garden.climate.hottest_day_of_year = hottest;
  garden.packets = {"Crassula umbella, 60 seeds, harvested 200 days ago, as c1",
                    "Moraea villosa, 40 seeds, harvested 200 days ago, as m1",
                    "Albuca spiralis, 6 seeds, harvested 200 days ago, as a1"};
  return garden;
}

RecordedSowing sowing_of(EntryId id, const std::string& taxon, Date on, int seeds) {
  RecordedSowing sowing;
  sowing.id = id;
  sowing.taxon = taxon;
  sowing.on = on;
  sowing.first_water = on;
  sowing.seeds = seeds;
  sowing.pots = 2;
  sowing.bench = "open bench";
  sowing.packet.taxon = taxon;
  sowing.packet.harvested = DateRange{on - Days{200}, on - Days{200}};
  return sowing;
}

/// Sown so many days after a season's hottest night; what comes is what the model makes of a seed
/// whose limit is `limit_c`, to whole seedlings, where `comes` of the seeds would at best.
void add_sowing(LoadedGarden& garden,
                BenchSeasons& seasons,
                int seasons_ago,
                int after_hottest,
                double limit_c,
                double comes) {
  const climate::Phases& phases = *seasons.station().turning.phases;
  const climate::Season season = climate::season_named(phases, year_of(garden.today) - seasons_ago);
  const Date on = season.hottest + Days{after_hottest};
  const auto id = static_cast<EntryId>(garden.records.sowings.size() + 1);
  const std::string taxon = "Lachenalia mutabilis";
  garden.records.sowings.push_back(sowing_of(id, taxon, on, 60));
  species_rules::SeedParameters seed =
      species_rules::seed_parameters(garden.catalogue->rule_for(taxon).found->rule);
  seed.release->limit_c = limit_c;
  const SeedCourse& course = seasons.courses({"open bench", season, false, std::nullopt}).front();
  SeedSeason in_season(course, seed, {}, season_days(season, course.first));
  const int water = days_between(course.first, on);
  const Establishment came = in_season.watered_on(water, {comes, 1.0});
  double up = 0.0;
  int day = water;
  for (int look = 1; look <= looks; ++look) {
    for (; day <= water + look_every * look; ++day) {
      up += came.up[static_cast<std::size_t>(day)];
    }
    SeedlingCount count;
    count.id = id * 100 + look;
    count.sowing = id;
    count.on = on + Days{look_every * look};
    count.seen = static_cast<int>(std::lround(60.0 * up));
    garden.records.counts.push_back(count);
  }
}

const LearnedLimitLine& limit_of(const LearnAnswer& answer, const std::string& rule) {
  return *std::find_if(answer.limits.begin(), answer.limits.end(), [&](const auto& line) {
    return line.rule == rule;
  });
}

class LearningOnBothHalves : public testing::TestWithParam<int> {
protected:
  void sow(int seasons_ago, int after_hottest, double limit_c) {
    add_sowing(here_, seasons_, seasons_ago, after_hottest, limit_c, comes_);
  }

  /// Five sowings in three seasons.
  void sow_all(double limit_c) {
    for (const auto& [ago, after] : {std::pair{3, 20}, {3, 60}, {2, 30}, {1, 20}, {1, 70}}) {
      sow(ago, after, limit_c);
    }
  }

  /// As the rule has it: 0.9 of fresh seed, hardly aged.
  double comes_ = 0.88;
  LoadedGarden here_ = support::garden_of(on_half(GetParam()));
  BenchSeasons seasons_{here_};
};

TEST_P(LearningOnBothHalves, FindsALimitThatIsWarmerThanTheRule) {
  sow_all(16.0);
  const LearnAnswer answer = learn(here_, {});
  const LearnedLimitLine& line = limit_of(answer, "Lachenalia");
  EXPECT_EQ(line.refused, "");
  ASSERT_TRUE(line.limit_c);
  EXPECT_NEAR(line.limit_c->value, 16.0, 1.5);
  EXPECT_GT(line.limit_c->value, line.rule_limit_c.value + 1.0);
  EXPECT_EQ(line.seasons, 3);
  EXPECT_TRUE(line.offered);
  ASSERT_EQ(answer.offered.size(), 1U);
  EXPECT_EQ(answer.offered.front().file, "rules/learned-lachenalia.json");
  EXPECT_NE(answer.offered.front().text.find("this garden, 5 sowings in 3 seasons"),
            std::string::npos);
}

TEST_P(LearningOnBothHalves, OffersNothingWhereTheRuleIsRight) {
  sow_all(13.5);
  EXPECT_TRUE(learn(here_, {}).offered.empty());
}

TEST_P(LearningOnBothHalves, OffersAShareOfFreshSeedThatIsLowerThanTheRules) {
  comes_ = 0.5;
  sow_all(13.5);
  const LearnAnswer answer = learn(here_, {});
  ASSERT_EQ(answer.germinations.size(), 1U);
  const LearnedGerminationLine& line = answer.germinations.front();
  EXPECT_EQ(line.rule, "Lachenalia");
  ASSERT_TRUE(line.share);
  EXPECT_LT(line.share->value, line.rule_share.value - 0.2);
  EXPECT_GT(line.share->value, 0.4);
  EXPECT_TRUE(line.offered);
  ASSERT_EQ(answer.offered.size(), 1U);
  EXPECT_NE(answer.offered.front().text.find("germination_share"), std::string::npos);
  EXPECT_EQ(answer.offered.front().text.find("night_limit_c"), std::string::npos);
}

TEST_P(LearningOnBothHalves, OffersNothingFromOneSeason) {
  for (const int after : {20, 40, 60, 80}) {
    sow(1, after, 16.5);
  }
  EXPECT_TRUE(learn(here_, {}).offered.empty());
}

TEST_P(LearningOnBothHalves, CannotTellFromOneSowing) {
  sow(1, 20, 16.5);
  const LearnAnswer answer = learn(here_, {});
  EXPECT_EQ(limit_of(answer, "Lachenalia").refused, "too_few_sowings");
  EXPECT_EQ(answer.effects.front().refused, "too_few_sowings");
}

INSTANTIATE_TEST_SUITE_P(South,
                         LearningOnBothHalves,
                         testing::Values(support::hottest_in_the_south));
INSTANTIATE_TEST_SUITE_P(North,
                         LearningOnBothHalves,
                         testing::Values(support::hottest_in_the_north));

LoadedGarden a_garden() {
  return support::garden_of(on_half(support::hottest_in_the_south));
}

SeedlingCount counted(EntryId sowing, Date on, int seen) {
  SeedlingCount count;
  count.sowing = sowing;
  count.on = on;
  count.seen = seen;
  return count;
}

TEST(Learning, AnEmptyRecordIsAnAnswer) {
  const LearnAnswer answer = learn(a_garden(), {});
  EXPECT_EQ(answer.sowings, 0);
  EXPECT_TRUE(answer.shares.empty());
  EXPECT_TRUE(answer.limits.empty());
}

TEST(Learning, ATaxonThatNoRuleKnowsIsRefusedWhenTypedAndCountedWhenSown) {
  LoadedGarden garden = a_garden();
  EXPECT_THROW(static_cast<void>(learn(garden, {{"Zzyzx"}, {}})), UsageError);
  garden.records.sowings = {sowing_of(1, "Zzyzx", garden.today - Days{300}, 10)};
  EXPECT_EQ(learn(garden, {}).unknown, 1);
}

TEST(Learning, SowingsStillToBeLookedAtAreInNoShare) {
  LoadedGarden garden = a_garden();
  const Date on = garden.today - Days{20};
  garden.records.sowings = {sowing_of(1, "Bulbine annua", on, 40)};
  garden.records.counts = {counted(1, on + Days{10}, 4)};
  const LearnAnswer answer = learn(garden, {});
  EXPECT_EQ(answer.too_early, 1);
  EXPECT_TRUE(answer.shares.empty());
  ASSERT_EQ(answer.times.size(), 1U);
  EXPECT_EQ(answer.times.front().came, 4);
}

TEST(Learning, ASowingThatWasClosedEarlyHasWaitedAndNotFailed) {
  LoadedGarden garden = a_garden();
  const Date on = garden.today - Days{700};
  garden.records.sowings = {sowing_of(1, "Bulbine annua", on, 40)};
  garden.records.counts = {counted(1, on + Days{10}, 4)};
  const LearnAnswer kept = learn(garden, {});
  EXPECT_FALSE(kept.shares.empty()); // its season is over
  garden.records.closings = {{50, 1, on + Days{12}, ClosingReason::thrown_out}};
  const LearnAnswer closed = learn(garden, {});
  EXPECT_TRUE(closed.shares.empty());
  EXPECT_EQ(closed.closed_early, 1);
  EXPECT_EQ(closed.too_early, 0);
  ASSERT_EQ(closed.times.size(), 1U);
  EXPECT_EQ(closed.times.front().came, 4);
}

TEST(Learning, WhatIsAskedForIsShownWithItsRelativesPooled) {
  LoadedGarden garden = a_garden();
  const Date on = garden.today - Days{400};
  garden.records.sowings = {sowing_of(1, "Bulbine annua", on, 40),
                            sowing_of(2, "Albuca spiralis", on, 30)};
  garden.records.counts = {counted(1, on + Days{200}, 20), counted(2, on + Days{200}, 3)};
  const LearnAnswer answer = learn(garden, {{"Albuca"}, {}});
  EXPECT_EQ(answer.sowings, 1);
  ASSERT_EQ(answer.shares.size(), 4U);
  EXPECT_EQ(answer.shares.front().sowings, 2);
  EXPECT_EQ(answer.shares.back().name, "Albuca spiralis");
  EXPECT_EQ(learn(garden, {{"Asparagaceae"}, {}}).sowings, 1);
}

TEST(Learning, OthersCountsAreAGroupOfLowerWeight) {
  LoadedGarden garden = a_garden();
  const Date on = garden.today - Days{400};
  garden.records.sowings = {sowing_of(1, "Bulbine annua", on, 40)};
  garden.records.counts = {counted(1, on + Days{200}, 20)};
  SharedCounts others;
  others.sowings = {{"Bulbine annua", 40, 2, 1, {}, "", false, {}}};
  const double alone = learn(garden, {}).shares.back().share;
  const LearnAnswer with = learn(garden, {{}, {others}});
  EXPECT_LT(with.shares.back().share, alone);
  EXPECT_GT(with.shares.back().share, 0.25);
  EXPECT_EQ(with.others_sowings, 1);
  EXPECT_EQ(with.sowings, 1);
}

TEST(Learning, ArmsOfATrialAreCompared) {
  LoadedGarden garden = a_garden();
  const Date on = garden.today - Days{400};
  for (const EntryId id : {1, 2}) {
    RecordedSowing sowing = sowing_of(id, "Crassula umbella", on, 40);
    sowing.trial = "cover";
    sowing.arm = id == 1 ? "bare" : "covered";
    garden.records.sowings.push_back(sowing);
  }
  garden.records.counts = {counted(1, on + Days{100}, 8), counted(2, on + Days{100}, 30)};
  const LearnAnswer answer = learn(garden, {});
  ASSERT_EQ(answer.trials.size(), 1U);
  ASSERT_EQ(answer.trials.front().pairs.size(), 1U);
  EXPECT_EQ(answer.trials.front().pairs.front().a, "covered");
  EXPECT_TRUE(answer.trials.front().pairs.front().settled);
}

TEST(Learning, WhatIsGivenAwayTellsNeitherPlaceNorDayNorName) {
  LoadedGarden garden = a_garden();
  garden.garden.name = "my own garden";
  const Date on = garden.today - Days{400};
  garden.records.sowings = {sowing_of(1, "Bulbine annua", on, 40)};
  garden.records.sowings.front().trial = "behind the shed";
  garden.records.counts = {counted(1, on + Days{200}, 20)};
  const SharedCounts counts = counts_to_share(garden);
  ASSERT_EQ(counts.sowings.size(), 1U);
  EXPECT_EQ(counts.sowings.front().came, 20);
  EXPECT_EQ(counts.sowings.front().looks.front(), (std::pair{200, 20}));
  ASSERT_TRUE(counts.climate);
  EXPECT_EQ(counts.climate->warmest_nights_c, 17);
  const std::string text = shared_counts_text(counts);
  for (const std::string& secret : {std::string("my own garden"),
                                    std::string("behind the shed"),
                                    std::string("open bench"),
                                    format_iso_date(on),
                                    std::to_string(year_of(on)),
                                    std::string("latitude")}) {
    EXPECT_EQ(text.find(secret), std::string::npos) << secret;
  }
}

TEST(PlanningATrial, SharesWhatIsInHandAndDrawsThePots) {
  const TrialAnswer answer = plan_trial(a_garden(), {7});
  EXPECT_EQ(answer.packets, 3);
  EXPECT_EQ(answer.looked_at, 2);
  ASSERT_FALSE(answer.trials.empty());
  for (const PlannedTrialLine& line : answer.trials) {
    EXPECT_GT(line.share_a, line.share_b);
    EXPECT_EQ(static_cast<int>(line.pots.size()), 2 * line.pots_an_arm);
    EXPECT_EQ(std::count(line.pots.begin(), line.pots.end(), "a"), line.pots_an_arm);
  }
  EXPECT_TRUE(std::any_of(answer.trials.begin(), answer.trials.end(), [](const auto& line) {
    return line.taxon == "Crassula umbella";
  }));
  EXPECT_EQ(plan_trial(a_garden(), {7}).trials.front().pots, answer.trials.front().pots);
}

TEST(PlanningATrial, LeavesAlonePacketsThatCannotBeReplaced) {
  LoadedGarden garden = a_garden();
  for (Packet& packet : garden.packets) {
    packet.irreplaceable = true;
  }
  EXPECT_TRUE(plan_trial(garden, {}).trials.empty());
}

} // namespace
} // namespace nightsow::planner
