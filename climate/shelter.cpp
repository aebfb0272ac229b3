#include "climate/shelter.hpp"

#include <algorithm>
#include <array>

namespace nightsow::climate {

namespace {

constexpr std::string_view practice = "common practice, no source";
constexpr double through_glass = 0.7; // share of light; eye estimate of the model

constexpr std::array<Shelter, 6> table{{
    {.name = "open",
     .rain = true,
     .night_loss = CelsiusDelta{2.0},
     .source = "the station's own air; light and loss: common practice, no source"},
    {.name = "wall",
     .night = CelsiusDelta{1.0},
     .day = CelsiusDelta{1.0},
     .sun = 0.8,
     .rain = true,
     .night_loss = CelsiusDelta{1.0},
     .night_doubt = CelsiusDelta{1.0},
     .source = practice},
    {.name = "cold frame",
     .night = CelsiusDelta{1.5},
     .closed_glass = true,
     .vent_above = Celsius{25.0},
     .sun = through_glass,
     .night_loss = CelsiusDelta{3.0},
     .night_doubt = CelsiusDelta{1.0},
     .source = practice},
    {.name = "unheated glass",
     .night = CelsiusDelta{2.0},
     .closed_glass = true,
     .vent_above = Celsius{25.0},
     .sun = through_glass,
     .night_loss = CelsiusDelta{3.0},
     .night_doubt = CelsiusDelta{1.5},
     .source = practice},
    {.name = "plastic tunnel",
     .night = CelsiusDelta{1.3},
     .day = CelsiusDelta{4.2},
     .sun = through_glass,
     .night_loss = CelsiusDelta{3.0},
     // On clear nights single plastic lies up to 1 K under the air outside, not 1.3 over it.
     .night_doubt = CelsiusDelta{1.5},
     .source = "mean offsets of published tunnel measurements (figures from memory); the rest: "
               "common practice, no source"},
    {.name = "indoors",
     .night = CelsiusDelta{3.0},
     .floor = Celsius{16.0},
     .sun = 0.3,
     .shade = 0.0,
     .night_doubt = CelsiusDelta{2.0},
     .source = practice},
}};

} // namespace

std::span<const Shelter> shelters() {
  return table;
}

const Shelter& shelter_named(std::string_view name) {
  const auto* const found = std::find_if(
      table.begin(), table.end(), [&](const Shelter& shelter) { return shelter.name == name; });
  return found == table.end() ? table.front() : *found;
}

} // namespace nightsow::climate
