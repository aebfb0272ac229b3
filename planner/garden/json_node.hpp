#pragma once

#include "climate/base/date.hpp"
#include "climate/base/located_json.hpp"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// A value of a JSON file together with its place. Whatever is wrong with it is thrown as
/// InputError with file, line and column. A view: the LocatedJson must outlive it.
class JsonNode {
public:
  explicit JsonNode(const LocatedJson& file);

  /// The key; for an element of a list "sowing_days[1]", counted from 0; empty for the whole file.
  [[nodiscard]] const std::string& name() const { return name_; }

  [[nodiscard]] bool is_null() const;

  [[nodiscard]] std::string text() const;
  /// One of the words, spelled exactly so; a near miss is suggested.
  [[nodiscard]] std::string one_of(std::span<const std::string_view> words) const;
  [[nodiscard]] bool yes_or_no() const;
  /// Bounds included.
  [[nodiscard]] double number(double lowest, double highest) const;
  [[nodiscard]] int whole_number(int lowest, int highest) const;
  [[nodiscard]] Date date() const;

  [[nodiscard]] std::vector<JsonNode> elements() const;
  [[nodiscard]] std::vector<JsonNode> members() const;
  /// Empty when there is no such member or it is null, which means the same.
  [[nodiscard]] std::optional<JsonNode> member(std::string_view key) const;

  [[noreturn]] void fail(std::string found, std::string expected, std::string remedy) const;
  /// "name" is <value>; expected …
  [[noreturn]] void fail_as(std::string expected) const;

private:
  JsonNode(const LocatedJson& file,
           const nlohmann::ordered_json& value,
           std::string pointer,
           std::string name);

  const LocatedJson* file_;
  const nlohmann::ordered_json* value_;
  std::string pointer_;
  std::string name_;
};

/// A remedy for a name that is not known: the nearest of the known ones, when one is near.
[[nodiscard]] std::string did_you_mean(std::string_view typed, std::span<const std::string> names);

} // namespace nightsow::planner
