#include "planner/garden/json_node.hpp"

#include "climate/base/nearest_name.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::planner {

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

// RFC 6901: these two characters mean something in a pointer.
std::string pointer_token(std::string_view key) {
  std::string token;
  for (const char c : key) {
    token += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
  }
  return token;
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

std::vector<JsonNode> JsonNode::members() const {
  if (!value_->is_object()) {
    fail_as("an object in { }");
  }
  std::vector<JsonNode> nodes;
  for (const auto& [key, value] : value_->items()) {
    nodes.push_back(JsonNode(*file_, value, pointer_ + '/' + pointer_token(key), key));
  }
  return nodes;
}

std::optional<JsonNode> JsonNode::member(std::string_view key) const {
  for (JsonNode& node : members()) {
    if (node.name() == key && !node.is_null()) {
      return std::move(node);
    }
  }
  return std::nullopt;
}

void JsonNode::fail(std::string found, std::string expected, std::string remedy) const {
  throw InputError(
      file_->problem_at(pointer_, std::move(found), std::move(expected), std::move(remedy)));
}

void JsonNode::fail_as(std::string expected) const {
  const std::string subject = name_.empty() ? "the file" : '"' + name_ + '"';
  fail(fmt::format("{} is {}", subject, shown(*value_)), std::move(expected), "correct it");
}

std::string did_you_mean(std::string_view typed, std::span<const std::string> names) {
  const auto nearest = nearest_name(typed, names);
  return nearest ? fmt::format("did you mean \"{}\"?", nearest->name) : "correct it";
}

} // namespace nightsow::planner
