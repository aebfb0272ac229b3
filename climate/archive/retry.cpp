#include "climate/archive/retry.hpp"

#include "climate/base/csv.hpp"

#include <date/date.h>

#include <algorithm>
#include <charconv>
#include <functional>
#include <sstream>
#include <string>

namespace nightsow::climate {

namespace {

// common practice, no source
constexpr std::chrono::milliseconds first_wait{500};
constexpr std::chrono::milliseconds longest_back_off{30'000};
constexpr int most_doublings = 6;

} // namespace

std::optional<std::chrono::seconds> read_retry_after(std::string_view value,
                                                     std::chrono::system_clock::time_point now) {
  const std::string_view text = trimmed(value);
  int seconds = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), seconds);
  if (error == std::errc{} && end == text.data() + text.size() && seconds >= 0) {
    return std::chrono::seconds{seconds};
  }
  std::istringstream stream{std::string(text)};
  stream.imbue(std::locale::classic());
  date::sys_seconds instant;
  if (!date::from_stream(stream, "%a, %d %b %Y %H:%M:%S GMT", instant)) {
    return std::nullopt;
  }
  // In seconds: a date of the far future overflows a difference in nanoseconds.
  const auto wait = instant - std::chrono::floor<std::chrono::seconds>(now);
  return std::max(wait, std::chrono::seconds{0});
}

std::chrono::milliseconds back_off(int attempt, std::string_view url) {
  const int doublings = std::clamp(attempt - 1, 0, most_doublings);
  const auto whole = std::min(first_wait * (1 << doublings), longest_back_off);
  const auto half = whole / 2;
  const std::size_t spread = std::hash<std::string>{}(std::string(url) + std::to_string(attempt));
  return half + std::chrono::milliseconds{
                    static_cast<long>(spread % (static_cast<std::size_t>(half.count()) + 1))};
}

} // namespace nightsow::climate
