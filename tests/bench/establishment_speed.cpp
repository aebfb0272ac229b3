// How long it takes to reckon the plants of 100 kinds of seed in 60 possible courses of a season,
// on every day of first water, each course with the kind's numbers drawn once more, on one core.
// With a folder, leaves there what it worked on and what came out of the first kinds, for
// establishment_numpy.py to do the same sums. Nothing is asserted.

#include "climate/base/file.hpp"
#include "climate/merge_readings.hpp"
#include "climate/readers/read_readings.hpp"
#include "planner/model/bench_climate.hpp"
#include "planner/model/establishment.hpp"
#include "species-rules/drawn_parameters.hpp"

#include <nlohmann/json.hpp>

#include <cstdio>
#include <ctime>
#include <filesystem>
#include <span>
#include <string>
#include <vector>

namespace {

using namespace nightsow;
using namespace nightsow::planner;
using Json = nlohmann::json;

constexpr int kinds = 100;
constexpr int years = 60;
constexpr int compared_kinds = 6;
constexpr double latitude = -33.1;

struct Place {
  std::vector<SeedCourse> courses;
  SeasonDays season;
};

Place place_of(const char* file) {
  const std::string text = read_whole_file(file, "the bench");
  const climate::Readings readings = climate::read_readings(text, file);
  climate::DailySeries series = climate::merge_readings(std::span(&readings, 1)).series;
  const climate::SmoothYear smooth = climate::fit_smooth_year(series).value();
  climate::fill_short_holes(series);
  const Date last = series.last();
  const BenchClimate climate{climate::to_bench(series, "bench", {}),
                             smooth,
                             smooth,
                             climate::find_phases(smooth.night, 2000),
                             latitude};
  const BenchSeason season =
      bench_season(climate, climate::season_of(*climate.turning.phases, last));
  const BenchSeason* const only[] = {&season};
  climate::SeedPlace place;
  place.latitude = latitude;
  Place result{seed_courses(climate, only, place, years), {}};
  result.season = season_days(season.season, result.courses.front().first);
  return result;
}

using Draws = std::vector<species_rules::SeedParameters>;

// Every rule of the catalogue in turn, from the start again where there are fewer.
std::vector<Draws> draws_of_kinds() {
  const species_rules::Catalogue catalogue = species_rules::Catalogue::embedded();
  const std::vector<std::string> names = catalogue.rule_names();
  std::vector<Draws> list;
  for (std::size_t i = 0; list.size() < kinds; ++i) {
    if (const auto rule = catalogue.rule_for(names[i % names.size()]).found) {
      list.push_back(species_rules::drawn_parameters(*rule, years));
    }
  }
  return list;
}

// Plants by case and day of first water.
std::vector<double> plants_of(const Place& place, const Draws& draws) {
  std::vector<double> plants;
  for (std::size_t i = 0; i < place.courses.size(); ++i) {
    SeedSeason season{place.courses[i], draws[i], {}, place.season};
    for (int day = 0; day < place.courses[i].days(); ++day) {
      plants.push_back(season.plants_of_sound_seed(day));
    }
  }
  return plants;
}

template <class Value>
void write_values(const std::filesystem::path& file, std::span<const Value> values) {
  write_atomically(file, {reinterpret_cast<const char*>(values.data()), values.size_bytes()});
}

Json given(const species_rules::SeedParameters& seed) {
  Json json{{"hot", seed.start == species_rules::Start::hot},
            {"cool", seed.start == species_rules::Start::cool},
            {"summer", seed.growth == species_rules::Growth::summer},
            {"winter", seed.growth == species_rules::Growth::winter},
            {"swing_needed", species_rules::swing_factor_of(0.0, seed.swing)},
            {"nights", seed.nights},
            {"of", seed.of},
            {"deferral", seed.deferral_share},
            {"base_c", seed.cardinal.base_c},
            {"optimum_c", seed.cardinal.optimum_c},
            {"ceiling_c", seed.cardinal.ceiling_c},
            {"thermal_time", seed.thermal_time_c_d},
            {"thermal_spread", seed.thermal_time_spread},
            {"wet_loss", seed.wet_loss_per_day},
            {"rot", seed.rot_factor},
            {"dry_loss", seed.dry_loss_share},
            {"frost_c", seed.frost_limit_c},
            {"older_frost_c", seed.older_frost_limit_c},
            {"heat_c", seed.heat_limit_c},
            {"growth_days", seed.growth_needed_days},
            {"rest_sum", seed.rest_sum}};
  if (seed.release) {
    json["limit_c"] = seed.release->limit_c;
    json["spread_k"] = seed.release->spread_k;
    json["indifferent"] = seed.release->indifferent_share;
  }
  return json;
}

void leave(const std::filesystem::path& folder,
           const Place& place,
           const std::vector<Draws>& draws,
           double seconds_a_kind) {
  Json json;
  json["seconds_a_kind"] = seconds_a_kind;
  json["courses"] = place.courses.size();
  json["days"] = place.courses.front().days();
  json["season"] = {
      place.season.hottest, place.season.limb_begins, place.season.coldest, place.season.ends};
  const std::vector<std::pair<const char*, std::vector<double> SeedCourse::*>> rows{
      {"night_c", &SeedCourse::night_c},
      {"mean_c", &SeedCourse::mean_c},
      {"swing_k", &SeedCourse::swing_k},
      {"heat_half_lives", &SeedCourse::heat_half_lives},
      {"seedling_mean_c", &SeedCourse::seedling_mean_c},
      {"coldest_c", &SeedCourse::coldest_c},
      {"hottest_c", &SeedCourse::hottest_c},
      {"evaporation_mm", &SeedCourse::evaporation_mm},
      {"winter_growth", &SeedCourse::winter_growth},
      {"summer_growth", &SeedCourse::summer_growth},
      {"seven_day_mean_c", &SeedCourse::seven_day_mean_c},
      {"rest_rate", &SeedCourse::rest_rate}};
  for (const auto& [name, row] : rows) {
    std::vector<double> all;
    for (const SeedCourse& course : place.courses) {
      all.insert(all.end(), (course.*row).begin(), (course.*row).end());
    }
    write_values<double>(folder / (std::string(name) + ".f64"), all);
  }
  std::vector<float> hours;
  for (const SeedCourse& course : place.courses) {
    hours.insert(hours.end(), course.hour_c.begin(), course.hour_c.end());
  }
  write_values<float>(folder / "hour_c.f32", hours);
  std::vector<double> plants;
  for (int kind = 0; kind < compared_kinds; ++kind) {
    const Draws& of_kind = draws[static_cast<std::size_t>(kind * kinds / compared_kinds)];
    Json seeds;
    for (std::size_t i = 0; i < place.courses.size(); ++i) {
      seeds.push_back(given(of_kind[i]));
    }
    json["kinds"].push_back(seeds);
    const std::vector<double> own = plants_of(place, of_kind);
    plants.insert(plants.end(), own.begin(), own.end());
  }
  write_values<double>(folder / "plants.f64", plants);
  write_atomically(folder / "establishment.json", json.dump());
}

} // namespace

int main(int argc, char** argv) {
  if (argc != 2 && argc != 3) {
    std::fprintf(stderr, "usage: establishment_speed FILE.csv [FOLDER]\n");
    return 2;
  }
  const Place place = place_of(argv[1]);
  const std::vector<Draws> draws = draws_of_kinds();
  double sum = 0.0;
  const std::clock_t start = std::clock();
  for (const Draws& of_kind : draws) {
    sum += plants_of(place, of_kind).front();
  }
  const double took_s = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  std::printf("plants of %d kinds in %zu courses on each of %d days: %.2f s on one core (%.3f)\n",
              kinds,
              place.courses.size(),
              place.courses.front().days(),
              took_s,
              sum);
  if (argc == 3) {
    leave(argv[2], place, draws, took_s / kinds);
  }
  return 0;
}
