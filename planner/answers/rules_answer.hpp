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
  std::string seed_size;
  std::string mat;
  std::string first_rest;
  std::vector<std::string> older_names;
  int deciding = 0;        ///< values that decide much
  std::optional<int> weak; ///< those of them on weaker ground than asked for; empty: not asked
};

/// How many rules of the list are started by one word.
struct StartCount {
  std::string start;
  int rules = 0;
};

struct RulesListAnswer {
  std::vector<RuleListLine> rules;
  int of = 0; ///< rules there are
  int families = 0;
  std::vector<StartCount> starts; ///< in the order of the words; none of naught
  std::string evidence_below;     ///< as asked for; empty: not asked
  bool in_hand = false;           ///< only kinds of the garden's packets
};

/// What a grower's own value would be otherwise.
struct OtherwiseRuleValue {
  double value = 0.0; ///< of a number; the same below
  double low = 0.0;
  double high = 0.0;
  std::string word;
  std::string evidence;
  std::string source;
  std::string origin;
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
  std::optional<OtherwiseRuleValue> otherwise{}; ///< of origin "yours", where the catalogue knows
};

struct RuleSource {
  std::string id;
  std::string kind;
  std::string author;
  std::string title;
  std::optional<int> year;
};

/// On what the values stand that decide much.
struct RuleGround {
  int deciding = 0;
  int experiment = 0;
  int institution = 0;
  int grower = 0;
  int less = 0;                     ///< common practice, relatives, memory
  std::vector<std::string> weakest; ///< what is known worst and matters most, at most three
};

/// So many days that a part of the seed needs to ripen on a shelf, warm and dry.
struct RipeningDays {
  double days = 0.0;
  double low = 0.0;
  double high = 0.0;
  double shelf_c = 0.0;
};

struct RuleShowAnswer {
  std::string taxon; ///< as asked for
  std::string accepted;
  std::string rule;
  std::string family;
  bool by_synonym = false;
  std::string read_as;  ///< set when the spelling was corrected
  bool own_rule = true; ///< false: a species that goes by the rule of its genus
  std::vector<std::string> older_names;
  std::vector<std::string> species_rules; ///< of a genus: its species with rules of their own
  std::vector<std::string> yours;         ///< keys of the values that are the grower's own
  RuleGround ground;
  std::optional<RipeningDays> half_ripe; ///< empty: the rule does not tell
  std::vector<RuleValue> values;
  std::vector<RuleSource> sources; ///< those that the values name, in order of first use
};

/// What a file of rules holds.
struct CheckedRuleFile {
  std::string file;
  std::string family; ///< empty: not told, or no JSON
  int genera = 0;
  int species = 0;
  int values = 0;
};

struct RuleFault {
  std::string file;
  int line = 0; ///< from 1; 0: not known; the same of column
  int column = 0;
  std::string pointer; ///< RFC 6901; empty for the whole file
  std::string found;
  std::string expected;
  std::string remedy;
};

struct RulesCheckAnswer {
  std::vector<CheckedRuleFile> files;
  std::vector<RuleFault> faults; ///< in the order of files and of their lines
};

/// A value that is known badly, where it was given, and what would settle it.
struct RuleGap {
  std::string name;  ///< who gives it: "Bulbine", "Aizoaceae"
  std::string level; ///< family, genus, species, yours
  RuleValue value;
  double score = 0.0;             ///< 0 to 5: how much would be gained by knowing better
  std::vector<std::string> rules; ///< those asked about that go by it
  std::string trial;              ///< "{low}" and "{high}" stand for the ends of the value's range
};

/// One field of the rules, with the kinds for which it is known worst.
struct FieldGaps {
  std::string key;
  std::string name;          ///< "the night limit"
  int weight = 0;            ///< 1 to 5: how much the field decides
  std::string why;           ///< the reason of the weight
  double score = 0.0;        ///< mean over the rules asked about
  std::vector<RuleGap> gaps; ///< worst first
  int more = 0;              ///< values that are left out
};

struct RulesGapsAnswer {
  int rules = 0; ///< asked about
  std::string family;
  bool in_hand = false;
  std::vector<FieldGaps> fields; ///< worst first
  int more = 0;                  ///< fields that are left out
};

} // namespace nightsow::planner
