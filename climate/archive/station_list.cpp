#include "climate/archive/station_list.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/problem.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>
#include <tuple>

namespace nightsow::climate {

namespace {

// Judgements: common practice, no source. 100 m of height are 0.65 K in the standard atmosphere
// (ISO 2533), as much as neighbouring stations some 15 km apart often differ.
constexpr double farthest_km = 300.0;
constexpr double km_for_metre = 0.15;
constexpr double km_for_unknown_height = 15.0;
constexpr int full_record_years = 30; // WMO-No. 1203: the length of a normal period
constexpr double km_for_missing_year = 2.0;
constexpr double km_for_year_since_end = 5.0;
constexpr double unknown_elevation = -999.0; // -999.9 in the file

constexpr std::size_t id_letters = 11;

std::string_view columns(std::string_view line, std::size_t first, std::size_t last) {
  return first > line.size() ? std::string_view{}
                             : trimmed(line.substr(first - 1, last - first + 1));
}

template <typename Number> std::optional<Number> number_in(std::string_view text) {
  Number value{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc{} && end == text.data() + text.size() ? std::optional(value)
                                                                  : std::nullopt;
}

template <typename Use> void for_each_line(std::string_view text, const Use& use) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.ends_with('\r')) {
      line.remove_suffix(1);
    }
    if (!trimmed(line).empty()) {
      use(line);
    }
  }
}

std::optional<ArchiveStation> station_of(std::string_view line) {
  const std::string_view id = columns(line, 1, 11);
  const auto latitude = number_in<double>(columns(line, 13, 20));
  const auto longitude = number_in<double>(columns(line, 22, 30));
  if (id.size() != id_letters || !latitude || !longitude || std::abs(*latitude) > 90.0 ||
      std::abs(*longitude) > 180.0) {
    return std::nullopt;
  }
  auto elevation = number_in<double>(columns(line, 32, 37));
  if (elevation && *elevation <= unknown_elevation) {
    elevation.reset();
  }
  return ArchiveStation{std::string(id),
                        std::string(columns(line, 42, 71)),
                        *latitude,
                        *longitude,
                        elevation,
                        {},
                        {}};
}

// Returns whether the line could be read; elements other than TMIN and TMAX are.
bool add_years(std::string_view line, std::vector<ArchiveStation>& stations) {
  const std::string_view id = columns(line, 1, 11);
  const std::string_view element = columns(line, 32, 35);
  const auto first = number_in<int>(columns(line, 37, 40));
  const auto last = number_in<int>(columns(line, 42, 45));
  if (id.size() != id_letters || element.size() != 4 || !first || !last || *last < *first) {
    return false;
  }
  const auto found = std::lower_bound(
      stations.begin(),
      stations.end(),
      id,
      [](const ArchiveStation& station, std::string_view key) { return station.id < key; });
  if (found != stations.end() && found->id == id) {
    if (element == "TMIN") {
      found->nights = YearSpan{*first, *last};
    } else if (element == "TMAX") {
      found->days = YearSpan{*first, *last};
    }
  }
  return true;
}

[[noreturn]] void refuse(const char* file, const char* layout) {
  throw InputError({Severity::error,
                    file,
                    0,
                    0,
                    "not one line of it can be read",
                    layout,
                    "check the base address; what came may be another page"});
}

double radians(double degrees) {
  return degrees * std::numbers::pi / 180.0;
}

std::optional<WeighedStation> weigh(const ArchiveStation& station,
                                    const Place& garden,
                                    int this_year) {
  if (!station.nights || !station.days) {
    return std::nullopt;
  }
  WeighedStation weighed;
  weighed.distance_km =
      distance_km(garden.latitude, garden.longitude, station.latitude, station.longitude);
  weighed.last_year = std::min(station.nights->last, station.days->last);
  weighed.years = weighed.last_year - std::max(station.nights->first, station.days->first) + 1;
  if (weighed.distance_km > farthest_km || weighed.years < 1) {
    return std::nullopt;
  }
  weighed.station = station;
  weighed.for_height = km_for_unknown_height;
  if (station.elevation_m && garden.elevation_m) {
    weighed.higher_m = *station.elevation_m - *garden.elevation_m;
    weighed.for_height = km_for_metre * std::abs(*weighed.higher_m);
  }
  weighed.for_years = km_for_missing_year * std::max(0, full_record_years - weighed.years);
  weighed.for_age = km_for_year_since_end * std::max(0, this_year - 1 - weighed.last_year);
  return weighed;
}

} // namespace

StationList read_station_list(std::string_view stations, std::string_view inventory) {
  StationList list;
  for_each_line(stations, [&](std::string_view line) {
    if (auto station = station_of(line)) {
      list.stations.push_back(*std::move(station));
    } else {
      ++list.unread_lines;
    }
  });
  if (list.stations.empty()) {
    refuse("ghcnd-stations.txt", "a number of 11 letters, latitude, longitude");
  }
  std::sort(list.stations.begin(),
            list.stations.end(),
            [](const ArchiveStation& a, const ArchiveStation& b) { return a.id < b.id; });
  std::size_t read = 0;
  for_each_line(inventory, [&](std::string_view line) {
    if (add_years(line, list.stations)) {
      ++read;
    } else {
      ++list.unread_lines;
    }
  });
  if (read == 0) {
    refuse("ghcnd-inventory.txt", "a number of 11 letters, place, element, first and last year");
  }
  return list;
}

double distance_km(double latitude_a, double longitude_a, double latitude_b, double longitude_b) {
  constexpr double earth_radius_km = 6371.0; // mean radius, IUGG, rounded
  const double half_height = std::sin(radians(latitude_b - latitude_a) / 2.0);
  const double half_width = std::sin(radians(longitude_b - longitude_a) / 2.0);
  const double chord = half_height * half_height + std::cos(radians(latitude_a)) *
                                                       std::cos(radians(latitude_b)) * half_width *
                                                       half_width;
  return 2.0 * earth_radius_km * std::asin(std::sqrt(std::min(1.0, chord)));
}

std::vector<WeighedStation> nearest_stations(const StationList& list,
                                             const Place& garden,
                                             int this_year,
                                             std::size_t most) {
  std::vector<WeighedStation> best;
  for (const ArchiveStation& station : list.stations) {
    if (auto weighed = weigh(station, garden, this_year)) {
      best.push_back(*std::move(weighed));
    }
  }
  std::sort(best.begin(), best.end(), [](const WeighedStation& a, const WeighedStation& b) {
    return std::make_tuple(a.doubt(), a.station.id) < std::make_tuple(b.doubt(), b.station.id);
  });
  best.resize(std::min(best.size(), most));
  return best;
}

} // namespace nightsow::climate
