#include "planner/answers/expectation.hpp"

#include "planner/answers/figures.hpp"
#include "planner/model/count_range.hpp"
#include "planner/model/expected_plants.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "species-rules/drawn_parameters.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::SeedParameters;

// Fewer plants than this are none, and a week's delay costs nothing.
constexpr double least_plants = 0.05;
constexpr int week_days = 7;

PotCare care_of(const species_rules::Rule& rule) {
  PotCare care;
  care.seed_depth_mm = value_or(rule.sowing.cover_mm, 0.0);
  care.grit = !rule.sowing.cover || rule.sowing.cover->value != species_rules::Cover::none;
  care.bag_until_up = rule.sowing.humidity_cover &&
                      rule.sowing.humidity_cover->value == species_rules::HumidityCover::useful;
  return care;
}

bool uses_mat(const species_rules::Rule& rule) {
  return start_of(rule) == species_rules::Start::hot && rule.sowing.mat &&
         (rule.sowing.mat->value == species_rules::Mat::needed ||
          rule.sowing.mat->value == species_rules::Mat::helpful);
}

species_rules::Estimate known(double value) {
  return {value, value, value, {}};
}

/// What a germination test makes of the shares reckoned without it.
struct TestTells {
  double alive = 1.0;
  double germination = 1.0;
};

double ratio(double with, double without) {
  return without > 0.0 ? with / without : 1.0;
}

// A test is weighed against the whole rule and its ranges, which no single draw has any more; so it
// is asked once a day, and moves all draws alike.
TestTells test_tells(const LineInput& input, const Packet& untested, Date day) {
  if (!input.packet.tested) {
    return {};
  }
  const SeedState with = seed_state(input.packet, input.rule.rule, day);
  const SeedState without = seed_state(untested, input.rule.rule, day);
  return {ratio(with.alive, without.alive), ratio(with.germination, without.germination)};
}

// What a packet holds on a day to come, kept as planned until then, were the seed as drawn.
SharesOnDay shares_of(const LineInput& input, Date first) {
  Packet untested = input.packet;
  untested.tested.reset();
  species_rules::Rule of_seed;
  of_seed.seed = input.rule.rule.seed;
  return [&input,
          first,
          untested = std::move(untested),
          rule = std::move(of_seed),
          tells = std::map<int, TestTells>{}](const SeedParameters& drawn, int day) mutable {
    rule.seed.half_life_years = known(drawn.half_life_years);
    rule.seed.after_ripening_c_d = known(drawn.after_ripening_c_d);
    rule.seed.germination_share = known(drawn.germination_share);
    const Date date = std::max(input.garden.today, first + Days{day});
    const auto [told, fresh] = tells.try_emplace(day);
    if (fresh) {
      told->second = test_tells(input, untested, date);
    }
    const SeedState state = seed_state(untested, rule, date);
    const double ripe = state.alive > 0.0 ? state.alive_and_ripe / state.alive : 0.0;
    const double alive = std::min(1.0, state.alive * told->second.alive);
    const double germination = std::min(1.0, state.germination * told->second.germination);
    return SeedShares{alive * germination, std::min(1.0, ripe)};
  };
}

NumberSpread spread_of(int seeds, const std::vector<double>& shares) {
  const CountRange range = count_range(seeds, shares, pots_differ);
  return {
      rounded_tenth(range.mean), static_cast<double>(range.p10), static_cast<double>(range.p90)};
}

LostSeeds lost_seeds(int seeds, const Losses& shares) {
  const auto of = [seeds](double share) { return rounded_tenth(share * seeds); };
  return {of(shares.dead),
          of(shares.not_ripe),
          of(shares.nights_too_warm),
          of(shares.deferred),
          of(shares.lost_wet),
          of(shares.dried),
          of(shares.heat),
          of(shares.frost),
          of(shares.too_late),
          of(shares.rest)};
}

} // namespace

std::optional<HeatMat> mat_for(const Garden& garden, const std::string& bench) {
  const auto here = std::find_if(garden.mats.begin(), garden.mats.end(), [&](const HeatMat& mat) {
    return mat.bench == bench;
  });
  if (here != garden.mats.end()) {
    return *here;
  }
  return garden.mats.empty() ? std::nullopt : std::optional{garden.mats.front()};
}

std::optional<Expected> expectation(const LineInput& input,
                                    BenchSeasons& seasons,
                                    const climate::Season& season,
                                    Date first_water) {
  const std::optional<double> counted = input.packet.seeds.middle();
  if (!counted) {
    return std::nullopt;
  }
  const species_rules::Rule& rule = input.rule.rule;
  CoursesWanted wanted{input.bench, season, first_water < season.hottest, std::nullopt};
  if (uses_mat(rule)) {
    wanted.mat = mat_for(input.garden.garden, input.bench);
  }
  const std::vector<SeedCourse>& courses = seasons.courses(wanted);
  if (courses.empty()) {
    return std::nullopt;
  }
  const Date first = courses.front().first;
  const std::vector<SeedParameters> seeds =
      species_rules::drawn_parameters(input.rule, static_cast<int>(courses.size()));
  ExpectedPlants plants{courses, seeds, care_of(rule), season_days(season, first)};
  const SharesOnDay shares = shares_of(input, first);
  const int day = days_between(first, first_water);
  const Expectation now = plants.watered_on(day, shares);
  const auto number = static_cast<int>(std::lround(*counted));
  Expected expected;
  expected.first_water = first_water;
  expected.seedlings = spread_of(number, now.seedling_shares);
  expected.plants = spread_of(number, now.plant_shares);
  expected.plant_shares = now.plant_shares;
  expected.losses = lost_seeds(number, now.losses);
  const auto date_of = [first](int up) { return first + Days{up}; };
  expected.first = now.first_up ? std::optional{date_of(*now.first_up)} : std::nullopt;
  expected.half = now.half_up ? std::optional{date_of(*now.half_up)} : std::nullopt;
  if (now.plants * number >= least_plants && day + week_days < courses.front().days()) {
    const double later = plants.watered_on(day + week_days, shares).plants;
    expected.week_costs = rounded_share(std::max(0.0, 1.0 - later / now.plants));
  }
  return expected;
}

} // namespace nightsow::planner
