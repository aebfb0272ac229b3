#include "planner/garden/shared_counts.hpp"

#include "climate/base/located_json.hpp"
#include "planner/garden/object_keys.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>

namespace nightsow::planner {

namespace {

using Json = nlohmann::ordered_json;

// Bounds that catch slips.
constexpr int most_seeds = 1'000'000;
constexpr int most_seasons = 200;
constexpr int most_days = 4000;
constexpr double most_years = 200.0;

Json number_or_null(const std::optional<double>& number) {
  return number ? Json(*number) : Json(nullptr);
}

std::string sowing_line(const SharedSowing& sowing) {
  Json looks = Json::array();
  for (const auto& [day, came] : sowing.looks) {
    looks.push_back(Json::array({day, came}));
  }
  const Json json{{"taxon", sowing.taxon},
                  {"seeds", sowing.seeds},
                  {"came", sowing.came},
                  {"season", sowing.season},
                  {"age_years", number_or_null(sowing.age_years)},
                  {"shelter", sowing.shelter.empty() ? Json(nullptr) : Json(sowing.shelter)},
                  {"trial", sowing.trial},
                  {"looks", std::move(looks)}};
  return json.dump();
}

std::string rule_line(const SharedRule& rule) {
  const Json json{{"taxon", rule.taxon},
                  {"night_limit_c", number_or_null(rule.night_limit_c)},
                  {"germination_share", number_or_null(rule.germination_share)}};
  return json.dump();
}

std::string climate_line(const std::optional<SharedClimate>& climate) {
  if (!climate) {
    return "null";
  }
  const Json json{{"warmest_nights_c", climate->warmest_nights_c},
                  {"coldest_nights_c", climate->coldest_nights_c},
                  {"warmest_days_c", climate->warmest_days_c}};
  return json.dump();
}

template <class T, class Line>
std::string list_of(const std::vector<T>& values, const Line& line_of) {
  std::string text;
  for (const T& value : values) {
    text += (text.empty() ? "\n    " : ",\n    ") + line_of(value);
  }
  return text.empty() ? "[]" : "[" + text + "\n  ]";
}

std::string text_of(const JsonNode& node) {
  std::string words = node.text();
  if (words.empty()) {
    node.fail_as("a text that is not empty");
  }
  return words;
}

int seeds_of(const JsonNode& node) {
  return node.whole_number(0, most_seeds);
}

int season_of(const JsonNode& node) {
  return node.whole_number(1, most_seasons);
}

int degrees(const JsonNode& node) {
  return node.whole_number(-60, 70);
}

double years(const JsonNode& node) {
  return node.number(0.0, most_years);
}

double limit(const JsonNode& node) {
  return node.number(-60.0, 70.0);
}

double share(const JsonNode& node) {
  return node.number(0.0, 1.0);
}

bool yes_or_no(const JsonNode& node) {
  return node.yes_or_no();
}

std::vector<std::pair<int, int>> looks_of(const JsonNode& node) {
  std::vector<std::pair<int, int>> looks;
  for (const JsonNode& look : node.elements()) {
    const std::vector<JsonNode> pair = look.elements();
    if (pair.size() != 2) {
      look.fail_as("a day after first water and the seedlings come by then: [21, 4]");
    }
    looks.emplace_back(pair[0].whole_number(-most_days, most_days), seeds_of(pair[1]));
  }
  return looks;
}

constexpr auto sowing_keys = std::to_array<Key<SharedSowing>>({
    {"taxon", set<&SharedSowing::taxon, text_of>, required},
    {"seeds", set<&SharedSowing::seeds, seeds_of>, required},
    {"came", set<&SharedSowing::came, seeds_of>, required},
    {"season", set<&SharedSowing::season, season_of>},
    {"age_years", set<&SharedSowing::age_years, years>},
    {"shelter", set<&SharedSowing::shelter, text_of>},
    {"trial", set<&SharedSowing::trial, yes_or_no>},
    {"looks", set<&SharedSowing::looks, looks_of>},
});

constexpr auto rule_keys = std::to_array<Key<SharedRule>>({
    {"taxon", set<&SharedRule::taxon, text_of>, required},
    {"night_limit_c", set<&SharedRule::night_limit_c, limit>},
    {"germination_share", set<&SharedRule::germination_share, share>},
});

constexpr auto climate_keys = std::to_array<Key<SharedClimate>>({
    {"warmest_nights_c", set<&SharedClimate::warmest_nights_c, degrees>, required},
    {"coldest_nights_c", set<&SharedClimate::coldest_nights_c, degrees>, required},
    {"warmest_days_c", set<&SharedClimate::warmest_days_c, degrees>, required},
});

/// The file as it stands; what it is and which version is looked at and let go.
struct CountsFile {
  int schema = 1;
  std::string kind;
  SharedCounts counts;
};

int schema_of(const JsonNode& node) {
  return node.whole_number(1, 1);
}

constexpr std::array<std::string_view, 1> kinds{"nightsow counts"};

std::string kind_of(const JsonNode& node) {
  return node.one_of(kinds);
}

constexpr auto file_keys = std::to_array<Key<CountsFile>>({
    {"schema", set<&CountsFile::schema, schema_of>, required},
    {"kind", set<&CountsFile::kind, kind_of>, required},
    {"climate",
     [](CountsFile& file, const JsonNode& node) {
       file.counts.climate = read_object(node, climate_keys);
     }},
    {"sowings",
     [](CountsFile& file, const JsonNode& node) {
       file.counts.sowings = read_list(node, sowing_keys);
     },
     required},
    {"rules",
     [](CountsFile& file, const JsonNode& node) {
       file.counts.rules = read_list(node, rule_keys);
     }},
});

} // namespace

std::string shared_counts_text(const SharedCounts& counts) {
  return "{\n  \"schema\": 1,\n  \"kind\": \"nightsow counts\",\n  \"climate\": " +
         climate_line(counts.climate) +
         ",\n  \"sowings\": " + list_of(counts.sowings, sowing_line) +
         ",\n  \"rules\": " + list_of(counts.rules, rule_line) + "\n}\n";
}

SharedCounts read_shared_counts(std::string_view text, std::string_view where) {
  const LocatedJson file = LocatedJson::parse(text, where);
  SharedCounts counts = read_object(JsonNode(file), file_keys).counts;
  for (std::size_t i = 0; i < counts.sowings.size(); ++i) {
    if (counts.sowings[i].came > counts.sowings[i].seeds) {
      throw InputError(file.problem_at("/sowings/" + std::to_string(i) + "/came",
                                       "more seedlings than seeds",
                                       "at most the seeds sown",
                                       "ask who gave it"));
    }
  }
  return counts;
}

} // namespace nightsow::planner
