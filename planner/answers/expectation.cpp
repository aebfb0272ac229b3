#include "planner/answers/expectation.hpp"

#include "planner/answers/figures.hpp"
#include "planner/model/count_range.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/once.hpp"
#include "planner/model/pot_care.hpp"
#include "species-rules/drawn_parameters.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace nightsow::planner {

namespace {

using species_rules::SeedParameters;

// Fewer plants than this are none, and a week's delay costs nothing.
constexpr double least_plants = 0.05;
constexpr int week_days = 7;
// Cases that days and ways of keeping are compared by; all of them tell the numbers of the day.
constexpr int few_cases = 12;

const std::vector<SeedCourse>& courses_of(const LineInput& input,
                                          BenchSeasons& seasons,
                                          const Sown& sown) {
  CoursesWanted wanted{sown.bench, sown.season, sown.season_before, std::nullopt};
  if (sown.on_mat) {
    wanted.mat = mat_for(input.garden.garden, sown.bench);
  }
  return seasons.courses(wanted);
}

// Pointers to so many of the courses, taken evenly.
std::vector<const SeedCourse*> evenly(const std::vector<SeedCourse>& courses, int wanted) {
  std::vector<const SeedCourse*> taken;
  const std::size_t count = std::min(courses.size(), static_cast<std::size_t>(wanted));
  for (std::size_t i = 0; i < count; ++i) {
    taken.push_back(&courses[(2 * i + 1) * courses.size() / (2 * count)]);
  }
  return taken;
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

// The plan has such seed smoked, soaked or nicked, and reckons with what then still waits.
std::vector<SeedParameters> treated_draws(const species_rules::RuleFor& rule, int draws) {
  std::vector<SeedParameters> drawn = species_rules::drawn_parameters(rule, draws);
  std::transform(drawn.begin(), drawn.end(), drawn.begin(), species_rules::treated);
  return drawn;
}

} // namespace

bool uses_mat(const species_rules::Rule& rule) {
  const bool gains = rule.sowing.mat && (rule.sowing.mat->value == species_rules::Mat::needed ||
                                         rule.sowing.mat->value == species_rules::Mat::helpful);
  return gains && start_of(rule) != species_rules::Start::cool;
}

bool on_mat(const LineInput& input) {
  return !input.off_mat && !input.garden.garden.mats.empty() && uses_mat(input.rule.rule);
}

std::optional<HeatMat> mat_for(const Garden& garden, const std::string& bench) {
  const auto here = std::find_if(garden.mats.begin(), garden.mats.end(), [&](const HeatMat& mat) {
    return mat.bench == bench;
  });
  if (here != garden.mats.end()) {
    return *here;
  }
  return garden.mats.empty() ? std::nullopt : std::optional{garden.mats.front()};
}

Prospects::Prospects(const LineInput& input, BenchSeasons& seasons, const Sown& sown)
    : packet_(&input.packet), rule_(&input.rule), today_(input.garden.today),
      courses_(&courses_of(input, seasons, sown)), first_(courses_->front().first),
      from_(sown.season_before ? std::max(first_, sown.season.planning_begins) : first_),
      season_(season_days(sown.season, first_)), few_(evenly(*courses_, few_cases),
                                                      treated_draws(input.rule, few_cases),
                                                      pot_care(input.rule.rule, ""),
                                                      season_) {}

ExpectedPlants& Prospects::all() {
  if (!all_) {
    all_.emplace(evenly(*courses_, static_cast<int>(courses_->size())),
                 treated_draws(*rule_, static_cast<int>(courses_->size())),
                 pot_care(rule_->rule, ""),
                 season_);
  }
  return *all_;
}

Prospects::Kept& Prospects::kept(const Keeping& keeping) {
  const auto known = std::find_if(kept_.begin(), kept_.end(), [&](const Kept& one) {
    return one.keeping.way == keeping.way && one.keeping.warm_until == keeping.warm_until;
  });
  if (known != kept_.end()) {
    return *known;
  }
  constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
  return kept_.emplace_back(
      Kept{keeping,
           PacketShares{kept_so(*packet_, keeping, today_), rule_->rule, today_},
           std::vector<double>(static_cast<std::size_t>(few_.days()), unknown)});
}

SharesOnDay Prospects::shares_of(const Keeping& keeping) {
  return [shares = &kept(keeping).shares, first = first_](const SeedParameters& drawn, int day) {
    return shares->on(first + Days{day}, drawn);
  };
}

double Prospects::few_plants(int day, const Keeping& keeping) {
  return once(kept(keeping).plants[static_cast<std::size_t>(day)],
              [&] { return few_.plants_on(day, shares_of(keeping)); });
}

double Prospects::plants_share(Date first_water, const Keeping& keeping) {
  const int last = few_.days() - 1;
  const int day = std::clamp(days_between(first_, first_water), 0, last);
  const int before = day - day % week_days;
  const int after = std::min(before + week_days, last);
  const double from = few_plants(before, keeping);
  if (day == before) {
    return from;
  }
  const double share = static_cast<double>(day - before) / (after - before);
  return from + share * (few_plants(after, keeping) - from);
}

double Prospects::all_cases_factor(Date first_water, const Keeping& keeping) {
  const double few = plants_share(first_water, keeping);
  const int day = days_between(first_, first_water);
  return few > 0.0 ? all().plants_on(day, shares_of(keeping)) / few : 1.0;
}

double Prospects::plants_share_if_ripe(Date first_water, const Keeping& keeping) {
  const SharesOnDay shares = shares_of(keeping);
  return few_.plants_on(std::clamp(days_between(first_, first_water), 0, few_.days() - 1),
                        [&shares](const SeedParameters& drawn, int day) {
                          return SeedShares{shares(drawn, day).alive, 1.0};
                        });
}

std::optional<Expected> Prospects::expected(Date first_water,
                                            const Keeping& keeping,
                                            std::optional<double> seeds) {
  if (!seeds) {
    return std::nullopt;
  }
  const SharesOnDay shares = shares_of(keeping);
  const Expectation now = all().watered_on(days_between(first_, first_water), shares);
  all_.reset(); // they take much room, and a line tells of one day
  const auto number = static_cast<int>(std::lround(*seeds));
  Expected expected;
  expected.first_water = first_water;
  expected.seedlings = spread_of(number, now.seedling_shares);
  expected.plants = spread_of(number, now.plant_shares);
  expected.plant_shares = now.plant_shares;
  expected.losses = lost_seeds(number, now.losses);
  const auto date_of = [this](int up) { return first_ + Days{up}; };
  expected.first = now.first_up ? std::optional{date_of(*now.first_up)} : std::nullopt;
  expected.half = now.half_up ? std::optional{date_of(*now.half_up)} : std::nullopt;
  const Date later = first_water + Days{week_days};
  if (now.plants * number >= least_plants && later <= last_day()) {
    const double few = plants_share(first_water, keeping);
    const double kept = few > 0.0 ? plants_share(later, keeping) / few : 1.0;
    expected.week_costs = rounded_share(std::max(0.0, 1.0 - kept));
  }
  return expected;
}

Prospects& PacketProspects::of(const LineInput& input, BenchSeasons& seasons, const Sown& sown) {
  const std::tuple key{sown.bench, sown.season.name, sown.season_before, sown.on_mat};
  return known_.try_emplace(key, input, seasons, sown).first->second;
}

} // namespace nightsow::planner
