#pragma once

#include "climate/base/located_json.hpp"
#include "climate/base/problem.hpp"
#include "species-rules/place.hpp"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::species_rules {

/// One value of a file that is being read. It knows where it stands and which list takes the faults
/// found in it; the readers of this folder go from part to part and never see JSON itself.
class JsonPart {
public:
  /// The whole file. Both must outlive the part and every part taken from it.
  JsonPart(const LocatedJson& file, std::vector<Problem>& faults);

  void fault(std::string found, std::string expected, std::string remedy = {}) const;
  [[nodiscard]] Place place() const;

  /// The key under which it stands; "the file" for the whole of it, the key of the list for an
  /// item.
  [[nodiscard]] std::string name() const;
  [[nodiscard]] bool is_null() const;

  /// True for an object; anything else is a fault, and `form` says what was expected.
  [[nodiscard]] bool is_object(std::string_view form) const;

  /// Every key that is not known is a fault; the nearest known one is suggested. Requires: an
  /// object.
  void allow_keys(const std::vector<std::string>& known) const;

  /// A file of another schema than 1, or of none, is a fault. Requires: an object.
  void check_schema() const;

  /// Keys in the order of the file. Requires: an object.
  [[nodiscard]] std::vector<std::string> keys() const;

  /// Empty when the key is absent; null is a value. Requires: an object.
  [[nodiscard]] std::optional<JsonPart> member(std::string_view key) const;

  /// The same, but absence is a fault, and `form` says what belongs there.
  [[nodiscard]] std::optional<JsonPart> required(std::string_view key, std::string_view form) const;

  /// Items of a list; anything else is a fault and has none.
  [[nodiscard]] std::vector<JsonPart> items() const;

  /// A text that is not blank; anything else is a fault, and `form` says what was expected.
  [[nodiscard]] std::optional<std::string> text(std::string_view form) const;

  [[nodiscard]] std::optional<double> number() const;
  [[nodiscard]] std::optional<int> whole_number() const;

private:
  JsonPart(const JsonPart& parent, std::string pointer, const nlohmann::ordered_json& value);

  void wrong_type(std::string_view expected) const;

  const LocatedJson* file_;
  std::vector<Problem>* faults_;
  std::string pointer_;
  const nlohmann::ordered_json* value_;
};

} // namespace nightsow::species_rules
