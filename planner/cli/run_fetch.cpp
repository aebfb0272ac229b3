#include "planner/cli/run_fetch.hpp"

#include "climate/archive/fetch_file.hpp"
#include "climate/archive/station_list.hpp"
#include "climate/base/file.hpp"
#include "climate/base/problem.hpp"
#include "climate/readers/read_readings.hpp"
#include "planner/cli/about_garden.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/streams.hpp"
#include "planner/cli/typed_values.hpp"
#include "planner/garden/garden_file.hpp"
#include "planner/garden/time_zone.hpp"
#include "planner/render/answer_text.hpp"
#include "planner/render/to_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <thread>
#include <utility>

namespace nightsow::planner {

namespace fs = std::filesystem;
using climate::Archive;

namespace {

constexpr std::size_t stations_shown = 10;
constexpr int list_good_for_days = 30; // stations come and go slowly: common practice, no source

struct FetchPlace {
  climate::Place place;
  std::string time_zone;
  std::vector<ReadingsEntry> readings;
};

FetchPlace place_of(const FetchCommand& command, const fs::path& folder) {
  if (command.latitude && command.longitude) {
    return {{*command.latitude, *command.longitude, command.elevation_m}, "", {}};
  }
  const fs::path file = folder / "garden.json";
  if (!fs::exists(file)) {
    wrong_use(file.string(),
              "there is no garden here",
              "",
              "name its folder with --garden, or give --latitude and --longitude");
  }
  const Garden garden = read_garden_file(read_whole_file(file, "fetch"), file.string());
  return {
      {garden.latitude, garden.longitude, garden.elevation_m}, garden.time_zone, garden.readings};
}

climate::Network network_of(const FetchCommand& command, const Surroundings& around) {
  climate::Network network;
  if (command.timeout_s) {
    network.limits.total = std::chrono::seconds{*command.timeout_s};
    network.limits.connect = std::min(network.limits.connect, network.limits.total);
  }
  network.wait = [](std::chrono::milliseconds time) { std::this_thread::sleep_for(time); };
  network.now = around.now;
  return network;
}

climate::FetchedFile fetch_list(const char* name,
                                const std::string& base_url,
                                const fs::path& cache,
                                const climate::Network& network) {
  const climate::PlannedFetch plan = climate::plan_station_list(name, base_url);
  if (auto copy = climate::last_good_copy(plan, cache)) {
    const auto age = climate::age_in_days(copy->sidecar.checked_at, network.now);
    if (age && *age < list_good_for_days) {
      return *std::move(copy);
    }
  }
  return climate::fetch_file(plan, cache, climate::FolderOf::cache, network);
}

StationLine station_line(const climate::WeighedStation& weighed) {
  return {weighed.station.id,
          weighed.station.name,
          weighed.distance_km,
          weighed.station.elevation_m,
          weighed.higher_m,
          weighed.years,
          weighed.last_year,
          weighed.for_height,
          weighed.for_years,
          weighed.for_age,
          weighed.doubt()};
}

// Fills in the stations; the first of them is the one to fetch.
void weigh_stations(FetchAnswer& answer,
                    std::string& notes,
                    const FetchCommand& command,
                    const FetchPlace& garden,
                    int this_year,
                    const Surroundings& around,
                    const climate::Network& network) {
  const auto stations =
      fetch_list("ghcnd-stations.txt", command.base_url, around.cache_folder, network);
  const auto inventory =
      fetch_list("ghcnd-inventory.txt", command.base_url, around.cache_folder, network);
  for (const auto* file : {&stations, &inventory}) {
    if (!file->trouble.empty()) {
      notes += "note: the station list could not be renewed: " + file->trouble + '\n';
    }
  }
  const climate::StationList list = climate::read_station_list(stations.text, inventory.text);
  if (list.unread_lines > 0) {
    notes += fmt::format("note: lines of the station list that could not be read: {}\n",
                         list.unread_lines);
  }
  for (const auto& weighed :
       climate::nearest_stations(list, garden.place, this_year, stations_shown)) {
    answer.stations.push_back(station_line(weighed));
  }
  answer.list_age_days = climate::age_in_days(stations.sidecar.checked_at, network.now);
  if (answer.stations.empty()) {
    throw InputError({Severity::error,
                      "ghcnd-stations.txt",
                      0,
                      0,
                      "no station with nights and days lies within 300 km of the garden",
                      "",
                      "--archive and --power work at any place"});
  }
}

std::optional<FetchedReadings> readings_in(const std::string& text, const std::string& file) {
  climate::Readings readings;
  try {
    readings = climate::read_readings(text, file);
  } catch (const InputError&) {
    return std::nullopt; // said in the answer
  }
  std::set<Date> nights;
  std::set<Date> days;
  for (const auto& row : readings.rows) {
    if (!std::isnan(row.night_c)) {
      nights.insert(row.date);
    }
    if (!std::isnan(row.day_c)) {
      days.insert(row.date);
    }
  }
  std::set<Date> all = nights;
  all.insert(days.begin(), days.end());
  if (all.empty()) {
    return std::nullopt;
  }
  const double span = days_between(*all.begin(), *all.rbegin()) + 1.0;
  return FetchedReadings{readings.format,
                         *all.begin(),
                         *all.rbegin(),
                         static_cast<double>(nights.size()) / span,
                         static_cast<double>(days.size()) / span};
}

const char* word_for(climate::Arrival arrival) {
  switch (arrival) {
  case climate::Arrival::fetched:
    return "fetched";
  case climate::Arrival::unchanged:
    return "unchanged";
  case climate::Arrival::kept:
    break;
  }
  return "kept";
}

void add_plan(FetchAnswer& answer, const climate::PlannedFetch& plan, const FetchPlace& garden) {
  answer.source = plan.source;
  answer.licence = plan.licence;
  answer.url = plan.url;
  answer.file = "readings/" + plan.file;
  answer.garden_line = plan.archive == Archive::forecast
                           ? fmt::format(R"({{"file": "{}", "kind": "forecast"}})", answer.file)
                           : fmt::format(R"({{"file": "{}"}})", answer.file);
  answer.sent = plan.archive == Archive::station
                    ? "the number of the station, nothing of the garden"
                    : fmt::format("the garden's place, rounded to {:.2f}, {:.2f}",
                                  garden.place.latitude,
                                  garden.place.longitude);
  answer.in_garden = std::any_of(garden.readings.begin(),
                                 garden.readings.end(),
                                 [&](const auto& entry) { return entry.file == answer.file; });
}

void add_file(FetchAnswer& answer,
              const climate::FetchedFile& file,
              std::chrono::system_clock::time_point now) {
  answer.arrival = word_for(file.arrival);
  answer.trouble = file.trouble;
  answer.age_days = climate::age_in_days(file.sidecar.checked_at, now);
  answer.fetched_at = file.sidecar.fetched_at;
  answer.sha256 = file.sidecar.sha256;
  answer.bytes = file.sidecar.bytes;
  answer.readings = readings_in(file.text, answer.file);
  // A file that was kept may have been asked for at an earlier end.
  answer.url = file.sidecar.url;
}

// Before anything goes out.
void say_terms(const climate::PlannedFetch& plan, bool quiet) {
  write_notes(note_line(fmt::format("{}: {}", plan.source, plan.licence), quiet));
}

} // namespace

Outcome run(const FetchCommand& command, const CommonOptions& common, const Surroundings& around) {
  const FetchPlace garden = place_of(command, common.garden);
  const Date today = common.today ? *common.today : civil_date(around.now, garden.time_zone);
  const climate::Network network = network_of(command, around);
  FetchAnswer answer;
  answer.dry_run = command.dry_run;
  std::string notes;
  climate::FetchRequest request{command.archive,
                                command.station,
                                garden.place.latitude,
                                garden.place.longitude,
                                command.from,
                                today,
                                command.base_url};
  const bool nearest = command.archive == Archive::station && command.station.empty();
  if (nearest) {
    say_terms(climate::plan_station_list("ghcnd-stations.txt", command.base_url), common.quiet);
    weigh_stations(answer, notes, command, garden, year_of(today), around, network);
    request.station = answer.stations.front().id;
  }
  const climate::PlannedFetch plan = climate::plan_fetch(request);
  add_plan(answer, plan, garden);
  if (command.archive == Archive::station && command.from) {
    notes += "note: a station's file always comes whole; --from changes nothing\n";
  }
  if (!command.dry_run) {
    if (!nearest) {
      say_terms(plan, common.quiet);
    }
    const auto file =
        climate::fetch_file(plan, common.garden / "readings", climate::FolderOf::grower, network);
    add_file(answer, file, around.now);
  }
  return {common.json ? to_json(answer) : fetch_text(answer, style_of(common, around)),
          common.quiet ? "" : notes,
          Ending::answered};
}

} // namespace nightsow::planner
