#include "species-rules/write_rule.hpp"

#include "species-rules/rule_fields.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <string_view>
#include <utility>
#include <vector>

namespace nightsow::species_rules {

namespace {

using Json = nlohmann::ordered_json;

void add_ground(const Ground& ground, Json& json) {
  json["evidence"] = word_of(ground.evidence);
  json["source"] = ground.source.empty() ? Json{} : Json(ground.source);
}

// {"value": 14, "low": 11.5, …}, on one line as the catalogue's files have it.
std::string one_line(const Json& json) {
  std::string text;
  for (const auto& [key, value] : json.items()) {
    const std::string written =
        value.is_number() ? fmt::format("{}", value.get<double>()) : value.dump();
    text += fmt::format("{}\"{}\": {}", text.empty() ? "" : ", ", key, written);
  }
  return '{' + text + '}';
}

/// Writes each field that a rule gives as a line.
class RuleWriter {
public:
  explicit RuleWriter(std::string indent) : indent_(std::move(indent)) {}

  void operator()(const Field& field, const std::optional<Estimate>& estimate) {
    if (estimate) {
      Json json;
      json["value"] = estimate->value;
      json["low"] = estimate->low;
      json["high"] = estimate->high;
      add_ground(estimate->ground, json);
      add(field, one_line(json));
    }
  }

  template <class E> void operator()(const Field& field, const std::optional<Choice<E>>& choice) {
    if (choice) {
      Json json;
      json["value"] = word_of(choice->value);
      add_ground(choice->ground, json);
      add(field, one_line(json));
    }
  }

  void operator()(const Field& field, const std::vector<Remark>& remarks) {
    std::string list;
    for (const Remark& remark : remarks) {
      Json json;
      json["value"] = remark.value;
      add_ground(remark.ground, json);
      list += fmt::format("{}\n{}  {}", list.empty() ? "" : ",", indent_, one_line(json));
    }
    if (!list.empty()) {
      add(field, fmt::format("[{}\n{}]", list, indent_));
    }
  }

  [[nodiscard]] const std::string& lines() const { return lines_; }

private:
  void add(const Field& field, std::string_view value) {
    lines_ += fmt::format("{}{}\"{}\": {}", lines_.empty() ? "" : ",\n", indent_, field.key, value);
  }

  std::string indent_;
  std::string lines_;
};

std::string rule_lines(const Rule& rule, std::size_t indent) {
  RuleWriter writer{std::string(indent, ' ')};
  for_each_field(rule, writer);
  if (!rule.only_own_notes) {
    return writer.lines();
  }
  return fmt::format(
      "{}\"{}\": true,\n{}", std::string(indent, ' '), only_own_notes_key, writer.lines());
}

std::pair<std::string, std::string> taken_apart(const std::string& name) {
  const std::size_t space = name.find(' ');
  return space == std::string::npos ? std::pair{name, std::string{}}
                                    : std::pair{name.substr(0, space), name.substr(space + 1)};
}

} // namespace

std::string override_text(const RuleFor& rule) {
  const auto [genus, own_epithet] = taken_apart(rule.rule_name);
  const std::string epithet = own_epithet.empty() ? taken_apart(rule.accepted).second : own_epithet;
  std::string entry;
  if (epithet.empty()) {
    entry = fmt::format("      \"rule\": {{\n{}\n      }}", rule_lines(rule.rule, 8));
  } else {
    entry = fmt::format("      \"species\": [\n        {{\n          \"species\": \"{}\",\n"
                        "          \"rule\": {{\n{}\n          }}\n        }}\n      ]",
                        epithet,
                        rule_lines(rule.rule, 12));
  }
  return fmt::format("{{\n  \"schema\": 1,\n  \"family\": \"{}\",\n  \"genera\": [\n    {{\n"
                     "      \"genus\": \"{}\",\n{}\n    }}\n  ]\n}}\n",
                     rule.family,
                     genus,
                     entry);
}

} // namespace nightsow::species_rules
