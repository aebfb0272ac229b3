#include "planner/garden/load_garden.hpp"

#include "climate/base/file.hpp"
#include "climate/drawn_years.hpp"
#include "climate/readers/read_readings.hpp"
#include "planner/garden/drawn_station.hpp"
#include "planner/garden/garden_file.hpp"
#include "planner/garden/own_rules.hpp"
#include "planner/garden/packet_file.hpp"
#include "planner/garden/sown_file.hpp"
#include "planner/journal/read_records.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <system_error>
#include <utility>

namespace nightsow::planner {

namespace {

namespace fs = std::filesystem;

// Messages name files as the garden does, whatever folder the command was started in.
constexpr std::string_view garden_file_name = "garden.json";
constexpr std::string_view sown_file_name = "sown.csv";

// A file with thousands of bad rows has one cause; five show it.
constexpr std::size_t most_faults_shown = 5;

// Two degrees are about 220 km: a station farther off is hardly meant. Mostly it is a lost sign
// (common practice, no source).
constexpr double farthest_station_degrees = 2.0;

bool is_there(const fs::path& path) {
  std::error_code unknown;
  return fs::exists(path, unknown);
}

Garden read_garden(const fs::path& folder) {
  const fs::path path = folder / garden_file_name;
  if (!is_there(path)) {
    throw UsageError({Severity::error,
                      folder.string(),
                      0,
                      0,
                      "there is no garden.json here",
                      "the folder of a garden",
                      "make one with `nightsow start DIR`, or name another with --garden"});
  }
  return read_garden_file(read_whole_file(path, "the garden"), garden_file_name);
}

std::vector<std::string> bench_names(const Garden& garden) {
  std::vector<std::string> names;
  for (const Bench& bench : garden.benches) {
    names.push_back(bench.name);
  }
  return names;
}

void read_packets(GardenFolder& loaded) {
  const fs::path path = loaded.folder / packet_file_name;
  if (!is_there(path)) {
    loaded.problems.push_back(
        {Severity::note,
         std::string(packet_file_name),
         0,
         0,
         "the garden has no packets.csv, so no seed in hand",
         "",
         "list your packets there: " + packet_header().substr(0, packet_header().size() - 1)});
    return;
  }
  PacketFile file = read_packet_file(
      read_whole_file(path, "the garden"), packet_file_name, bench_names(loaded.garden));
  loaded.packets = std::move(file.packets);
  loaded.problems.insert(loaded.problems.end(), file.problems.begin(), file.problems.end());
}

// One record or the other: a sowing in both would be taken off its packet twice.
void read_sown(GardenFolder& loaded) {
  const fs::path path = loaded.folder / sown_file_name;
  if (!is_there(path)) {
    return;
  }
  if (!loaded.records.sowings.empty()) {
    loaded.problems.push_back(
        {Severity::warning,
         std::string(sown_file_name),
         0,
         0,
         fmt::format("it is left aside, since {} holds sowings", journal_file_name),
         "one record of sowings",
         "enter what is missing there with `nightsow sow`, and move this file elsewhere"});
    return;
  }
  SownFile file = read_sown_file(read_whole_file(path, "the garden"),
                                 sown_file_name,
                                 loaded.packets,
                                 bench_names(loaded.garden));
  loaded.records.sowings = std::move(file.sowings);
  loaded.problems.insert(loaded.problems.end(), file.problems.begin(), file.problems.end());
}

// Notes and the first faults of rows; the rest of them as a number.
void keep_problems(const climate::Readings& readings, std::vector<Problem>& problems) {
  std::size_t faults = 0;
  for (const Problem& problem : readings.problems) {
    faults += problem.severity == Severity::note ? 0U : 1U;
    if (problem.severity == Severity::note || faults <= most_faults_shown) {
      problems.push_back(problem);
    }
  }
  if (faults > most_faults_shown) {
    problems.push_back({Severity::note,
                        readings.file,
                        0,
                        0,
                        fmt::format("{} of {} rows are faulty; the first {} faults are listed",
                                    readings.rows_faulty,
                                    readings.rows_read,
                                    most_faults_shown),
                        "",
                        ""});
  }
}

void check_latitude(const climate::Readings& readings,
                    const Garden& garden,
                    std::vector<Problem>& problems) {
  const auto latitude = readings.station.latitude;
  if (!latitude || std::abs(*latitude - garden.latitude) <= farthest_station_degrees) {
    return;
  }
  problems.push_back({Severity::warning,
                      readings.file,
                      0,
                      0,
                      fmt::format("this station lies at latitude {}, the garden at {}",
                                  *latitude,
                                  garden.latitude),
                      fmt::format("a station within {} degrees", farthest_station_degrees),
                      "check the latitude in garden.json (south is negative) and the file"});
}

climate::ReadingChoices choices_of(const ReadingsEntry& entry, const Garden& garden) {
  return {entry.station, entry.column, garden.time_zone};
}

// Reads what an entry names, and lists it among the garden's files.
climate::Readings read_entry(const ReadingsEntry& entry,
                             std::string_view text,
                             GardenFolder& loaded) {
  climate::Readings readings =
      climate::read_readings(text, entry.file, choices_of(entry, loaded.garden));
  keep_problems(readings, loaded.problems);
  const bool forecast = entry.kind == ReadingsEntry::Kind::forecast;
  loaded.files.push_back(
      {entry.file, readings.format, readings.because, readings.unit, entry.bench, forecast});
  return readings;
}

// Without its logger a bench is reckoned in another way, and without a forecast dates are wider:
// one that cannot be read is said, and no reason to stop.
std::optional<climate::Readings> read_if_possible(const ReadingsEntry& entry,
                                                  std::string_view text,
                                                  GardenFolder& loaded) {
  const bool forecast = entry.kind == ReadingsEntry::Kind::forecast;
  try {
    return read_entry(entry, text, loaded);
  } catch (const InputError& error) {
    Problem unread = error.problem();
    unread.severity = Severity::warning;
    unread.found =
        (forecast ? "the forecast cannot be read: " : "the logger cannot be read: ") + unread.found;
    loaded.problems.push_back(std::move(unread));
    return std::nullopt;
  }
}

// The files of one garden by what they are for, each list in the garden's order.
struct SortedReadings {
  std::vector<climate::Readings> station;
  std::vector<climate::Readings> forecast;
  std::map<std::string, std::vector<climate::Readings>> bench;
};

SortedReadings read_all_entries(GardenFolder& loaded) {
  SortedReadings sorted;
  for (const ReadingsEntry& entry : loaded.garden.readings) {
    const std::string text = read_whole_file(loaded.folder / entry.file, garden_file_name);
    if (entry.kind == ReadingsEntry::Kind::forecast) {
      if (auto readings = read_if_possible(entry, text, loaded)) {
        check_latitude(*readings, loaded.garden, loaded.problems);
        sorted.forecast.push_back(std::move(*readings));
      }
    } else if (!entry.bench.empty()) {
      if (auto readings = read_if_possible(entry, text, loaded)) {
        sorted.bench[entry.bench].push_back(std::move(*readings));
      }
    } else {
      climate::Readings readings = read_entry(entry, text, loaded);
      check_latitude(readings, loaded.garden, loaded.problems);
      if (!loaded.station_elevation_m) {
        loaded.station_elevation_m = readings.station.elevation_m;
      }
      sorted.station.push_back(std::move(readings));
    }
  }
  return sorted;
}

void read_weather(GardenFolder& loaded) {
  const SortedReadings sorted = read_all_entries(loaded);
  loaded.station = climate::merge_readings(sorted.station);
  loaded.forecast = climate::merge_readings(sorted.forecast);
  for (const auto& [bench, files] : sorted.bench) {
    loaded.bench_loggers.emplace(bench, climate::merge_readings(files));
  }
  if (!climate::last_night(loaded.station.series)) {
    throw InputError({Severity::error,
                      std::string(garden_file_name),
                      0,
                      0,
                      sorted.station.empty() ? "no entry of readings is of the station itself"
                                             : "the readings give not one night",
                      std::string(needed_readings),
                      std::string(how_to_name_readings)});
  }
}

void note_normals_only(GardenFolder& loaded) {
  loaded.problems.push_back(
      {Severity::warning,
       std::string(garden_file_name),
       0,
       0,
       fmt::format("there are no readings; nights are drawn from monthly_normals, straying by {} K "
                   "as is usual somewhere",
                   climate::drawn_night_sd_k),
       "",
       "take all dates as rough, and past seasons as drawn; it never says that water is due: bring "
       "readings, and name them in garden.json: "
       R"("readings": [ {"file": "readings/station.csv"} ])"});
}

void read_own_rules(GardenFolder& loaded) {
  RulesInGarden rules = rules_in_garden(loaded.folder);
  loaded.catalogue = std::move(rules.catalogue);
  loaded.problems.insert(loaded.problems.end(), rules.problems.begin(), rules.problems.end());
}

} // namespace

GardenFolder load_seed_and_records(const fs::path& folder) {
  GardenFolder loaded;
  loaded.folder = folder;
  loaded.garden = read_garden(folder);
  read_packets(loaded);
  loaded.records = read_records(folder / journal_file_name);
  return loaded;
}

GardenFolder load_garden(const fs::path& folder) {
  GardenFolder loaded = load_seed_and_records(folder);
  read_sown(loaded);
  if (knows_normals_only(loaded.garden)) {
    note_normals_only(loaded);
  } else {
    read_weather(loaded);
  }
  read_own_rules(loaded);
  return loaded;
}

} // namespace nightsow::planner
