#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/station.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

enum class StationFact {
  id,
  name,
  latitude,
  longitude,
  elevation,
  said, ///< a line worth repeating to the person, such as the clock of the days
};

/// What follows a label in the lines above a table is a fact of the station.
struct PreambleFact {
  std::string_view label = {}; ///< compared without regard to case; a whole word
  StationFact fact = StationFact::id;
};

/// Reads the facts from the first `lines` lines; the first line that has the label counts. A place
/// in degrees and minutes is left out, as nothing tells it from decimal degrees but a remark.
/// Lines to be repeated are added to `said`.
[[nodiscard]] StationFacts read_preamble(std::span<const PreambleFact> facts,
                                         const Opening& opening,
                                         std::size_t lines,
                                         std::vector<std::string>& said);

/// Where `part` begins in `text`, ASCII letters compared without regard to case; npos when nowhere.
[[nodiscard]] std::size_t find_caseless(std::string_view text, std::string_view part);

} // namespace nightsow::climate
