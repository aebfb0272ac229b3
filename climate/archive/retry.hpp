#pragma once

#include <chrono>
#include <optional>
#include <string_view>

namespace nightsow::climate {

/// What a Retry-After header asks for: seconds, or a date (RFC 9110, 10.2.3 and 5.6.7,
/// IMF-fixdate). A date that has passed is no wait at all. Empty when the text is neither.
[[nodiscard]] std::optional<std::chrono::seconds> read_retry_after(
    std::string_view value, std::chrono::system_clock::time_point now);

/// How long to wait after failed attempt number `attempt` (from 1): half a second, doubled each
/// time, of which up to half is taken off again, differently for each address and attempt, so that
/// many askers do not come back at one moment. Never over half a minute.
[[nodiscard]] std::chrono::milliseconds back_off(int attempt, std::string_view url);

} // namespace nightsow::climate
