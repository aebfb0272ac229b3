#include "species-rules/rule_schema.hpp"

#include "species-rules/rule_fields.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdint>
#include <string_view>
#include <vector>

namespace nightsow::species_rules {

namespace {

using Json = nlohmann::ordered_json;

// Letters as taxon_name.hpp takes them: everything outside of ASCII may be one.
constexpr std::string_view genus_pattern = R"(^[A-Z](-?[a-z\u0080-\uffff])+$)";
constexpr std::string_view epithet_pattern =
    R"(^[a-z\u0080-\uffff]-?[a-z\u0080-\uffff](-?[a-z\u0080-\uffff])*$)";
constexpr std::string_view species_pattern =
    R"(^[A-Z](-?[a-z\u0080-\uffff])+ [a-z\u0080-\uffff]-?[a-z\u0080-\uffff](-?[a-z\u0080-\uffff])*)"
    R"(( (subsp|ssp|var|forma|fo|f)\. [a-z\u0080-\uffff]-?[a-z\u0080-\uffff](-?[a-z\u0080-\uffff])*)?$)";

Json refer(std::string_view definition) {
  return {{"$ref", fmt::format("#/$defs/{}", definition)}};
}

Json list_of(Json items) {
  return {{"type", "array"}, {"items", std::move(items)}};
}

Json text_like(std::string_view pattern) {
  return {{"type", "string"}, {"pattern", pattern}};
}

template <class E> Json words_of_choice() {
  Json words = Json::array();
  for (const auto& [value, word] : Words<E>::table) {
    words.push_back(word);
  }
  return {{"enum", std::move(words)}};
}

/// An object of these members and no others.
Json closed_object(Json properties, const std::vector<std::string>& required) {
  Json object{{"type", "object"}};
  if (!required.empty()) {
    object["required"] = required;
  }
  object["additionalProperties"] = false;
  object["properties"] = std::move(properties);
  return object;
}

// 30 rather than 30.0, as a person would write it.
Json figure(double value) {
  const bool whole = std::floor(value) == value;
  return whole ? Json(static_cast<std::int64_t>(value)) : Json(value);
}

std::string description_of(const Field& field) {
  return fmt::format("{}{}{}",
                     field.meaning,
                     field.unit.empty() ? "" : fmt::format("; {}", field.unit),
                     field.in_family ? "" : "; no family need give it");
}

/// Makes the schema of a rule, field by field, and the list of what a family must give.
class FieldSchemas {
public:
  void operator()(const Field& field, const std::optional<Estimate>& /*member*/) {
    Json schema = begun(field);
    schema["$ref"] = "#/$defs/number";
    schema["patternProperties"] = {
        {"^(value|low|high)$",
         {{"minimum", figure(field.lowest)}, {"maximum", figure(field.highest)}}}};
    add(field, std::move(schema));
  }

  template <class E>
  void operator()(const Field& field, const std::optional<Choice<E>>& /*member*/) {
    Json schema = begun(field);
    schema["$ref"] = "#/$defs/word";
    schema["properties"] = {{"value", words_of_choice<E>()}};
    add(field, std::move(schema));
  }

  void operator()(const Field& field, const std::vector<Remark>& /*member*/) {
    Json item = refer("word");
    if (!field.codes.empty()) {
      item["properties"] = {{"value", {{"enum", field.codes}}}};
    }
    Json schema = begun(field);
    schema.update(list_of(std::move(item)));
    add(field, std::move(schema));
  }

  [[nodiscard]] const Json& properties() const { return properties_; }

  [[nodiscard]] const std::vector<std::string>& in_family() const { return in_family_; }

private:
  static Json begun(const Field& field) { return {{"description", description_of(field)}}; }

  void add(const Field& field, Json schema) {
    properties_[std::string{field.key}] = std::move(schema);
    if (field.in_family) {
      in_family_.emplace_back(field.key);
    }
  }

  Json properties_ = Json::object();
  std::vector<std::string> in_family_;
};

Json ground_schema() {
  return {{"evidence", refer("evidence")}, {"source", refer("source")}};
}

// Evidence that needs a source has one; in a list, each of its items.
Json sourced_schema() {
  Json needing = Json::array();
  for (const auto& [evidence, word] : Words<Evidence>::table) {
    if (needs_source(evidence)) {
      needing.push_back(word);
    }
  }
  return {{"if",
           {{"type", "object"},
            {"required", {"evidence"}},
            {"properties", {{"evidence", {{"enum", std::move(needing)}}}}}}},
          {"then", {{"required", {"source"}}, {"properties", {{"source", {{"type", "string"}}}}}}},
          {"items", refer("sourced")}};
}

Json sourced_rule() {
  return {{"properties",
           {{"rule", {{"additionalProperties", refer("sourced")}}},
            {"species", {{"items", refer("sourced_entry")}}}}}};
}

Json catalogue_file_schema(const std::vector<std::string>& in_family) {
  Json rule{{"required", in_family}, {"additionalProperties", refer("sourced")}};
  return {
      {"description", "a file of the catalogue: it gives every default, and names sources"},
      {"$ref", "#/$defs/file"},
      {"required", {"rule", "genera"}},
      {"properties", {{"rule", std::move(rule)}, {"genera", {{"items", refer("sourced_entry")}}}}}};
}

Json value_schemas() {
  Json number = ground_schema();
  Json word = ground_schema();
  for (const auto* key : {"value", "low", "high"}) {
    number[key] = {{"type", "number"}};
  }
  word["value"] = refer("text");
  Json evidence = words_of_choice<Evidence>();
  evidence["description"] = "the ground on which a value stands, best first";
  Json source{{"description", "an id of sources.json"}};
  source["anyOf"] = {refer("text"), Json{{"type", "null"}}};
  Json number_schema = closed_object(std::move(number), {"value", "low", "high", "evidence"});
  number_schema["description"] = "low <= value <= high; four in five cases lie between";
  return {{"text", {{"type", "string"}, {"pattern", R"([^ \t\n\r])"}}},
          {"evidence", std::move(evidence)},
          {"source", std::move(source)},
          {"number", std::move(number_schema)},
          {"word", closed_object(std::move(word), {"value", "evidence"})}};
}

Json entry_schemas() {
  Json species{{"species", text_like(epithet_pattern)}};
  species["synonyms"] = list_of(text_like(species_pattern));
  species["rule"] = refer("rule");
  Json genus{{"genus", text_like(genus_pattern)}};
  genus["accepted_genus"] = text_like(genus_pattern);
  genus["synonyms"] = list_of(text_like(genus_pattern));
  genus["rule"] = refer("rule");
  genus["species"] = list_of(refer("species"));
  return {{"species", closed_object(std::move(species), {"species"})},
          {"genus", closed_object(std::move(genus), {"genus"})}};
}

Json file_schema() {
  Json members{{"schema", {{"const", 1}}}};
  members["family"] = text_like(genus_pattern);
  members["rule"] = refer("rule");
  members["genera"] = list_of(refer("genus"));
  Json file = closed_object(std::move(members), {"schema", "family"});
  file["anyOf"] = {Json{{"required", {"rule"}}}, Json{{"required", {"genera"}}}};
  return file;
}

constexpr std::string_view beyond_a_schema =
    "What a kind of seed does: a grower's own rules, or, by #/$defs/catalogue_file, a file of the "
    "catalogue. A genus or species gives only what differs. What no schema can say, `nightsow "
    "rules "
    "check` sees: low <= value <= high; temperatures, looks, frost and shade in their order; a "
    "cool "
    "starter's night limit and a hot one's warm night, which may be inherited; a cover that fits "
    "the seed; sources that are listed; names that stand twice or lead nowhere; the same key "
    "twice. "
    "It passes over // comments, which JSON does not have.";

constexpr std::string_view only_own_notes_meaning =
    "true: the notes of genus and family are not for this entry";

} // namespace

std::string rule_schema() {
  FieldSchemas fields;
  const Rule any;
  for_each_field(any, fields);
  Json definitions = value_schemas();
  definitions.update(entry_schemas());
  definitions["file"] = file_schema();
  Json properties = fields.properties();
  properties[std::string(only_own_notes_key)] = {{"description", only_own_notes_meaning},
                                                 {"type", "boolean"}};
  definitions["rule"] = closed_object(std::move(properties), {});
  definitions["sourced"] = sourced_schema();
  definitions["sourced_entry"] = sourced_rule();
  definitions["catalogue_file"] = catalogue_file_schema(fields.in_family());

  Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"}};
  schema["title"] = "a nightsow rule file";
  schema["description"] = beyond_a_schema;
  schema["$ref"] = "#/$defs/file";
  schema["$defs"] = std::move(definitions);
  return schema.dump(2) + '\n';
}

} // namespace nightsow::species_rules
