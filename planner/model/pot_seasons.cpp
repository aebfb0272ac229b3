#include "planner/model/pot_seasons.hpp"

#include <algorithm>
#include <cstddef>

namespace nightsow::planner {

namespace {

using species_rules::SeedParameters;

double firm_share(const SeedsOnDay& seeds) {
  return seeds.not_ripe + seeds.nights_too_warm + seeds.to_come + seeds.deferred + seeds.too_late;
}

SeedParameters not_deferred_twice(SeedParameters seed, const SeedsOnDay& before) {
  const double firm = firm_share(before);
  seed.deferral_share *= firm > 0.0 ? (firm - before.deferred) / firm : 1.0;
  return seed;
}

// What has been lost, and what is up, stays so; `next` tells of what was firm.
SeedsOnDay together(const SeedsOnDay& before, SeedsOnDay next, std::size_t days_between) {
  next.dead = before.dead;
  next.heat += before.heat;
  next.lost_wet += before.lost_wet;
  next.dried += before.dried;
  next.up_so_far += before.up_so_far;
  std::vector<double> up = before.up;
  up.resize(std::max(up.size(), days_between + next.up.size()), 0.0);
  for (std::size_t day = 0; day < next.up.size(); ++day) {
    up[days_between + day] += next.up[day];
  }
  next.up = std::move(up);
  return next;
}

SeedsOnDay case_of_pot(std::span<const PotSeason> seasons,
                       std::size_t draw,
                       const SeedParameters& seed,
                       const SeedShares& shares,
                       const PotCare& care) {
  const auto course_of = [draw](const PotSeason& season) -> const SeedCourse& {
    return *season.courses[draw % season.courses.size()];
  };
  const PotSeason& first = seasons.front();
  SeedsOnDay seeds =
      SeedSeason(course_of(first), seed, care, first.days).on_day(first.water, shares, first.last);
  for (const PotSeason& season : seasons.subspan(1)) {
    const SeedParameters then = not_deferred_twice(seed, seeds);
    const SeedsOnDay next = SeedSeason(course_of(season), then, care, season.days)
                                .on_day(season.water, {firm_share(seeds), 1.0}, season.last);
    const int gap = days_between(course_of(first).first, course_of(season).first);
    seeds = together(seeds, next, static_cast<std::size_t>(gap));
  }
  return seeds;
}

} // namespace

std::vector<SeedsOnDay> cases_of_pot(std::span<const PotSeason> seasons,
                                     std::span<const SeedParameters> draws,
                                     std::span<const SeedShares> shares,
                                     const PotCare& care) {
  std::vector<SeedsOnDay> cases;
  cases.reserve(draws.size());
  for (std::size_t draw = 0; draw < draws.size(); ++draw) {
    cases.push_back(case_of_pot(seasons, draw, draws[draw], shares[draw], care));
  }
  return cases;
}

int rest_of_pot(const PotSeason& season, std::span<const SeedParameters> draws) {
  std::vector<int> days;
  days.reserve(draws.size());
  for (std::size_t draw = 0; draw < draws.size(); ++draw) {
    const SeedCourse& course = *season.courses[draw % season.courses.size()];
    days.push_back(rest_day(course, draws[draw], season.days).day);
  }
  const auto middle = days.begin() + std::ssize(days) / 2;
  std::nth_element(days.begin(), middle, days.end());
  return *middle;
}

} // namespace nightsow::planner
