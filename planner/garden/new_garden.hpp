#pragma once

#include <optional>
#include <string>

namespace nightsow::planner {

/// What must be known of a garden to begin with.
struct NewGarden {
  std::string name;       ///< may be empty
  double latitude = 0.0;  ///< degrees, north positive
  double longitude = 0.0; ///< degrees, east positive
  std::optional<double> elevation_m;
  std::string time_zone;     ///< IANA name; empty: the machine's
  std::string readings_file; ///< relative to the garden's folder
  std::string station = {};  ///< the place meant, where that file holds several
  std::string column = {};   ///< the channel meant, where that file has several
};

/// The text of a garden.json that loads as it is. Its comments say what else can be filled in; each
/// line that is commented out is an example that still loads once its slashes are taken away.
/// Requires: texts are UTF-8.
[[nodiscard]] std::string new_garden_text(const NewGarden& garden);

} // namespace nightsow::planner
