#include "tests/support/simulated_sowings.hpp"

#include "planner/model/seed_place.hpp"
#include "species-rules/drawn_parameters.hpp"
#include "tests/support/invented_bench.hpp"

#include <boost/math/special_functions/gamma.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace nightsow::support {

namespace {

using namespace planner;

constexpr int draws = 256;
constexpr int truths = 499;

double uniform(std::mt19937& random) {
  return (static_cast<double>(random()) + 0.5) / 4294967296.0;
}

int one_of(std::mt19937& random, int many) {
  return static_cast<int>(uniform(random) * many);
}

// Two years in a shelf; ripening as far as an invented warm summer goes (common practice, no
// source).
SeedShares shares_of(const species_rules::SeedParameters& seed) {
  const double alive = seed.half_life_years > 0.0 ? std::exp2(-2.0 / seed.half_life_years) : 1.0;
  const double ripe =
      seed.after_ripening_c_d > 0.0 ? std::min(1.0, 1500.0 / seed.after_ripening_c_d) : 1.0;
  return {alive * seed.germination_share, ripe};
}

// Each weight's part of a whole that is drawn about them (Dirichlet).
std::vector<double> drawn_about(const std::vector<double>& weights, std::mt19937& random) {
  std::vector<double> parts;
  for (const double weight : weights) {
    parts.push_back(weight > 0.0 ? boost::math::gamma_p_inv(weight, uniform(random)) : 0.0);
  }
  const double sum = std::accumulate(parts.begin(), parts.end(), 0.0);
  for (double& part : parts) {
    part /= sum;
  }
  return parts;
}

std::vector<int> thrown(int seeds, const std::vector<double>& parts, std::mt19937& random) {
  std::vector<int> counts(parts.size(), 0);
  for (int i = 0; i < seeds; ++i) {
    double left = uniform(random);
    std::size_t cell = 0;
    while (cell + 1 < parts.size() && left >= parts[cell]) {
      left -= parts[cell];
      ++cell;
    }
    ++counts[cell];
  }
  return counts;
}

InventedClimate climate_of() {
  InventedClimate climate;
  climate.night_mean_c = 12.0;
  climate.night_half_swing_k = 5.0;
  climate.night_sd_k = 2.0;
  return climate;
}

} // namespace

SimulatedSowings::SimulatedSowings(const species_rules::RuleFor& kind, unsigned seed_number)
    : truths_(species_rules::drawn_parameters(kind, truths)),
      draws_(species_rules::drawn_parameters(kind, draws)), random_(seed_number) {
  const InventedBench here = bench_of({.climate = climate_of()});
  const BenchSeason season = here.bench_season();
  const BenchSeason* const only[] = {&season};
  course_ =
      seed_courses(
          here.climate, only, seed_place(here.garden.garden, here.garden.garden.benches.front()), 1)
          .front();
  season_ = season_days(here.season, course_.first);
  const PotCare care;
  for (const species_rules::SeedParameters& seed : truths_) {
    truth_seasons_.emplace_back(course_, seed, care, season_);
  }
  for (const species_rules::SeedParameters& seed : draws_) {
    seasons_.emplace_back(course_, seed, care, season_);
  }
}

const std::vector<SeedsOnDay>& SimulatedSowings::cases(int water, int today) {
  std::vector<SeedsOnDay>& list = cases_[{water, today}];
  if (list.empty()) {
    for (std::size_t i = 0; i < seasons_.size(); ++i) {
      list.push_back(seasons_[i].on_day(water, shares_of(draws_[i]), today));
    }
  }
  return list;
}

SimulatedSowing SimulatedSowings::next() {
  constexpr std::array waters{30, 60, 90};
  constexpr std::array waits{21, 42, 70};
  SimulatedSowing sowing;
  sowing.water = waters.at(static_cast<std::size_t>(one_of(random_, 3)));
  sowing.today = sowing.water + waits.at(static_cast<std::size_t>(one_of(random_, 3)));
  sowing.record.seeds = 40 + one_of(random_, 60);
  sowing.record.pots = 1 + one_of(random_, 2);
  const auto truth = static_cast<std::size_t>(one_of(random_, truths));
  const SeedsOnDay seeds =
      truth_seasons_[truth].on_day(sowing.water, shares_of(truths_[truth]), sowing.today);
  const double size = sowing.record.pots / pots_differ - 1.0;
  std::vector<double> weights;
  double before = 0.0;
  for (int day = sowing.water + 14; day <= sowing.today; day += 14) {
    const int look = day + 14 > sowing.today ? sowing.today : day;
    const double up = std::accumulate(seeds.up.begin(), seeds.up.begin() + look + 1, 0.0);
    weights.push_back(size * (up - before));
    before = up;
    sowing.record.looks.push_back({look, 0});
  }
  for (const Cause cause : all_causes) {
    weights.push_back(size * share_of(seeds, cause));
  }
  const std::vector<int> counts =
      thrown(sowing.record.seeds, drawn_about(weights, random_), random_);
  int seen = 0;
  for (std::size_t i = 0; i < sowing.record.looks.size(); ++i) {
    seen += counts[i];
    sowing.record.looks[i].seen = seen;
  }
  sowing.missing.assign(counts.begin() + static_cast<std::ptrdiff_t>(sowing.record.looks.size()),
                        counts.end());
  return sowing;
}

void add_held(const CauseShare& cause, int missing, int truth, Held& held) {
  if (*std::max_element(cause.chances.begin(), cause.chances.end()) > 0.5) {
    return;
  }
  const auto at = cause.chances.begin() + truth;
  const double below = std::accumulate(cause.chances.begin(), at, 0.0);
  const double to = below + *at;
  const auto within = [&](double from, double up_to) {
    return *at > 0.0 ? std::max(0.0, std::min(to, up_to) - std::max(below, from)) / *at : 0.0;
  };
  const double share = static_cast<double>(truth) / missing;
  ++held.ranges;
  held.eight_in_ten += within(0.1, 0.9);
  held.half += within(0.25, 0.75);
  held.both_ends += share > cause.p10 - 1e-9 && share < cause.p90 + 1e-9 ? 1.0 : 0.0;
}

void add_held(const Account& account, const SimulatedSowing& truth, Held& held) {
  for (std::size_t i = 0; i < account.causes.size(); ++i) {
    add_held(account.causes[i], account.missing, truth.missing[i], held);
  }
}

} // namespace nightsow::support
