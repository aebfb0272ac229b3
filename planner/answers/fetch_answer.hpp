#pragma once

#include "climate/base/date.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// A station of the archive, weighed; the parts of its doubt are kilometres and add up to it.
struct StationLine {
  std::string id;
  std::string name;
  double distance_km = 0.0;
  std::optional<double> elevation_m;
  std::optional<double> higher_m; ///< than the garden
  int years = 0;                  ///< with nights and days both
  int last_year = 0;
  double for_height = 0.0;
  double for_years = 0.0;
  double for_age = 0.0;
  double doubt = 0.0;
};

/// What the fetched file holds, read as a plan would read it.
struct FetchedReadings {
  std::string format;
  Date from{};
  Date to{};
  double nights_there = 0.0; ///< share of the days from first to last, 0 to 1
  double days_there = 0.0;
};

/// What was fetched, or, on a dry run, what would be.
struct FetchAnswer {
  bool dry_run = false;
  std::string source;
  std::string licence;
  std::string sent; ///< what the archive gets to know, in words
  std::string url;
  std::string file;            ///< as garden.json would name it
  std::string arrival;         ///< "fetched", "unchanged", "kept"; empty on a dry run
  std::string trouble;         ///< kept only: why nothing newer came
  std::optional<int> age_days; ///< since the archive last answered; empty on a dry run
  std::string fetched_at;      ///< RFC 3339, empty on a dry run
  std::string sha256;          ///< empty on a dry run
  std::optional<std::size_t> bytes;
  std::optional<FetchedReadings> readings; ///< empty: dry run, or a format not read yet
  std::string garden_line;                 ///< to add to "readings" in garden.json
  bool in_garden = false;                  ///< garden.json names the file already
  std::vector<StationLine> stations;       ///< best first; only when the nearest was asked for
  std::optional<int> list_age_days;        ///< of the station list, when one was used
};

} // namespace nightsow::planner
