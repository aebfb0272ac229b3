// How long it takes to carry past seasons to the present one, for the nights and days of one daily
// CSV. Prints the best of several repeats; with a folder, leaves there what it worked on and what
// came out, for outlook_numpy.py to do the same sums. Nothing is asserted.

#include "climate/base/file.hpp"
#include "climate/merge_readings.hpp"
#include "climate/outlook.hpp"
#include "climate/past_seasons.hpp"
#include "climate/persistence.hpp"
#include "climate/readers/read_readings.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <limits>
#include <span>
#include <string>

namespace {

using namespace nightsow;
using namespace nightsow::climate;
using Json = nlohmann::json;

constexpr int repeats = 30;

struct Place {
  BenchAir bench;
  SmoothYear smooth;
  Phases phases;
};

Place place_of(const char* file) {
  const std::string text = read_whole_file(file, "the bench");
  const Readings readings = read_readings(text, file);
  DailySeries series = merge_readings(std::span(&readings, 1)).series;
  const SmoothYear smooth = fit_smooth_year(series).value();
  fill_short_holes(series);
  return {to_bench(series, "bench", {}), smooth, find_phases(smooth.night, 2000).phases.value()};
}

int days_since_1970(Date day) {
  return day.time_since_epoch().count();
}

void write_floats(const std::filesystem::path& file, std::span<const float> values) {
  write_atomically(file, {reinterpret_cast<const char*>(values.data()), values.size_bytes()});
}

Json curve_of(const SmoothCurve& curve) {
  return {{"constant_c", curve.constant_c},
          {"centre_year", curve.centre_year},
          {"carried_trend_c_per_year", curve.carried_trend_c_per_year()},
          {"cosine_c", curve.cosine_c},
          {"sine_c", curve.sine_c}};
}

Json weights_of(const MemoryWeights& weights) {
  return {weights.last_night, weights.last_day, weights.mean_30, weights.mean_90};
}

// What the sums are given; times are days since 1970.
Json given(const Place& place, const Season& season, const Outlook& outlook) {
  Json given;
  given["first_day"] = days_since_1970(place.bench.air.first());
  given["last_night"] = days_since_1970(last_night(place.bench.air).value());
  given["night"] = curve_of(place.smooth.night);
  given["day"] = curve_of(place.smooth.day.value());
  for (const SearchedSeason& searched : searched_seasons(place.bench, place.phases)) {
    given["hottest"].push_back(days_since_1970(searched.season.hottest));
    given["name"].push_back(searched.season.name);
  }
  given["season"] = {{"hottest", days_since_1970(season.hottest)}, {"name", season.name}};
  given["days"] = outlook.days;
  given["nights_searched"] = nights_searched;
  given["most_missing"] = most_missing;
  given["most_seasons"] = most_seasons;
  for (int ahead = 1; ahead <= outlook.days; ++ahead) {
    given["night_weights"].push_back(weights_of(night_memory(ahead)));
    given["day_weights"].push_back(weights_of(day_memory(ahead)));
    given["stray_factor"].push_back(stray_factor(ahead));
  }
  return given;
}

} // namespace

int main(int argc, char** argv) {
  if (argc != 2 && argc != 3) {
    std::fprintf(stderr, "usage: outlook_speed FILE.csv [FOLDER]\n");
    return 2;
  }
  const Place place = place_of(argv[1]);
  const Season season = season_of(place.phases, place.bench.air.last());
  Outlook outlook;
  double best_ms = std::numeric_limits<double>::max();
  for (int i = 0; i < repeats; ++i) {
    const auto start = std::chrono::steady_clock::now();
    const PastCourses past = past_courses(place.bench, place.smooth, place.phases);
    outlook = season_outlook(past, place.bench, season);
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    best_ms = std::min(best_ms, took.count());
  }
  std::printf("outlook of %d members from %zu days: %.2f ms\n",
              outlook.members,
              place.bench.air.size(),
              best_ms);
  if (argc == 3) {
    const std::filesystem::path folder = argv[2];
    Json facts = given(place, season, outlook);
    facts["best_ms"] = best_ms;
    write_atomically(folder / "outlook.json", facts.dump());
    write_floats(folder / "series_night.f32", place.bench.air.night_c());
    write_floats(folder / "series_day.f32", place.bench.air.day_c());
    write_floats(folder / "members_night.f32", outlook.night_c);
    write_floats(folder / "members_day.f32", outlook.day_c);
  }
  return 0;
}
