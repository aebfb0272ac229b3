#pragma once

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

struct RuleListLine {
  std::string rule;
  std::string family;
  std::string growth;
  std::string start;
  std::optional<double> night_limit_c;
  std::optional<double> warm_night_c;
  std::optional<double> half_life_years;
};

struct RulesListAnswer {
  std::vector<RuleListLine> rules;
};

struct RuleValue {
  std::string key;
  std::string unit;
  std::string meaning;
  bool number = false;
  double value = 0.0;
  double low = 0.0;
  double high = 0.0;
  std::string word;
  std::string evidence;
  std::string source;
  std::string origin;
};

struct RuleSource {
  std::string id;
  std::string kind;
  std::string author;
  std::string title;
  std::optional<int> year;
};

struct RuleShowAnswer {
  std::string taxon; ///< as asked for
  std::string accepted;
  std::string rule;
  std::string family;
  bool by_synonym = false;
  std::string read_as; ///< set when the spelling was corrected
  std::vector<RuleValue> values;
  std::vector<RuleSource> sources; ///< those that the values name, in order of first use
};

} // namespace nightsow::planner
