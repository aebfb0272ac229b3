#pragma once

#include <optional>
#include <string>

namespace nightsow::climate {

/// What a weather file says of its own station. Empty where it says nothing.
struct StationFacts {
  std::string id;
  std::string name;
  std::optional<double> latitude;
  std::optional<double> longitude;
  std::optional<double> elevation_m;
};

} // namespace nightsow::climate
