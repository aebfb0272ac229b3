#pragma once

#include "climate/base/problem.hpp"

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <map>
#include <memory>
#include <string>
#include <string_view>

namespace nightsow {

/// A parsed JSON text that can say on which line and column a value stands, so that a fault found
/// later, while its meaning is read, still gets its place.
class LocatedJson {
public:
  /// Parses strictly (RFC 8259), but passes over // and /* */ comments.
  /// Throws InputError, with line and column, on a syntax error, a duplicate key, a depth over 64
  /// and a text that is not UTF-8.
  [[nodiscard]] static LocatedJson parse(std::string_view text, std::string_view where);

  [[nodiscard]] const nlohmann::ordered_json& value() const { return *value_; }

  [[nodiscard]] const std::string& where() const { return where_; }

  /// A problem at the value that a JSON pointer (RFC 6901, "/benches/0/name") names; where that
  /// value is absent, at the nearest parent that is there.
  [[nodiscard]] Problem problem_at(std::string_view pointer,
                                   std::string found,
                                   std::string expected,
                                   std::string remedy,
                                   Severity severity = Severity::error) const;

private:
  struct Place {
    std::size_t line = 0;
    std::size_t column = 0;
  };

  LocatedJson() = default;

  std::string where_;
  std::shared_ptr<const nlohmann::ordered_json> value_;
  std::map<std::string, Place, std::less<>> places_;
};

/// A key as it stands in a JSON pointer: RFC 6901 gives two of its characters a meaning.
[[nodiscard]] std::string pointer_token(std::string_view key);

} // namespace nightsow
