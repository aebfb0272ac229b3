#pragma once

#include "climate/base/celsius.hpp"
#include "climate/base/date.hpp"

#include <string>
#include <variant>

namespace nightsow::planner {

// What the sentence of a reason tells besides its words.

/// A share of one, shown in words or per cent.
struct Share {
  double value = 0.0;
};

using ReasonValue = std::variant<int, double, Share, Celsius, CelsiusDelta, Date, std::string>;

struct NamedValue {
  std::string name;
  ReasonValue value;
};

} // namespace nightsow::planner
