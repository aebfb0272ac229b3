#include "planner/model/expected_plants.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double first_of_them = 0.1;
constexpr double least_seedlings = 1e-4;

void add(Losses& sum, const Losses& losses, double weight) {
  sum.dead += weight * losses.dead;
  sum.not_ripe += weight * losses.not_ripe;
  sum.nights_too_warm += weight * losses.nights_too_warm;
  sum.deferred += weight * losses.deferred;
  sum.lost_wet += weight * losses.lost_wet;
  sum.dried += weight * losses.dried;
  sum.heat += weight * losses.heat;
  sum.frost += weight * losses.frost;
  sum.too_late += weight * losses.too_late;
  sum.rest += weight * losses.rest;
}

// The day by which that part of the seedlings is up.
std::optional<int> day_up(const Establishment& outcome, double part) {
  double up = 0.0;
  for (std::size_t day = 0; day < outcome.up.size(); ++day) {
    up += outcome.up[day];
    if (up >= part * outcome.seedlings) {
      return static_cast<int>(day);
    }
  }
  return std::nullopt;
}

// Empty where less than half of all cases have a day.
std::optional<int> middle(std::vector<int> days, std::size_t of) {
  const std::size_t rank = (of + 1) / 2;
  if (days.size() < rank) {
    return std::nullopt;
  }
  const auto nth = days.begin() + static_cast<std::ptrdiff_t>(rank) - 1;
  std::nth_element(days.begin(), nth, days.end());
  return *nth;
}

} // namespace

ExpectedPlants::ExpectedPlants(std::span<const SeedCourse* const> courses,
                               std::span<const species_rules::SeedParameters> seeds,
                               const PotCare& care,
                               const SeasonDays& season)
    : seeds_(seeds.begin(), seeds.end()), days_(courses.front()->days()) {
  cases_.reserve(seeds_.size());
  for (std::size_t i = 0; i < seeds_.size(); ++i) {
    cases_.emplace_back(*courses[i % courses.size()], seeds_[i], care, season);
  }
}

Expectation ExpectedPlants::watered_on(int day, const SharesOnDay& shares) {
  Expectation expected;
  expected.day = day;
  const double weight = 1.0 / static_cast<double>(cases_.size());
  std::vector<int> first;
  std::vector<int> half;
  for (std::size_t i = 0; i < cases_.size(); ++i) {
    const Establishment outcome = cases_[i].watered_on(day, shares(seeds_[i], day));
    expected.seedling_shares.push_back(outcome.seedlings);
    expected.plant_shares.push_back(outcome.plants);
    expected.seedlings += weight * outcome.seedlings;
    expected.plants += weight * outcome.plants;
    add(expected.losses, outcome.losses, weight);
    if (outcome.seedlings > least_seedlings) {
      first.push_back(*day_up(outcome, first_of_them));
      half.push_back(*day_up(outcome, 0.5));
    }
  }
  expected.first_up = middle(std::move(first), cases_.size());
  expected.half_up = middle(std::move(half), cases_.size());
  return expected;
}

double ExpectedPlants::plants_on(int day, const SharesOnDay& shares) {
  auto sound = plants_of_sound_seed_.find(day);
  if (sound == plants_of_sound_seed_.end()) {
    std::vector<double> plants;
    for (SeedSeason& one : cases_) {
      plants.push_back(one.plants_of_sound_seed(day));
    }
    sound = plants_of_sound_seed_.emplace(day, std::move(plants)).first;
  }
  double sum = 0.0;
  for (std::size_t i = 0; i < cases_.size(); ++i) {
    const SeedShares of = shares(seeds_[i], day);
    sum += of.alive * of.ripe * sound->second[i];
  }
  return sum / static_cast<double>(cases_.size());
}

std::vector<SeedsOnDay> ExpectedPlants::on_day(int first_water,
                                               const SharesOnDay& shares,
                                               int today) {
  std::vector<SeedsOnDay> list;
  list.reserve(cases_.size());
  for (std::size_t i = 0; i < cases_.size(); ++i) {
    list.push_back(cases_[i].on_day(first_water, shares(seeds_[i], first_water), today));
  }
  return list;
}

int ExpectedPlants::rest_begins() const {
  std::vector<int> days;
  days.reserve(cases_.size());
  for (const SeedSeason& one : cases_) {
    days.push_back(one.rest_begins());
  }
  return *middle(std::move(days), cases_.size());
}

} // namespace nightsow::planner
