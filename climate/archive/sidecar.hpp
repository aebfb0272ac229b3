#pragma once

#include <chrono>
#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace nightsow::climate {

/// Where a fetched file came from; kept beside it as <file>.source.json.
struct Sidecar {
  std::string source;     ///< the archive, for people
  std::string url;        ///< as asked
  std::string licence;    ///< in plain words, with the attribution wanted
  std::string fetched_at; ///< 2026-03-01T06:00:00Z: when these bytes came
  std::string checked_at; ///< when the archive last said that they are still the newest
  std::string etag;
  std::string last_modified;
  std::string sha256; ///< of the bytes, in lower-case hexadecimal
  std::size_t bytes = 0;

  bool operator==(const Sidecar&) const = default;
};

[[nodiscard]] std::filesystem::path sidecar_path(const std::filesystem::path& file);

/// JSON, with line end.
[[nodiscard]] std::string to_text(const Sidecar& sidecar);

/// Empty when the text is no sidecar of ours.
[[nodiscard]] std::optional<Sidecar> read_sidecar(std::string_view text);

/// FIPS 180-4, by the machine's OpenSSL. Throws StorageError when that cannot compute it.
[[nodiscard]] std::string sha256_of(std::string_view bytes);

/// RFC 3339 in UTC, to the second.
[[nodiscard]] std::string format_instant(std::chrono::system_clock::time_point instant);

/// Whole days from an instant so written to `now`, not under 0. Empty when the text is none.
[[nodiscard]] std::optional<int> age_in_days(std::string_view instant,
                                             std::chrono::system_clock::time_point now);

} // namespace nightsow::climate
