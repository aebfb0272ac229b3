#include "planner/garden/other_place.hpp"

#include "climate/base/file.hpp"
#include "climate/base/problem.hpp"
#include "climate/readers/read_readings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <memory>
#include <string>
#include <system_error>
#include <utility>

namespace nightsow::planner {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_faults_shown = 5;

[[noreturn]] void ask_for_latitude(const std::string& file) {
  throw UsageError({Severity::error,
                    file,
                    0,
                    0,
                    "the file does not tell where its station lies",
                    "a latitude: the length of days hangs on it",
                    "add --latitude DEG (south is negative)"});
}

GardenFolder folder_of_file(const fs::path& path,
                            const TypedPlace& typed,
                            const std::string& time_zone) {
  const std::string file = path.string();
  const std::array read{
      climate::read_readings(read_whole_file(path, "--place"), file, {"", "", time_zone})};
  const climate::Readings& readings = read.front();
  const auto latitude = typed.latitude ? typed.latitude : readings.station.latitude;
  if (!latitude) {
    ask_for_latitude(file);
  }
  GardenFolder folder;
  folder.garden.name =
      readings.station.name.empty() ? path.filename().string() : readings.station.name;
  folder.garden.latitude = *latitude;
  folder.garden.longitude = typed.longitude.value_or(readings.station.longitude.value_or(0.0));
  folder.garden.elevation_m = typed.elevation_m ? typed.elevation_m : readings.station.elevation_m;
  folder.garden.time_zone = time_zone;
  folder.garden.readings = {{file, "", ReadingsEntry::Kind::readings, "", ""}};
  folder.station = climate::merge_readings(read);
  folder.station_elevation_m = readings.station.elevation_m;
  folder.files = {{file, readings.format, readings.because, readings.unit, "", false}};
  const std::size_t shown = std::min(most_faults_shown, readings.problems.size());
  folder.problems.assign(readings.problems.begin(),
                         readings.problems.begin() + static_cast<std::ptrdiff_t>(shown));
  return folder;
}

GardenFolder folder_of_garden(const fs::path& path) {
  GardenFolder folder = load_garden(path);
  folder.packets.clear();
  std::erase_if(folder.problems,
                [](const Problem& problem) { return problem.where == "packets.csv"; });
  return folder;
}

} // namespace

LoadedGarden other_place(const fs::path& path,
                         const TypedPlace& typed,
                         const std::string& time_zone,
                         Date today) {
  std::error_code unknown;
  return as_of(fs::is_directory(path, unknown) ? folder_of_garden(path)
                                               : folder_of_file(path, typed, time_zone),
               today);
}

} // namespace nightsow::planner
