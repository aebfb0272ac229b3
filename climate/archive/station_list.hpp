#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// First and last calendar year with any value, both included.
struct YearSpan {
  int first = 0;
  int last = 0;
  bool operator==(const YearSpan&) const = default;
};

/// A line of the archive's station list, with what its inventory says.
struct ArchiveStation {
  std::string id;
  std::string name;
  double latitude = 0.0;
  double longitude = 0.0;
  std::optional<double> elevation_m;
  std::optional<YearSpan> nights; ///< TMIN
  std::optional<YearSpan> days;   ///< TMAX
};

struct StationList {
  std::vector<ArchiveStation> stations; ///< by id
  std::size_t unread_lines = 0;         ///< of both files
};

/// Reads ghcnd-stations.txt and ghcnd-inventory.txt (fixed columns; lines may end early). The
/// inventory tells first and last year alone, not how many days are there.
/// Format: GHCN-Daily readme.txt, sections IV and VII. Throws InputError when no line of either
/// file can be read.
[[nodiscard]] StationList read_station_list(std::string_view stations, std::string_view inventory);

struct Place {
  double latitude = 0.0;
  double longitude = 0.0;
  std::optional<double> elevation_m;
};

/// Kilometres along a great circle (haversine, sphere of 6371 km).
[[nodiscard]] double distance_km(double latitude_a,
                                 double longitude_a,
                                 double latitude_b,
                                 double longitude_b);

/// A station beside the garden. The parts are kilometres of doubt: how much farther away an equally
/// good station could lie. Their sum decides, the least is best.
struct WeighedStation {
  ArchiveStation station;
  double distance_km = 0.0;
  std::optional<double> higher_m; ///< station minus garden; empty where one is unknown
  int years = 0;                  ///< with nights and days both, as the inventory has it
  int last_year = 0;
  double for_height = 0.0;
  double for_years = 0.0;
  double for_age = 0.0;

  [[nodiscard]] double doubt() const { return distance_km + for_height + for_years + for_age; }
};

/// The best stations with nights and days within 300 km, best first; equals by id.
[[nodiscard]] std::vector<WeighedStation> nearest_stations(const StationList& list,
                                                           const Place& garden,
                                                           int this_year,
                                                           std::size_t most);

} // namespace nightsow::climate
