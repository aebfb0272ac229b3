#include "planner/answers/pot_prospects.hpp"

#include "planner/answers/expectation.hpp"
#include "planner/answers/figures.hpp"
#include "planner/model/account.hpp"
#include "planner/model/count_range.hpp"
#include "planner/model/packet_shares.hpp"
#include "planner/model/pot_care.hpp"
#include "species-rules/drawn_parameters.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

namespace nightsow::planner {

namespace {

// As many as the plan compares days by.
constexpr int cases_wanted = 12;

/// One kind of seed through one season of a bench.
class SeasonOfPot {
public:
  SeasonOfPot(BenchSeasons& seasons,
              const CarriedSeed& seed,
              const climate::Season& season,
              bool season_before)
      : courses_(seasons.courses({seed.bench, season, season_before, std::nullopt})),
        first_(courses_.front().first),
        plants_(evenly(courses_),
                species_rules::drawn_parameters(seed.rule, cases_wanted),
                pot_care(seed.rule.rule, ""),
                season_days(season, first_)) {}

  [[nodiscard]] int day_of(Date day) const {
    return std::clamp(days_between(first_, day), 0, last());
  }

  [[nodiscard]] int last() const { return plants_.days() - 1; }

  ExpectedPlants& plants() { return plants_; }

private:
  static std::vector<const SeedCourse*> evenly(const std::vector<SeedCourse>& courses) {
    std::vector<const SeedCourse*> taken;
    const std::size_t count = std::min(courses.size(), static_cast<std::size_t>(cases_wanted));
    for (std::size_t i = 0; i < count; ++i) {
      taken.push_back(&courses[(2 * i + 1) * courses.size() / (2 * count)]);
    }
    return taken;
  }

  const std::vector<SeedCourse>& courses_;
  Date first_{};
  ExpectedPlants plants_;
};

bool waits(Cause cause) {
  return cause == Cause::not_ripe || cause == Cause::nights_too_warm || cause == Cause::deferred;
}

double waiting_share(const SeedsOnDay& seeds) {
  return seeds.not_ripe + seeds.nights_too_warm + seeds.deferred;
}

double mean_waiting_share(const std::vector<SeedsOnDay>& cases) {
  return std::accumulate(
             cases.begin(),
             cases.end(),
             0.0,
             [](double sum, const SeedsOnDay& one) { return sum + waiting_share(one); }) /
         static_cast<double>(cases.size());
}

// Counts are of seedlings alive; those that died were up, too.
std::vector<Look> looks_at(const Records& records,
                           const RecordedSowing& sowing,
                           const auto& day_of) {
  std::vector<Look> looks;
  int dead = 0;
  for (const SeedlingCount& count : records.counts) {
    if (count.sowing != sowing.id) {
      continue;
    }
    dead += count.dead;
    const int before = looks.empty() ? 0 : looks.back().seen;
    const int seen = std::clamp(count.seen + dead, before, std::max(before, sowing.seeds));
    looks.push_back({day_of(count.on), seen});
  }
  return looks;
}

// Of the seeds not up, the number alive and waiting when the first season ends.
double living_after_first(const LoadedGarden& garden,
                          BenchSeasons& seasons,
                          const CarriedSeed& seed,
                          const climate::Season& first) {
  SeasonOfPot pot{seasons, seed, first, seed.first_water < first.hottest};
  PacketShares shares{seed.sowing.packet, seed.rule.rule, seed.sowing.on};
  const std::vector<SeedsOnDay> cases = pot.plants().on_day(
      pot.day_of(seed.first_water),
      [&](const species_rules::SeedParameters& drawn, int /*day*/) {
        return shares.on(seed.first_water, drawn);
      },
      pot.last());
  SowingRecord record;
  record.seeds = seed.sowing.seeds;
  record.pots = seed.sowing.pots;
  record.looks = looks_at(garden.records, seed.sowing, [&](Date day) { return pot.day_of(day); });
  const PotSeen seen = pot_seen(garden.records, seed.sowing);
  if (record.looks.empty()) {
    return mean_waiting_share(cases) * seed.sowing.seeds;
  }
  const int missing = record.seeds - record.looks.back().seen;
  if (seen.firm + seen.soft <= missing) {
    record.pressed = {seen.firm, seen.soft};
  }
  const Account told = account(cases, record);
  double living = 0.0;
  for (const CauseShare& cause : told.causes) {
    living += waits(cause.cause) ? cause.share * told.missing : 0.0;
  }
  return living;
}

} // namespace

PotSeen pot_seen(const Records& records, const RecordedSowing& sowing) {
  PotSeen seen;
  int dead = 0;
  for (const SeedlingCount& count : records.counts) {
    if (count.sowing == sowing.id) {
      dead += count.dead;
      seen.alive = count.seen;
      seen.on = count.on;
      seen.ever_up = std::min(std::max(seen.ever_up, count.seen + dead), sowing.seeds);
    }
  }
  for (const PressTest& test : records.press_tests) {
    if (test.sowing == sowing.id) {
      seen.firm += test.firm;
      seen.soft += test.soft;
    }
  }
  return seen;
}

std::optional<PotProspects> pot_prospects(const LoadedGarden& garden,
                                          BenchSeasons& seasons,
                                          const CarriedSeed& seed,
                                          const climate::Season& season,
                                          Date wakes) {
  const climate::Phases& phases = *seasons.station().turning.phases;
  climate::Season past = season_planned_on(phases, seed.first_water);
  if (past.planning_begins <= garden.station.first() ||
      pot_seen(garden.records, seed.sowing).ever_up >= seed.sowing.seeds) {
    return std::nullopt;
  }
  PotProspects prospects;
  prospects.living = living_after_first(garden, seasons, seed, past);
  const auto sound = [](const species_rules::SeedParameters&, int) { return SeedShares{1.0, 1.0}; };
  for (past = season_of(phases, past.next_hottest); past.hottest < season.hottest;
       past = season_of(phases, past.next_hottest)) {
    SeasonOfPot between{seasons, seed, past, false};
    prospects.living *= mean_waiting_share(
        between.plants().on_day(between.day_of(past.limb_begins), sound, between.last()));
  }
  SeasonOfPot now{seasons, seed, season, wakes < season.hottest};
  const Expectation expected = now.plants().watered_on(now.day_of(wakes), sound);
  const CountRange range = count_range(
      static_cast<int>(std::lround(prospects.living)), expected.seedling_shares, pots_differ);
  prospects.living = rounded_tenth(prospects.living);
  prospects.seedlings = {
      rounded_tenth(range.mean), static_cast<double>(range.p10), static_cast<double>(range.p90)};
  return prospects;
}

} // namespace nightsow::planner
