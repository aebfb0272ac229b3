#pragma once

#include "species-rules/catalogue.hpp"

#include <string>
#include <vector>

namespace nightsow::species_rules {

/// One value of a rule, as text and numbers, for tables and JSON.
struct ExplainedValue {
  std::string key;
  std::string unit;
  std::string meaning;
  bool number = false; ///< value, low and high are meaningful; otherwise `word` is
  double value = 0.0;
  double low = 0.0;
  double high = 0.0;
  std::string word;
  std::string evidence;
  std::string source; ///< id, may be empty
  std::string origin; ///< family, genus, species, yours
};

/// Every known value of a rule, in the order of the field table; remarks one by one.
[[nodiscard]] std::vector<ExplainedValue> explain(const Rule& rule);

} // namespace nightsow::species_rules
