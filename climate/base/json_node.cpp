#include "climate/base/json_node.hpp"

#include "climate/base/nearest_name.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t longest_shown = 60;

std::string shown(const Json& value) {
  if (value.is_object()) {
    return "an object";
  }
  if (value.is_array()) {
    return fmt::format("a list of {}", value.size());
  }
  std::string text = value.dump(-1, ' ', false, Json::error_handler_t::replace);
  if (text.size() > longest_shown) {
    text = text.substr(0, longest_shown) + "…";
  }
  return text;
}

} // namespace

JsonNode::JsonNode(const LocatedJson& file) : JsonNode(file, file.value(), "", "") {}

JsonNode::JsonNode(const LocatedJson& file,
                   const Json& value,
                   std::string pointer,
                   std::string name)
    : file_(&file), value_(&value), pointer_(std::move(pointer)), name_(std::move(name)) {}

bool JsonNode::is_null() const {
  return value_->is_null();
}

std::string JsonNode::text() const {
  if (!value_->is_string()) {
    fail_as("a text in quotes");
  }
  return value_->get<std::string>();
}

std::string JsonNode::some_text(std::string_view form) const {
  std::string words = value_->is_string() ? value_->get<std::string>() : "";
  if (words.find_first_not_of(" \t\n\r") == std::string::npos) {
    fail_as(std::string(form));
  }
  return words;
}

std::string JsonNode::one_of(std::span<const std::string_view> words) const {
  std::string word = value_->is_string() ? value_->get<std::string>() : "";
  if (std::find(words.begin(), words.end(), word) == words.end()) {
    fail(fmt::format("\"{}\" is {}", name_, shown(*value_)),
         fmt::format("one of: {}", fmt::join(words, ", ")),
         did_you_mean(word, std::vector<std::string>(words.begin(), words.end())));
  }
  return word;
}

bool JsonNode::yes_or_no() const {
  if (!value_->is_boolean()) {
    fail_as("true or false");
  }
  return value_->get<bool>();
}

double JsonNode::number() const {
  if (!value_->is_number()) {
    fail_as("a number");
  }
  return value_->get<double>();
}

double JsonNode::number(double lowest, double highest) const {
  const double value = value_->is_number() ? value_->get<double>() : std::nan("");
  if (!(value >= lowest && value <= highest)) {
    fail_as(fmt::format("a number from {} to {}", lowest, highest));
  }
  return value;
}

int JsonNode::whole_number(int lowest, int highest) const {
  const double value = value_->is_number() ? value_->get<double>() : std::nan("");
  if (!(value >= lowest && value <= highest) || value != std::floor(value)) {
    fail_as(lowest == highest ? fmt::format("{}", lowest)
                              : fmt::format("a whole number from {} to {}", lowest, highest));
  }
  return static_cast<int>(value);
}

Date JsonNode::date() const {
  const auto day = parse_iso_date(value_->is_string() ? value_->get<std::string>() : "");
  if (!day) {
    fail_as("a date such as \"2026-03-01\"");
  }
  return *day;
}

std::vector<JsonNode> JsonNode::elements() const {
  if (!value_->is_array()) {
    fail_as("a list in [ ]");
  }
  std::vector<JsonNode> nodes;
  for (std::size_t i = 0; i < value_->size(); ++i) {
    nodes.push_back(JsonNode(
        *file_, (*value_)[i], fmt::format("{}/{}", pointer_, i), fmt::format("{}[{}]", name_, i)));
  }
  return nodes;
}

std::vector<JsonNode> JsonNode::members(std::string_view form) const {
  if (!value_->is_object()) {
    fail_as(std::string(form));
  }
  std::vector<JsonNode> nodes;
  for (const auto& [key, value] : value_->items()) {
    nodes.push_back(child(key, value));
  }
  return nodes;
}

std::optional<JsonNode> JsonNode::member(std::string_view key) const {
  auto node = member_or_null(key);
  return node && node->is_null() ? std::nullopt : std::move(node);
}

std::optional<JsonNode> JsonNode::member_or_null(std::string_view key) const {
  if (!value_->is_object()) {
    fail_as("an object in { }");
  }
  const auto found = value_->find(std::string(key));
  return found == value_->end() ? std::nullopt : std::optional{child(key, *found)};
}

JsonNode JsonNode::child(std::string_view key, const Json& value) const {
  return {*file_, value, pointer_ + '/' + pointer_token(key), std::string(key)};
}

Problem JsonNode::problem(std::string found, std::string expected, std::string remedy) const {
  return file_->problem_at(pointer_, std::move(found), std::move(expected), std::move(remedy));
}

void JsonNode::fail(std::string found, std::string expected, std::string remedy) const {
  throw InputError(problem(std::move(found), std::move(expected), std::move(remedy)));
}

void JsonNode::fail_as(std::string expected) const {
  const std::string subject = name_.empty() ? "the file" : '"' + name_ + '"';
  fail(fmt::format("{} is {}", subject, shown(*value_)), std::move(expected), "correct it");
}

} // namespace nightsow
