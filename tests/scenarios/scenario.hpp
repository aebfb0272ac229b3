#pragma once

#include "tests/support/invented_garden.hpp"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::scenarios {

/// One line of a scenario, for messages.
struct Line {
  std::size_t number = 0;
  std::string text;
};

/// What stands behind `expect`: "Bulbine annua: waits".
struct Expectation {
  Line line;
  std::string subject;
  std::string claim;
};

/// A scenario as it is written; README.md tells its language.
struct Scenario {
  std::string title;
  std::string source;
  support::InventedGarden garden; ///< with the hottest night of the south
  std::string readings;           ///< a file of measured readings instead of an invented climate
  bool measured_in_the_north = false;
  std::optional<Date> today; ///< only with measured readings
  std::vector<Expectation> expectations;
  std::vector<std::string> faults; ///< what is not understood or missing, with its line
};

[[nodiscard]] Scenario read_scenario(std::string_view text);

/// The parts of a text that a regular expression captures, the whole first; none when it is no
/// match from end to end.
[[nodiscard]] std::vector<std::string> parts_of(const std::string& text,
                                                const std::string& expression);

} // namespace nightsow::scenarios
