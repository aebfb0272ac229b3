#include "planner/model/watched_sowing.hpp"

#include "species-rules/development.hpp"
#include "species-rules/release.hpp"

#include <algorithm>
#include <cstddef>
#include <span>
#include <vector>

namespace nightsow::planner {

namespace {

using species_rules::SeedParameters;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

double progress_on(const SeedCourse& course, int day, const SeedParameters& seed) {
  double rate = 0.0;
  const std::span<const float> hours = course.hours_of(day);
  for (const float hour_c : hours) {
    rate += species_rules::thermal_rate(static_cast<double>(hour_c), seed.cardinal);
  }
  return rate / static_cast<double>(hours.size()) *
         species_rules::swing_factor(course.swing_k[at(day)], seed.swing);
}

std::optional<double> deciding_c(const SeedCourse& course,
                                 int water,
                                 int day,
                                 const SeedParameters& seed) {
  const int so_far = std::min(day - water + 1, seed.of);
  const std::optional<int> rank = species_rules::deciding_night(seed.nights, seed.of, so_far);
  if (!rank) {
    return std::nullopt;
  }
  std::vector<double> nights(course.night_c.begin() + (day - so_far + 1),
                             course.night_c.begin() + day + 1);
  std::nth_element(nights.begin(), nights.begin() + (*rank - 1), nights.end());
  return nights[at(*rank - 1)];
}

} // namespace

std::optional<WatchedSowing> watched_sowing(const WhatCame& told,
                                            const SeedCourse& course,
                                            const SeedParameters& seed) {
  const int water = days_between(course.first, *told.first_water);
  if (water < 0 || water >= course.days()) {
    return std::nullopt;
  }
  WatchedSowing watched;
  watched.sowing = static_cast<int>(told.sowing->id);
  watched.seeds = std::max(told.sowing->seeds, told.came());
  watched.pots = told.sowing->pots;
  const int pressed = told.firm + told.soft;
  if (pressed > 0) {
    watched.firm_share = static_cast<double>(told.firm) / pressed;
  }
  double progress = 0.0;
  std::optional<double> coolest;
  for (int day = water; day < course.days(); ++day) {
    progress += progress_on(course, day, seed);
    if (const std::optional<double> now = deciding_c(course, water, day, seed)) {
      coolest = std::min(coolest.value_or(*now), *now);
    }
    watched.progress_c_d.push_back(progress);
    watched.coolest_c.push_back(coolest);
  }
  for (const CameBy& look : told.looks) {
    const int day = days_between(*told.first_water, look.on);
    if (day > 0 && day < static_cast<int>(watched.progress_c_d.size())) {
      watched.looks.push_back({day, look.came});
    }
  }
  return watched;
}

} // namespace nightsow::planner
