#include "planner/model/assign.hpp"

#include "planner/model/lay_by_hand.hpp"
#include "tests/support/numbers.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace nightsow::planner {
namespace {

// Whether a laying keeps within the limits, checked plainly.
bool keeps(const std::vector<SowingToLay>& sowings,
           const LayingLimits& limits,
           const std::vector<int>& picks) {
  std::map<int, int> day_pots;
  std::map<int, int> bench_pots;
  std::map<std::pair<int, int>, int> mat_pots;
  for (std::size_t s = 0; s < sowings.size(); ++s) {
    if (picks[s] < 0) {
      continue;
    }
    const DayChoice& choice = sowings[s].choices.at(static_cast<std::size_t>(picks[s]));
    day_pots[choice.day] += std::min(sowings[s].pots, limits.pots_a_day.value_or(1000));
    if (sowings[s].bench) {
      bench_pots[*sowings[s].bench] += sowings[s].pots;
    }
    for (int day = choice.mat_from; sowings[s].mat && day <= choice.mat_until; ++day) {
      mat_pots[{*sowings[s].mat, day}] += sowings[s].pots;
    }
  }
  const auto within = [](int pots, const std::optional<int>& room) {
    return !room || pots <= *room;
  };
  return std::all_of(day_pots.begin(),
                     day_pots.end(),
                     [&](const auto& d) { return within(d.second, limits.pots_a_day); }) &&
         std::all_of(bench_pots.begin(),
                     bench_pots.end(),
                     [&](const auto& b) {
                       return within(b.second,
                                     limits.bench_places.at(static_cast<std::size_t>(b.first)));
                     }) &&
         std::all_of(mat_pots.begin(), mat_pots.end(), [&](const auto& m) {
           return within(m.second, limits.mat_places.at(static_cast<std::size_t>(m.first.first)));
         });
}

// Every way there is, one after the other.
double best_by_trying_all(const std::vector<SowingToLay>& sowings,
                          const LayingLimits& limits,
                          std::vector<int>& picks) {
  if (picks.size() == sowings.size()) {
    if (!keeps(sowings, limits, picks)) {
      return -1.0;
    }
    double value = 0.0;
    for (std::size_t s = 0; s < sowings.size(); ++s) {
      value += picks[s] < 0 ? 0.0 : sowings[s].choices.at(static_cast<std::size_t>(picks[s])).value;
    }
    return value;
  }
  double best = -1.0;
  const auto choices = static_cast<int>(sowings[picks.size()].choices.size());
  for (int pick = -1; pick < choices; ++pick) {
    picks.push_back(pick);
    best = std::max(best, best_by_trying_all(sowings, limits, picks));
    picks.pop_back();
  }
  return best;
}

using support::Numbers;

std::vector<SowingToLay> some_sowings(Numbers& numbers) {
  std::vector<SowingToLay> sowings;
  for (int s = 0; s < 6; ++s) {
    SowingToLay sowing;
    sowing.pots = 1 + numbers.upto(4);
    sowing.bench = numbers.upto(1);
    if (numbers.upto(2) == 0) {
      sowing.mat = 0;
    }
    for (int day = 0; day < 4; ++day) {
      if (numbers.upto(3) > 0) {
        const int held = numbers.upto(3);
        sowing.choices.push_back({day, 1.0 + numbers.upto(99) / 10.0, day, day + held});
      }
    }
    sowings.push_back(sowing);
  }
  return sowings;
}

TEST(Laying, IsWorthAsMuchAsTheBestOfAllWaysWithinItsGap) {
  int left_over = 0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    Numbers numbers{seed * 7919};
    const std::vector<SowingToLay> sowings = some_sowings(numbers);
    const LayingLimits limits{
        3 + numbers.upto(4), {8 + numbers.upto(6), 6 + numbers.upto(8)}, {3 + numbers.upto(3)}};
    std::vector<int> none;
    const double best = best_by_trying_all(sowings, limits, none);
    const Laid laid = lay(sowings, limits);
    std::vector<int> picks;
    for (std::size_t s = 0; s < sowings.size(); ++s) {
      const auto& choices = sowings[s].choices;
      const auto at = std::find_if(choices.begin(), choices.end(), [&](const DayChoice& choice) {
        return laid.days[s] && choice.day == *laid.days[s];
      });
      picks.push_back(at == choices.end() ? -1 : static_cast<int>(at - choices.begin()));
      left_over += at == choices.end() && !choices.empty() ? 1 : 0;
    }
    EXPECT_TRUE(keeps(sowings, limits, picks)) << seed;
    EXPECT_LE(laid.value, best + 1e-6) << seed;
    EXPECT_GE(laid.value, best * (1.0 - good_enough_gap) - 1e-6) << seed;
    EXPECT_GE(laid.bound, best - 1e-6) << seed;
    EXPECT_NEAR(laid.gap, (laid.bound - laid.value) / laid.bound, 1e-12) << seed;
  }
  EXPECT_GT(left_over, 0) << "no case was tight enough to test anything";
}

// The fewest pots more, in all, with which nothing is left over: every way tried.
int fewest_missing(const std::vector<SowingToLay>& sowings,
                   const LayingLimits& limits,
                   std::vector<std::optional<std::size_t>>& picks) {
  if (picks.size() == sowings.size()) {
    const LayingRoom room = laying_room(sowings, limits);
    const std::vector<int> used = pots_used(room, picks);
    std::map<std::pair<MissingPlaces::Limit, int>, int> missing;
    for (std::size_t place = 0; place < used.size(); ++place) {
      int& most = missing[{room.places[place].limit, room.places[place].which}];
      most = std::max(most, used[place] - room.room[place]);
    }
    int sum = 0;
    for (const auto& [limit, pots] : missing) {
      sum += pots;
    }
    return sum;
  }
  const std::size_t choices = sowings[picks.size()].choices.size();
  int fewest = 1000000;
  for (std::size_t pick = 0; pick < std::max<std::size_t>(choices, 1); ++pick) {
    picks.push_back(choices == 0 ? std::nullopt : std::optional{pick});
    fewest = std::min(fewest, fewest_missing(sowings, limits, picks));
    picks.pop_back();
  }
  return fewest;
}

int pots_in(const std::vector<MissingPlaces>& missing) {
  int sum = 0;
  for (const MissingPlaces& one : missing) {
    sum += one.pots;
  }
  return sum;
}

TEST(Laying, TellsHowManyPlacesAreMissingWheneverSomethingIsLeftOver) {
  int cases = 0;
  int too_many = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    Numbers numbers{seed * 104729};
    const std::vector<SowingToLay> sowings = some_sowings(numbers);
    const LayingLimits limits{
        2 + numbers.upto(3), {5 + numbers.upto(4), 5 + numbers.upto(4)}, {2 + numbers.upto(3)}};
    const Laid laid = lay(sowings, limits);
    bool left_over = false;
    for (std::size_t s = 0; s < sowings.size(); ++s) {
      left_over = left_over || (!laid.days[s] && !sowings[s].choices.empty());
    }
    EXPECT_EQ(left_over, !laid.missing.empty()) << seed;
    if (!left_over) {
      continue;
    }
    std::vector<std::optional<std::size_t>> none;
    const int fewest = fewest_missing(sowings, limits, none);
    ++cases;
    too_many += pots_in(laid.missing) - fewest;
    EXPECT_GE(pots_in(laid.missing), fewest) << seed;
    EXPECT_LE(pots_in(laid.missing), fewest + 3) << seed;
  }
  ASSERT_GT(cases, 30);
  EXPECT_LT(too_many, cases / 2) << "on average less than half a pot more than the fewest";
}

TEST(Laying, ByHandKeepsWithinTheLimitsAndFallsLittleShort) {
  double value = 0.0;
  double best = 0.0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    Numbers numbers{seed * 7919};
    const std::vector<SowingToLay> sowings = some_sowings(numbers);
    const LayingLimits limits{
        3 + numbers.upto(4), {8 + numbers.upto(6), 6 + numbers.upto(8)}, {3 + numbers.upto(3)}};
    const Picks picks = lay_by_hand(sowings, laying_room(sowings, limits));
    std::vector<int> plain;
    for (const auto& pick : picks) {
      plain.push_back(pick ? static_cast<int>(*pick) : -1);
    }
    EXPECT_TRUE(keeps(sowings, limits, plain)) << seed;
    std::vector<int> none;
    value += value_of(sowings, picks);
    best += best_by_trying_all(sowings, limits, none);
  }
  EXPECT_LE(value, best + 1e-6);
  EXPECT_GE(value, 0.95 * best);
}

TEST(Laying, SowsFirstWhatLosesMostByWaiting) {
  const SowingToLay lasting{{{0, 10.0, 0, -1}, {7, 9.9, 7, -1}}, 5, {}, {}};
  const SowingToLay fading{{{0, 8.0, 0, -1}, {7, 5.0, 7, -1}}, 5, {}, {}};
  const Laid laid = lay({lasting, fading}, {5, {}, {}});
  EXPECT_EQ(laid.days.at(0), 7);
  EXPECT_EQ(laid.days.at(1), 0);
  EXPECT_NEAR(laid.value, 17.9, 1e-9);
}

TEST(Laying, TellsOfWhichDayPlacesAreMissing) {
  const SowingToLay one_day{{{3, 4.0, 3, -1}}, 4, {}, {}};
  const Laid laid = lay({one_day, one_day, one_day}, {10, {}, {}});
  ASSERT_EQ(laid.missing.size(), 1U);
  EXPECT_EQ(laid.missing.front().limit, MissingPlaces::Limit::pots_a_day);
  EXPECT_EQ(laid.missing.front().which, 3);
  EXPECT_EQ(laid.missing.front().pots, 2);
}

TEST(Laying, OnAMatLooksAtTheDaysOnWhichItsPlacesAreHeld) {
  const SowingToLay early{{{0, 5.0, 0, 9}}, 3, {}, 0};
  const SowingToLay late{{{10, 5.0, 10, 19}}, 3, {}, 0};
  const SowingToLay between{{{5, 4.0, 5, 14}}, 2, {}, 0};
  const Laid laid = lay({early, late, between}, {{}, {}, {4}});
  EXPECT_TRUE(laid.days.at(0) && laid.days.at(1));
  EXPECT_FALSE(laid.days.at(2));
  ASSERT_EQ(laid.missing.size(), 1U);
  EXPECT_EQ(laid.missing.front().limit, MissingPlaces::Limit::mat);
  EXPECT_EQ(laid.missing.front().pots, 1);
}

TEST(Laying, ASowingOfMorePotsThanADayHoldsFillsItsDay) {
  const SowingToLay large{{{0, 5.0, 0, -1}}, 30, {}, {}};
  const SowingToLay small{{{0, 5.0, 0, -1}, {1, 4.0, 1, -1}}, 1, {}, {}};
  const Laid laid = lay({large, small}, {20, {}, {}});
  EXPECT_EQ(laid.days.at(0), 0);
  EXPECT_EQ(laid.days.at(1), 1);
}

} // namespace
} // namespace nightsow::planner
