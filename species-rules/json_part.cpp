#include "species-rules/json_part.hpp"

#include "climate/base/nearest_name.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <limits>
#include <utility>

namespace nightsow::species_rules {

namespace {

using Json = nlohmann::ordered_json;

// As RFC 6901 wants it: a key may hold the characters that part a pointer.
std::string pointer_to(std::string_view parent, std::string_view key) {
  std::string pointer{parent};
  pointer += '/';
  for (const char c : key) {
    switch (c) {
    case '~':
      pointer += "~0";
      break;
    case '/':
      pointer += "~1";
      break;
    default:
      pointer += c;
    }
  }
  return pointer;
}

bool is_index(std::string_view token) {
  return !token.empty() && token.find_first_not_of("0123456789") == std::string_view::npos;
}

bool is_blank(std::string_view text) {
  return text.find_first_not_of(" \t\n\r") == std::string_view::npos;
}

std::string_view type_in_words(const Json& value) {
  if (value.is_null()) {
    return "null";
  }
  if (value.is_boolean()) {
    return "true or false";
  }
  if (value.is_number()) {
    return "a number";
  }
  if (value.is_string()) {
    return "a text";
  }
  return value.is_array() ? "a list" : "an object";
}

} // namespace

JsonPart::JsonPart(const LocatedJson& file, std::vector<Problem>& faults)
    : file_(&file), faults_(&faults), value_(&file.value()) {}

JsonPart::JsonPart(const JsonPart& parent, std::string pointer, const Json& value)
    : file_(parent.file_), faults_(parent.faults_), pointer_(std::move(pointer)), value_(&value) {}

void JsonPart::fault(std::string found, std::string expected, std::string remedy) const {
  faults_->push_back(
      file_->problem_at(pointer_, std::move(found), std::move(expected), std::move(remedy)));
}

Place JsonPart::place() const {
  Problem here = file_->problem_at(pointer_, {}, {}, {});
  return {std::move(here.where), here.line, here.column, pointer_};
}

std::string JsonPart::name() const {
  std::string_view rest = pointer_;
  while (!rest.empty()) {
    const std::size_t slash = rest.rfind('/');
    const std::string_view token = rest.substr(slash + 1);
    if (!is_index(token)) {
      return std::string{token};
    }
    rest = rest.substr(0, slash);
  }
  return "the file";
}

bool JsonPart::is_null() const {
  return value_->is_null();
}

bool JsonPart::is_object(std::string_view form) const {
  if (!value_->is_object()) {
    wrong_type(form);
    return false;
  }
  return true;
}

void JsonPart::allow_keys(const std::vector<std::string>& known) const {
  for (const auto& [key, value] : value_->items()) {
    if (std::ranges::find(known, key) != known.end()) {
      continue;
    }
    const auto nearest = nearest_name(key, known);
    const JsonPart unknown{*this, pointer_to(pointer_, key), value};
    unknown.fault(fmt::format("unknown key \"{}\"", key),
                  nearest ? fmt::format("\"{}\" perhaps", nearest->name)
                          : fmt::format("one of {}", fmt::join(known, ", ")));
  }
}

void JsonPart::check_schema() const {
  const auto schema = required("schema", "\"schema\": 1");
  const auto number = schema ? schema->whole_number() : std::nullopt;
  if (number && *number != 1) {
    schema->fault(fmt::format("schema {}", *number), "schema 1");
  }
}

std::vector<std::string> JsonPart::keys() const {
  std::vector<std::string> keys;
  for (const auto& [key, value] : value_->items()) {
    keys.push_back(key);
  }
  return keys;
}

std::optional<JsonPart> JsonPart::member(std::string_view key) const {
  const auto found = value_->find(std::string{key});
  if (found == value_->end()) {
    return std::nullopt;
  }
  return JsonPart{*this, pointer_to(pointer_, key), *found};
}

std::optional<JsonPart> JsonPart::required(std::string_view key, std::string_view form) const {
  auto part = member(key);
  if (!part) {
    fault(fmt::format("{} has no \"{}\"", name(), key), std::string{form});
  }
  return part;
}

std::vector<JsonPart> JsonPart::items() const {
  std::vector<JsonPart> items;
  if (!value_->is_array()) {
    wrong_type("a list");
    return items;
  }
  for (std::size_t i = 0; i < value_->size(); ++i) {
    items.push_back(JsonPart{*this, pointer_to(pointer_, std::to_string(i)), (*value_)[i]});
  }
  return items;
}

std::optional<std::string> JsonPart::text(std::string_view form) const {
  if (!value_->is_string()) {
    wrong_type(form);
    return std::nullopt;
  }
  auto text = value_->get<std::string>();
  if (is_blank(text)) {
    fault(fmt::format("{} is an empty text", name()), std::string{form});
    return std::nullopt;
  }
  return text;
}

std::optional<double> JsonPart::number() const {
  if (!value_->is_number()) {
    wrong_type("a number");
    return std::nullopt;
  }
  return value_->get<double>();
}

std::optional<int> JsonPart::whole_number() const {
  const auto figure = number();
  if (!figure) {
    return std::nullopt;
  }
  const bool fits =
      *figure >= std::numeric_limits<int>::min() && *figure <= std::numeric_limits<int>::max();
  if (!fits || !value_->is_number_integer()) {
    fault(fmt::format("{} {}", name(), *figure), "a whole number");
    return std::nullopt;
  }
  return value_->get<int>();
}

void JsonPart::wrong_type(std::string_view expected) const {
  fault(fmt::format("{} is {}", name(), type_in_words(*value_)), std::string{expected});
}

} // namespace nightsow::species_rules
