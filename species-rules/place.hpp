#pragma once

#include "climate/base/problem.hpp"

#include <cstddef>
#include <string>
#include <utility>

namespace nightsow::species_rules {

/// Where an entry stands in its file, for faults that show only beside other entries.
struct Place {
  std::string where;
  std::size_t line = 0;
  std::size_t column = 0;
  std::string pointer{}; ///< RFC 6901
};

[[nodiscard]] inline Problem fault_at(const Place& place,
                                      std::string found,
                                      std::string expected,
                                      std::string remedy) {
  return {Severity::error,
          place.where,
          place.line,
          place.column,
          std::move(found),
          std::move(expected),
          std::move(remedy),
          place.pointer};
}

} // namespace nightsow::species_rules
