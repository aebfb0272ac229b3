#include "planner/model/seed_state.hpp"

#include "climate/base/quantile.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/store_history.hpp"
#include "species-rules/drawn_parameters.hpp"
#include "species-rules/normal.hpp"
#include "species-rules/seed_parameters.hpp"
#include "species-rules/viability.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace nightsow::planner {

namespace {

using species_rules::Estimate;
using species_rules::ShareRange;
using Histories = std::vector<std::vector<StoreStage>>;

constexpr double days_a_year = 365.25;
constexpr Days a_year{365};
// In a store hardly warmer than the base it takes longer than any seed lives: as good as never.
constexpr int longest_ripening_days = 3650;

// A family always gives a half-life and a germination; these stand for a rule made by hand.
Estimate usual_half_life_years() {
  return {3.0, 1.5, 6.0, {}};
}

Estimate usual_germination_share() {
  return {0.5, 0.3, 0.8, {}};
}

// Probits are not there for none and all.
constexpr double nearly_none = 1e-6;
// What half ripe may miss by rounding.
constexpr double hair = 1e-9;

double probit_of(double share) {
  return species_rules::normal_quantile(std::clamp(share, nearly_none, 1.0 - nearly_none));
}

/// Seed of a packet whose harvest is known to some days.
struct Seed {
  const Packet& packet;
  Estimate half_life;
  Estimate needed_c_d;
  Estimate ripening_base_c;
  species_rules::SeedStorage storage = species_rules::SeedStorage::orthodox;
  Date first;  ///< earliest harvest …
  Date middle; ///< … and so on; none after today
  Date last;
  double needs_no_ripening = 0.0; ///< by its germination test, 0..1

  [[nodiscard]] Histories histories(Date harvested) const {
    return store_histories(packet, harvested);
  }
};

template <class Share> double mean_over(const Histories& histories, Share share) {
  double sum = 0.0;
  for (const auto& stages : histories) {
    sum += share(stages);
  }
  return sum / static_cast<double>(histories.size());
}

auto alive_on(Date day, const Seed& seed) {
  return [=, &seed](const std::vector<StoreStage>& stages) {
    return species_rules::share_alive(seed.half_life.value,
                                      kept(stages, seed.middle, day, seed.storage).room_years);
  };
}

double ripe_after(const Seed& seed, double ripened_c_d, double needed_c_d) {
  return species_rules::ripe_or_needs_none(species_rules::ripe_share(ripened_c_d, needed_c_d),
                                           seed.needs_no_ripening);
}

auto ripe_on_day(Date day, const Seed& seed) {
  return [=, &seed](const std::vector<StoreStage>& stages) {
    return ripe_after(
        seed,
        kept(stages, seed.middle, day, seed.storage).ripened_c_d(seed.ripening_base_c.value),
        seed.needed_c_d.value);
  };
}

// So many that the tenths are those of the estimate itself.
constexpr int draws_of_an_estimate = 60;
constexpr int days_of_a_harvest = 5;

// The standard normal quantile at evenly spread chances (the plotting positions of
// quantile_type8), 0 <= i < draws_of_an_estimate.
double z_of(int i) {
  constexpr double third = 1.0 / 3.0;
  return species_rules::normal_quantile((i + 1 - third) / (draws_of_an_estimate + third));
}

std::vector<double> drawn(const Estimate& estimate) {
  std::vector<double> values;
  values.reserve(draws_of_an_estimate);
  for (int i = 0; i < draws_of_an_estimate; ++i) {
    values.push_back(std::max(0.0, species_rules::drawn_value(estimate, z_of(i), true)));
  }
  return values;
}

struct RipeningNeed {
  double sum_c_d = 0.0;
  double base_c = 0.0;
};

// Each sum with a base; the step shares no factor with the number of draws, so that each base comes
// once and goes with no end of the sums.
std::vector<RipeningNeed> drawn_needs(const Seed& seed) {
  constexpr int step = 23;
  const std::vector<double> sums = drawn(seed.needed_c_d);
  std::vector<RipeningNeed> needs;
  needs.reserve(sums.size());
  for (int i = 0; i < draws_of_an_estimate; ++i) {
    const double z = z_of(i * step % draws_of_an_estimate);
    needs.push_back({sums[static_cast<std::size_t>(i)],
                     species_rules::drawn_value(seed.ripening_base_c, z, false)});
  }
  return needs;
}

// Days of the harvest, equally likely; one where it is known to the day.
std::vector<Date> harvest_days(const Seed& seed) {
  const int length = days_between(seed.first, seed.last) + 1;
  std::vector<Date> days;
  days.reserve(days_of_a_harvest);
  for (int i = 0; i < days_of_a_harvest; ++i) {
    days.push_back(seed.first + Days{(2 * i + 1) * length / (2 * days_of_a_harvest)});
  }
  days.erase(std::unique(days.begin(), days.end()), days.end());
  return days;
}

// Estimate, harvest and store are independent, so every one goes with every other; four in five of
// the shares that come of it lie in the range.
template <class Value, class Share>
ShareRange range_about(
    double middle, const Seed& seed, const std::vector<Value>& values, Date day, Share share) {
  std::vector<double> shares;
  for (const Date harvested : harvest_days(seed)) {
    for (const auto& stages : seed.histories(harvested)) {
      const Kept so_far = kept(stages, harvested, day, seed.storage);
      for (const Value& value : values) {
        shares.push_back(share(so_far, value));
      }
    }
  }
  return {middle,
          std::min(middle, quantile_type8(shares, 0.1)),
          std::max(middle, quantile_type8(shares, 0.9))};
}

ShareRange alive_by_age(const Seed& seed, Date day) {
  const double middle = mean_over(seed.histories(seed.middle), alive_on(day, seed));
  return range_about(
      middle, seed, drawn(seed.half_life), day, [](const Kept& kept, double half_life) {
        return species_rules::share_alive(half_life, kept.room_years);
      });
}

double ripe_by_age(const Seed& seed, Date day) {
  return mean_over(seed.histories(seed.middle), ripe_on_day(day, seed));
}

ShareRange ripe_range_by_age(const Seed& seed, Date day) {
  return range_about(ripe_by_age(seed, day),
                     seed,
                     drawn_needs(seed),
                     day,
                     [&](const Kept& kept, const RipeningNeed& need) {
                       return ripe_after(seed, kept.ripened_c_d(need.base_c), need.sum_c_d);
                     });
}

double probits_lost(
    const Seed& seed, const Histories& stores, double half_life_years, Date from, Date to) {
  return mean_over(stores, [&](const std::vector<StoreStage>& stages) {
    return species_rules::probits_lost(half_life_years,
                                       kept(stages, from, to, seed.storage).room_years);
  });
}

// What was known on one day, aged to another. Errors of the test and of the half-life are
// independent, so in probits they add up as squares.
ShareRange aged(
    const ShareRange& then, const Seed& seed, const Histories& stores, Date from, Date to) {
  const auto lost = [&](double half_life_years) {
    return probits_lost(seed, stores, half_life_years, from, to);
  };
  const double middle = probit_of(then.share);
  const double usual = lost(seed.half_life.value);
  const double down = std::hypot(middle - probit_of(then.low), lost(seed.half_life.low) - usual);
  const double up = std::hypot(probit_of(then.high) - middle, usual - lost(seed.half_life.high));
  const double now = middle - usual;
  return {species_rules::normal_share(now),
          species_rules::normal_share(now - down),
          species_rules::normal_share(now + up)};
}

// The first of the days from `from` on for which it holds, once it does for good.
template <class Holds> std::optional<Date> first_day(Date from, Holds holds) {
  int none_before = 0;
  int held_by = longest_ripening_days;
  if (!holds(from + Days{held_by})) {
    return std::nullopt;
  }
  while (none_before < held_by) {
    const int middle = (none_before + held_by) / 2;
    if (holds(from + Days{middle})) {
      held_by = middle;
    } else {
      none_before = middle + 1;
    }
  }
  return from + Days{held_by};
}

bool half(double share) {
  return share >= 0.5 - hair;
}

void judge_ripeness(SeedState& state, const Seed& seed, Date today) {
  state.ripe_share = ripe_range_by_age(seed, today);
  state.ripe = half(state.ripe_share.share);
  if (state.ripe) {
    return;
  }
  state.ripe_on = first_day(today, [&](Date day) { return half(ripe_by_age(seed, day)); });
  const double base_c = seed.ripening_base_c.value;
  const double a_day = species_rules::ripening_c_d_a_day(
      species_rules::room_c, species_rules::room_humidity, base_c);
  const Histories histories = seed.histories(seed.middle);
  state.ripe_on_shelf = first_day(today, [&](Date day) {
    return half(mean_over(histories, [&](const std::vector<StoreStage>& stages) {
      return ripe_after(seed,
                        kept(stages, seed.middle, today, seed.storage).ripened_c_d(base_c) +
                            a_day * days_between(today, day),
                        seed.needed_c_d.value);
    }));
  });
}

double alive_and_ripe_by_age(const Seed& seed, Date day) {
  const auto alive = alive_on(day, seed);
  const auto ripe = ripe_on_day(day, seed);
  return mean_over(seed.histories(seed.middle), [&](const std::vector<StoreStage>& stages) {
    return alive(stages) * ripe(stages);
  });
}

void judge_alive(SeedState& state, const ShareRange& now, const ShareRange& next_year) {
  state.alive = now.share;
  state.alive_low = now.low;
  state.alive_high = now.high;
  state.alive_next_year = next_year.share;
}

Estimate germination_of(const species_rules::Rule& rule) {
  return rule.seed.germination_share.value_or(usual_germination_share());
}

// As known by that day.
Seed seed_of(const Packet& packet, const species_rules::Rule& rule, Date day) {
  const auto known_by = [&](Date then) { return std::min(then, day); };
  const DateRange harvested = packet.harvested.value_or(DateRange{day, day});
  return {packet,
          rule.seed.half_life_years.value_or(usual_half_life_years()),
          rule.seed.after_ripening_c_d.value_or(Estimate{}),
          rule.seed.after_ripening_base_c.value_or(species_rules::usual_ripening_base_c()),
          species_rules::storage_of(rule),
          known_by(harvested.first),
          known_by(harvested.middle()),
          known_by(harvested.last)};
}

// Seed whose age is not known begins with its test.
Histories stores_since(const Seed& seed, const UsableTest& test) {
  return seed.histories(seed.packet.harvested ? seed.middle : test.on);
}

TestReading reading_of(const Seed& seed, const species_rules::Rule& rule, const UsableTest& test) {
  const bool aged_seed = seed.packet.harvested.has_value();
  const species_rules::SeedBelief before{
      aged_seed ? alive_by_age(seed, test.on) : species_rules::any_share,
      species_rules::germination_of_living(germination_of(rule))};
  return read_test(test, rule, before, aged_seed ? ripe_by_age(seed, test.on) : 1.0);
}

void take_test(SeedState& state,
               Seed& seed,
               const species_rules::Rule& rule,
               const UsableTest& test,
               Date today) {
  const TestReading reading = reading_of(seed, rule, test);
  state.test = SeedTest{
      test, reading.fit, reading.ripe_by_age, reading.needs_no_ripening, reading.after.alive};
  seed.needs_no_ripening = reading.needs_no_ripening;
  state.germination = reading.after.germination.share;
  const Histories stores = stores_since(seed, test);
  judge_alive(state,
              aged(reading.after.alive, seed, stores, test.on, today),
              aged(reading.after.alive, seed, stores, test.on, today + a_year));
}

double ratio(double with, double without) {
  return without > 0.0 ? with / without : 1.0;
}

} // namespace

TestReading reading_of_test(const Packet& packet,
                            const species_rules::Rule& rule,
                            const UsableTest& test,
                            Date day) {
  return reading_of(seed_of(packet, rule, day), rule, test);
}

ToldByTest told_by_test(const Packet& packet,
                        const species_rules::Rule& rule,
                        const UsableTest& test,
                        const TestReading& reading,
                        Date day) {
  const Seed seed = seed_of(packet, rule, day);
  const double lost =
      probits_lost(seed, stores_since(seed, test), seed.half_life.value, test.on, day);
  const double alive = species_rules::normal_share(probit_of(reading.after.alive.share) - lost);
  const double untested = packet.harvested
                              ? mean_over(seed.histories(seed.middle), alive_on(day, seed))
                              : fresh_share_alive;
  const double germination = species_rules::germination_of_living(germination_of(rule)).share;
  return {ratio(alive, untested),
          ratio(reading.after.germination.share, germination),
          reading.needs_no_ripening};
}

SeedState seed_state(const Packet& packet, const species_rules::Rule& rule, Date today) {
  Seed seed = seed_of(packet, rule, today);
  SeedState state;
  state.store_known = store_known(packet);
  state.germination = species_rules::germination_of_living(germination_of(rule)).share;
  if (packet.harvested) {
    state.age_years = days_between(seed.middle, today) / days_a_year;
    judge_alive(state, alive_by_age(seed, today), alive_by_age(seed, today + a_year));
  }
  const double untested = state.alive;
  if (const auto test = usable_test(packet, today)) {
    take_test(state, seed, rule, *test, today);
  }
  if (packet.harvested) {
    judge_ripeness(state, seed, today);
    state.alive_and_ripe = alive_and_ripe_by_age(seed, today);
  }
  state.alive_and_ripe *= untested > 0.0 ? state.alive / untested : 0.0;
  return state;
}

} // namespace nightsow::planner
