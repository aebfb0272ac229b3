#pragma once

#include "climate/base/celsius.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace nightsow::climate {

/// What air and light are like in a kind of place where nobody has measured. All of it is what to
/// go on until a logger has stood there; `source` says how little is behind it.
struct Shelter {
  std::string_view name; ///< as written in garden.json
  CelsiusDelta night{};  ///< on the air outside
  CelsiusDelta day{};    ///< the same; left aside where `closed_glass`
  /// Days follow the sun: outside air + 0.5 K for each MJ m-2 d-1, not above the vent's opening,
  /// never below the air outside.
  bool closed_glass = false;
  std::optional<Celsius> floor{};      ///< kept at least so warm, night and day
  std::optional<Celsius> vent_above{}; ///< opened at so many degrees
  double sun = 1.0;                    ///< share of the open sky's sun that reaches the place
  double shade = 0.5;                  ///< share of that which shading keeps off the pots
  bool rain = false;                   ///< rain reaches the pots
  CelsiusDelta night_loss{};           ///< pots below the air on a clear night
  CelsiusDelta night_doubt{};          ///< nights of one such place and the next differ by so much
  std::string_view source;
};

/// open, wall, cold frame, unheated glass, plastic tunnel, indoors.
[[nodiscard]] std::span<const Shelter> shelters();

/// The open where the name is empty or none of them.
[[nodiscard]] const Shelter& shelter_named(std::string_view name);

} // namespace nightsow::climate
