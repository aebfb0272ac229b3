#include "climate/backtest.hpp"

#include "climate/past_seasons.hpp"
#include "climate/smooth_year.hpp"
#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

#include <numeric>

namespace nightsow::climate {
namespace {

using support::invented_series;

constexpr support::InventedClimate with_weather{.years = 36, .night_sd_k = 2.5};

struct Place {
  DailySeries air;
  Phases phases;
};

Place place(const support::InventedClimate& climate) {
  DailySeries air = invented_series(climate);
  const Phases phases = *find_phases(fit_smooth_year(air)->night, 2001).phases;
  return {std::move(air), phases};
}

const LeadScores& lead_of(const Backtest& tested, NightEvent event, int lead_days) {
  const auto& leads = tested.events[event == NightEvent::stirs ? 0 : 1].leads;
  for (const LeadScores& lead : leads) {
    if (lead.lead_days == lead_days) {
      return lead;
    }
  }
  return leads.front();
}

TEST(Backtest, FindsTheOutlookBetterThanPastDatesWhereWeatherPersists) {
  const Place here = place(with_weather);
  const Backtest tested = backtest(here.air, here.phases);
  EXPECT_EQ(tested.seasons, 16); // of 36, 20 come first
  const LeadScores& week = lead_of(tested, NightEvent::stirs, 7);
  EXPECT_GT(week.cases, 20);
  EXPECT_LT(week.crps_outlook, week.crps_possible);
  EXPECT_LT(week.crps_possible, week.crps_past);
}

TEST(Backtest, CountsEveryCaseInOneTenthOfTheMembers) {
  const Place here = place(with_weather);
  for (const EventScores& event : backtest(here.air, here.phases).events) {
    for (const LeadScores& lead : event.leads) {
      if (lead.cases > 0) {
        EXPECT_NEAR(std::accumulate(lead.pit.begin(), lead.pit.end(), 0.0), 1.0, 1e-9);
        EXPECT_GT(lead.coverage_80, 0.5);
      }
    }
  }
}

TEST(Backtest, IsNotMovedByWhatComesAfterATestedSeason) {
  const Place here = place(with_weather);
  // The last two years turn hot and full of holes, so that they are no seasons themselves.
  DailySeries spoilt = here.air;
  for (std::size_t i = spoilt.size() - 730; i < spoilt.size(); ++i) {
    spoilt.set_night(i, i % 8 == 0 ? 40.0F : missing_c);
  }
  DailySeries cut{here.air.first(), here.air.size() - 730};
  for (std::size_t i = 0; i < cut.size(); ++i) {
    cut.set_night(i, here.air.night_c()[i]);
    cut.set_day(i, here.air.day_c()[i]);
  }
  const Backtest after = backtest(spoilt, here.phases);
  const Backtest before = backtest(cut, here.phases);
  ASSERT_EQ(after.seasons, before.seasons);
  ASSERT_LT(after.seasons, backtest(here.air, here.phases).seasons);
  for (std::size_t event = 0; event < 2; ++event) {
    for (std::size_t lead = 0; lead < backtest_leads.size(); ++lead) {
      EXPECT_EQ(after.events[event].leads[lead].crps_outlook,
                before.events[event].leads[lead].crps_outlook);
      EXPECT_EQ(after.events[event].leads[lead].pit, before.events[event].leads[lead].pit);
    }
  }
}

TEST(Backtest, DoesNotLookBehindTheDayOfIssue) {
  const Place here = place(with_weather);
  // What comes after the first cool week at the lowest gate of the last tested season changes none
  // of its cases; it changes none of the others either, which lie before.
  BenchAir whole;
  whole.air = here.air;
  const std::vector<SearchedSeason> seasons = searched_seasons(whole, here.phases);
  const SearchedSeason& last = seasons.back();
  const NightWords words =
      night_words(last.night_c, {}, {.at_or_under = Celsius{8.0}}, first_allowed_day(last.season));
  ASSERT_TRUE(words.stirs.day);
  DailySeries warmer = here.air;
  const auto from = *warmer.index_of(last.season.hottest + Days{*words.stirs.day + 1});
  for (std::size_t i = from; i < warmer.size(); ++i) {
    warmer.set_night(i, warmer.night_c()[i] + 6.0F);
    warmer.set_day(i, warmer.day_c()[i] + 6.0F);
  }
  const EventScores before = backtest(here.air, here.phases).events[0];
  const EventScores after = backtest(warmer, here.phases).events[0];
  for (std::size_t lead = 0; lead < backtest_leads.size(); ++lead) {
    EXPECT_EQ(after.leads[lead].cases, before.leads[lead].cases);
    EXPECT_EQ(after.leads[lead].crps_outlook, before.leads[lead].crps_outlook);
    // One who knew what came would miss by nothing.
    EXPECT_GT(before.leads[lead].crps_outlook, 0.3 * before.leads[lead].crps_possible);
  }
}

TEST(Backtest, ShowsThatAForecastAdds) {
  const Place here = place(with_weather);
  const Backtest tested = backtest(here.air, here.phases, 7);
  const LeadScores& week = lead_of(tested, NightEvent::stirs, 7);
  ASSERT_TRUE(week.crps_forecast);
  EXPECT_LT(*week.crps_forecast, week.crps_outlook);
  EXPECT_FALSE(lead_of(backtest(here.air, here.phases), NightEvent::stirs, 7).crps_forecast);
}

TEST(Backtest, TestsNoSeasonWithoutTwentyBeforeIt) {
  const Place here = place({.years = 20, .night_sd_k = 2.5});
  const Backtest tested = backtest(here.air, here.phases);
  EXPECT_EQ(tested.seasons, 0);
  EXPECT_TRUE(tested.gates_c.empty());
  EXPECT_EQ(tested.events.front().leads.front().cases, 0);
}

TEST(Backtest, ScoresTheChanceOfARelapseAgainstTheShareOfPastSeasons) {
  const Place here = place(with_weather);
  const RelapseScores relapse = backtest(here.air, here.phases).events[0].relapse;
  EXPECT_GT(relapse.cases, 20);
  EXPECT_GT(relapse.share, 0.0);
  EXPECT_LE(relapse.share, 1.0);
  EXPECT_LT(relapse.brier, relapse.brier_climate);
}

} // namespace
} // namespace nightsow::climate
