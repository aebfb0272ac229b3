#pragma once

#include "species-rules/catalogue.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::species_rules {

/// What a value would be, had the grower not given his own.
struct OtherwiseValue {
  double value = 0.0; ///< of a number; the same below
  double low = 0.0;
  double high = 0.0;
  std::string word;
  std::string evidence;
  std::string source;
  std::string origin;
};

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
  std::string source;                        ///< id, may be empty
  std::string origin;                        ///< family, genus, species, yours
  std::optional<OtherwiseValue> otherwise{}; ///< of a grower's own value: what the catalogue says
};

/// Every known value of a rule, in the order of the field table; remarks one by one. `otherwise` is
/// what the catalogue alone says (RuleFor::otherwise).
[[nodiscard]] std::vector<ExplainedValue> explain(const Rule& rule,
                                                  const std::optional<Rule>& otherwise = {});

} // namespace nightsow::species_rules
