#pragma once

#include "climate/archive/fetch.hpp"
#include "climate/base/date.hpp"
#include "planner/garden/new_garden.hpp"

#include <filesystem>
#include <optional>
#include <string>

namespace nightsow::planner {

// The commands that make a garden and bring its readings.

struct FetchCommand {
  climate::Archive archive = climate::Archive::station;
  std::string station; ///< empty: the nearest
  std::optional<Date> from;
  std::string base_url; ///< empty: the archive's own
  bool dry_run = false;
  std::optional<int> timeout_s;   ///< for one attempt
  std::optional<double> latitude; ///< both or neither: in place of garden.json's
  std::optional<double> longitude;
  std::optional<double> elevation_m;
};

struct StartCommand {
  std::filesystem::path folder;   ///< empty: the present folder
  std::filesystem::path readings; ///< the weather file, where it is now
  NewGarden garden;               ///< its readings_file is still empty
};

} // namespace nightsow::planner
