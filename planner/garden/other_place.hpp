#pragma once

#include "planner/garden/load_garden.hpp"

#include <filesystem>
#include <optional>

namespace nightsow::planner {

/// Where a bare weather file lies, as far as it is told beside the file.
struct TypedPlace {
  std::optional<double> latitude;  ///< degrees, north positive
  std::optional<double> longitude; ///< degrees, east positive
  std::optional<double> elevation_m;
};

/// Another place, known up to `today`: a garden's folder, or one weather file, whose own latitude,
/// longitude and height count unless they are typed. Its packets are left aside; a file has the
/// time zone given. Throws InputError as load_garden and as_of do, and UsageError when a file does
/// not tell its latitude and none is typed.
[[nodiscard]] LoadedGarden other_place(const std::filesystem::path& path,
                                       const TypedPlace& typed,
                                       const std::string& time_zone,
                                       Date today);

} // namespace nightsow::planner
