#include "planner/answers/seed_outlook.hpp"

#include "climate/base/problem.hpp"
#include "planner/garden/store_stages.hpp"
#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace nightsow::planner {
namespace {

using support::day;

const Date today = day("2026-03-20");

SeedOutlookAnswer outlook(std::string taxon, std::string_view age, std::string_view stored) {
  static const auto catalogue = species_rules::Catalogue::embedded();
  SeedOutlookRequest request;
  request.taxon = std::move(taxon);
  request.age = parse_seed_age(age).value();
  if (!stored.empty()) {
    request.stored = parse_store_stages(stored).value();
  }
  return seed_outlook(catalogue, request, today);
}

TEST(SeedOutlook, OlderSeedIsLessAliveAndTheFridgeKeepsIt) {
  const double young = outlook("Albuca", "6mo", "shelf").today.alive.mean;
  const double old = outlook("Albuca", "18mo", "shelf").today.alive.mean;
  const double cool = outlook("Albuca", "18mo", "fridge").today.alive.mean;
  EXPECT_LT(old, young);
  EXPECT_GT(cool, old);
}

TEST(SeedOutlook, OneOfTheWaysIsBestAndNoOtherIsMuchBetter) {
  for (const char* taxon : {"Albuca", "Conophytum", "Bulbine annua", "Pelargonium"}) {
    const SeedOutlookAnswer answer = outlook(taxon, "3mo", "shelf");
    const auto is_best = [](const KeepingAnswer& way) { return way.best; };
    ASSERT_EQ(std::count_if(answer.ways.begin(), answer.ways.end(), is_best), 1) << taxon;
    const auto best = std::find_if(answer.ways.begin(), answer.ways.end(), is_best);
    for (const KeepingAnswer& way : answer.ways) {
      EXPECT_LE(way.in_a_year.alive_and_ripe.mean,
                best->in_a_year.alive_and_ripe.mean + 0.0111) // worth_the_trouble, and rounding
          << taxon << ' ' << way.way;
    }
  }
}

TEST(SeedOutlook, SeedThatDiesDryCannotBeKeptForAYearAndWaitsBestCoolAndBarelyMoist) {
  const SeedOutlookAnswer answer = outlook("Brunsvigia", "20d", "shelf");
  EXPECT_TRUE(answer.ways.empty());
  ASSERT_EQ(answer.waits.size(), 3U);
  EXPECT_EQ(answer.waits.front().way, "cool_moist");
  EXPECT_TRUE(answer.waits.front().best);
  for (const WaitAnswer& wait : answer.waits) {
    EXPECT_LE(wait.after_two_weeks.mean, answer.waits.front().after_two_weeks.mean) << wait.way;
    EXPECT_LE(wait.after_eight_weeks.mean, wait.after_two_weeks.mean) << wait.way;
  }
  EXPECT_TRUE(std::any_of(answer.reasons.begin(), answer.reasons.end(), [](const Reason& reason) {
    return reason.code == ReasonCode::fleshy_at_once;
  }));
}

// Dry the one, moist the other: each kills what keeps its opposite.
TEST(SeedOutlook, ADampFridgeKeepsFleshySeedThatADryShelfKillsAndKillsWhatAShelfKeeps) {
  const auto alive = [](const char* taxon, const char* stored) {
    return outlook(taxon, "3mo", stored).today.alive.mean;
  };
  EXPECT_GT(alive("Haemanthus", "fridge damp"), alive("Haemanthus", "shelf") + 0.3);
  EXPECT_LT(alive("Albuca", "shelf damp"), alive("Albuca", "shelf") - 0.1);
}

TEST(SeedOutlook, SeedThatIsShortLivedButBearsDryingIsShownWaysToBeKept) {
  const SeedOutlookAnswer answer = outlook("Eriospermum", "2mo", "shelf");
  EXPECT_TRUE(answer.waits.empty());
  EXPECT_GE(answer.ways.size(), 2U);
  EXPECT_EQ(answer.advice, "sow_at_once");
}

TEST(SeedOutlook, MoreOfHardCoatedSeedComesUpOnceItIsNicked) {
  const SeedOutlookAnswer answer = outlook("Pelargonium vitifolium", "2y", "shelf");
  ASSERT_TRUE(answer.comes_up && answer.comes_up_treated);
  EXPECT_GT(*answer.comes_up_treated, 2.0 * *answer.comes_up);
  EXPECT_EQ(answer.treatments, (std::vector<std::string>{"smoke", "scarify"}));
  EXPECT_FALSE(outlook("Albuca", "2mo", "shelf").comes_up_treated);
}

TEST(SeedOutlook, AnUntoldStoreIsSaidAndMakesItLessSure) {
  const SeedOutlookAnswer untold = outlook("Albuca", "18mo", "");
  EXPECT_FALSE(untold.store_known);
  EXPECT_GT(untold.today.alive.mean, outlook("Albuca", "18mo", "shelf").today.alive.mean);
  EXPECT_LT(untold.today.alive.mean, outlook("Albuca", "18mo", "fridge").today.alive.mean);
}

TEST(SeedOutlook, WhatItStandsOnAreTheValuesOfSeedAndTheirSourcesAlone) {
  const RuleShowAnswer grounds = outlook("Albuca", "18mo", "shelf").grounds;
  EXPECT_EQ(grounds.values.size(), 6U);
  for (const RuleSource& source : grounds.sources) {
    EXPECT_TRUE(std::any_of(grounds.values.begin(), grounds.values.end(), [&](const auto& value) {
      return value.source == source.id;
    })) << source.id;
  }
}

TEST(SeedOutlook, ATestFromBeforeTheHarvestIsRefused) {
  static const auto catalogue = species_rules::Catalogue::embedded();
  SeedOutlookRequest request;
  request.taxon = "Albuca";
  request.age = parse_seed_age("90d").value();
  request.tested = GerminationTest{};
  request.tested->sprouted = 5;
  request.tested->of = 10;
  request.tested->on = day("2025-06-01");
  EXPECT_THROW(static_cast<void>(seed_outlook(catalogue, request, today)), UsageError);
  request.tested->on = day("2026-03-01");
  EXPECT_NO_THROW(static_cast<void>(seed_outlook(catalogue, request, today)));
}

} // namespace
} // namespace nightsow::planner
