#pragma once

#include "climate/base/date.hpp"
#include "climate/base/located_json.hpp"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

namespace nightsow {

/// A value of a JSON file together with its place. Whatever is wrong with it is thrown as
/// InputError with file, line, column and pointer; a reader that wants all faults of a file, and
/// not the first alone, reads each part through read_or_note. A view: the LocatedJson must outlive
/// it.
class JsonNode {
public:
  explicit JsonNode(const LocatedJson& file);

  /// The key; for an element of a list "sowing_days[1]", counted from 0; empty for the whole file.
  [[nodiscard]] const std::string& name() const { return name_; }

  [[nodiscard]] bool is_null() const;

  [[nodiscard]] std::string text() const;
  /// A text that is not blank; `form` says what belongs there.
  [[nodiscard]] std::string some_text(std::string_view form = "a text that is not empty") const;
  /// One of the words, spelled exactly so; a near miss is suggested.
  [[nodiscard]] std::string one_of(std::span<const std::string_view> words) const;
  [[nodiscard]] bool yes_or_no() const;
  [[nodiscard]] double number() const;
  /// Bounds included.
  [[nodiscard]] double number(double lowest, double highest) const;
  [[nodiscard]] int whole_number(int lowest, int highest) const;
  [[nodiscard]] Date date() const;

  [[nodiscard]] std::vector<JsonNode> elements() const;
  /// In the order of the file; `form` says what was expected where this is no object.
  [[nodiscard]] std::vector<JsonNode> members(std::string_view form = "an object in { }") const;
  /// Empty when there is no such member or it is null, which means the same.
  [[nodiscard]] std::optional<JsonNode> member(std::string_view key) const;
  /// Empty only when there is no such member: for files in which null says something, or is a
  /// fault.
  [[nodiscard]] std::optional<JsonNode> member_or_null(std::string_view key) const;

  /// The problem that fail() throws.
  [[nodiscard]] Problem problem(std::string found,
                                std::string expected,
                                std::string remedy = {}) const;
  [[noreturn]] void fail(std::string found, std::string expected, std::string remedy) const;
  /// "name" is <value>; expected …
  [[noreturn]] void fail_as(std::string expected) const;

private:
  JsonNode(const LocatedJson& file,
           const nlohmann::ordered_json& value,
           std::string pointer,
           std::string name);

  [[nodiscard]] JsonNode child(std::string_view key, const nlohmann::ordered_json& value) const;

  const LocatedJson* file_;
  const nlohmann::ordered_json* value_;
  std::string pointer_;
  std::string name_;
};

/// What `read()` gives. What it throws as InputError is added to `faults`, and nothing is given.
template <class Read>
[[nodiscard]] auto read_or_note(std::vector<Problem>& faults, Read&& read)
    -> std::optional<std::invoke_result_t<Read>> {
  try {
    return std::forward<Read>(read)();
  } catch (const InputError& error) {
    faults.push_back(error.problem());
    return std::nullopt;
  }
}

} // namespace nightsow
