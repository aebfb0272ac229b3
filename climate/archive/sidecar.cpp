#include "climate/archive/sidecar.hpp"

#include "climate/base/date.hpp"
#include "climate/base/problem.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <openssl/evp.h>

#include <algorithm>
#include <array>

namespace nightsow::climate {

namespace {

constexpr std::size_t date_letters = 10; // YYYY-MM-DD

std::string text_at(const nlohmann::json& json, const char* key) {
  const auto found = json.find(key);
  return found != json.end() && found->is_string() ? found->get<std::string>() : "";
}

} // namespace

std::filesystem::path sidecar_path(const std::filesystem::path& file) {
  return file.string() + ".source.json";
}

std::string to_text(const Sidecar& sidecar) {
  const nlohmann::ordered_json json{{"schema", 1},
                                    {"source", sidecar.source},
                                    {"url", sidecar.url},
                                    {"licence", sidecar.licence},
                                    {"fetched_at", sidecar.fetched_at},
                                    {"checked_at", sidecar.checked_at},
                                    {"etag", sidecar.etag},
                                    {"last_modified", sidecar.last_modified},
                                    {"sha256", sidecar.sha256},
                                    {"bytes", sidecar.bytes}};
  // What the archive sends as a tag need not be UTF-8.
  return json.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) + "\n";
}

std::optional<Sidecar> read_sidecar(std::string_view text) {
  const nlohmann::json json = nlohmann::json::parse(text, nullptr, false);
  if (!json.is_object()) {
    return std::nullopt;
  }
  const auto bytes = json.find("bytes");
  Sidecar sidecar{text_at(json, "source"),
                  text_at(json, "url"),
                  text_at(json, "licence"),
                  text_at(json, "fetched_at"),
                  text_at(json, "checked_at"),
                  text_at(json, "etag"),
                  text_at(json, "last_modified"),
                  text_at(json, "sha256"),
                  0};
  if (bytes == json.end() || !bytes->is_number_unsigned() || sidecar.url.empty() ||
      sidecar.sha256.empty()) {
    return std::nullopt;
  }
  sidecar.bytes = bytes->get<std::size_t>();
  return sidecar;
}

std::string sha256_of(std::string_view bytes) {
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned int length = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &length, EVP_sha256(), nullptr) != 1) {
    throw StorageError({Severity::error,
                        "SHA-256",
                        0,
                        0,
                        "this machine's OpenSSL cannot compute it",
                        "",
                        "check how OpenSSL is set up"});
  }
  std::string text;
  for (std::size_t i = 0; i < length; ++i) {
    text += fmt::format("{:02x}", digest.at(i));
  }
  return text;
}

std::string format_instant(std::chrono::system_clock::time_point instant) {
  const auto seconds = std::chrono::floor<std::chrono::seconds>(instant);
  const auto day = date::floor<date::days>(seconds);
  const date::hh_mm_ss<std::chrono::seconds> clock{seconds - day};
  return fmt::format("{}T{:02}:{:02}:{:02}Z",
                     format_iso_date(Date{day.time_since_epoch()}),
                     clock.hours().count(),
                     clock.minutes().count(),
                     clock.seconds().count());
}

std::optional<int> age_in_days(std::string_view instant,
                               std::chrono::system_clock::time_point now) {
  const auto day = parse_iso_date(instant.substr(0, date_letters));
  if (!day) {
    return std::nullopt;
  }
  const auto today = date::floor<date::days>(now);
  return std::max(0, days_between(*day, Date{today.time_since_epoch()}));
}

} // namespace nightsow::climate
