#include "planner/model/bench_seasons.hpp"

#include "planner/model/seed_place.hpp"

namespace nightsow::planner {

BenchSeasons::BenchSeasons(const LoadedGarden& garden)
    : garden_(garden), station_(station_climate(garden)) {}

const BenchClimate& BenchSeasons::climate(const std::string& bench) {
  const std::lock_guard lock{mutex_};
  const auto known = climates_.find(bench);
  return known != climates_.end()
             ? known->second
             : climates_.emplace(bench, bench_climate(garden_, station_, bench)).first->second;
}

const ReadingsGuard& BenchSeasons::guard(const std::string& bench) {
  const std::lock_guard lock{mutex_};
  const auto known = guards_.find(bench);
  return known != guards_.end()
             ? known->second
             : guards_.emplace(bench, readings_guard(garden_, bench)).first->second;
}

const BenchSeason& BenchSeasons::season(const std::string& bench, const climate::Season& season) {
  const std::lock_guard lock{mutex_};
  const std::pair key{bench, season.name};
  const auto known = seasons_.find(key);
  return known != seasons_.end()
             ? known->second
             : seasons_.emplace(key, bench_season(climate(bench), season)).first->second;
}

const GateOutlook& BenchSeasons::gate(const std::string& bench,
                                      const climate::Season& season,
                                      const climate::NightLimit& limit) {
  const std::lock_guard lock{mutex_};
  const std::tuple key{bench, season.name, limit};
  const auto known = gates_.find(key);
  return known != gates_.end()
             ? known->second
             : gates_.emplace(key, gate_outlook(climate(bench), this->season(bench, season), limit))
                   .first->second;
}

const std::vector<SeedCourse>& BenchSeasons::courses(const CoursesWanted& wanted) {
  const std::lock_guard lock{mutex_};
  const std::tuple key{wanted.bench,
                       wanted.season.name,
                       wanted.season_before,
                       wanted.mat ? wanted.mat->name : std::string{}};
  const auto known = courses_.find(key);
  if (known != courses_.end()) {
    return known->second;
  }
  std::vector<const BenchSeason*> in_turn{&season(wanted.bench, wanted.season)};
  if (wanted.season_before) {
    const climate::Season before =
        climate::season_of(*station_.turning.phases, wanted.season.hottest - Days{1});
    in_turn.insert(in_turn.begin(), &season(wanted.bench, before));
  }
  climate::SeedPlace place = seed_place(garden_.garden, bench_named(garden_.garden, wanted.bench));
  if (wanted.mat) {
    place.mat = climate::SeedMat{wanted.mat->rise, wanted.mat->thermostat, true};
  }
  return courses_.emplace(key, seed_courses(climate(wanted.bench), in_turn, place, courses_wanted))
      .first->second;
}

} // namespace nightsow::planner
