#pragma once

#include "climate/base/problem.hpp"

#include <chrono>
#include <cstddef>
#include <functional>
#include <string>

namespace nightsow::climate {

// The one file that knows HTTP.

/// What to ask for. With an entity tag or a date of change the answer may be "unchanged".
struct HttpRequest {
  std::string url;
  std::string etag;
  std::string last_modified;
};

/// Where patience ends. All figures: common practice, no source.
struct HttpLimits {
  std::chrono::seconds connect{15};
  std::chrono::seconds total{600};  ///< for one attempt
  std::chrono::seconds stalled{30}; ///< so long under `slowest`, and the attempt is given up
  long slowest = 100;               ///< bytes a second
  std::size_t largest = 96U << 20U; ///< bytes, on the wire and unpacked
  int redirects = 5;
  int attempts = 4;                      ///< of which two at most when nobody answers
  std::chrono::seconds longest_wait{60}; ///< a Retry-After beyond it ends the matter
};

struct HttpResult {
  enum class Kind {
    fresh,       ///< 200, the body is whole
    unchanged,   ///< 304
    unavailable, ///< nobody answers, cut off, 429, 5xx: later it may work
    refused,     ///< 404, other statuses, too large, a redirect to where we do not go, TLS
  };

  Kind kind = Kind::unavailable;
  std::string body;          ///< fresh only
  std::string etag;          ///< empty: none was sent
  std::string last_modified; ///< empty: none was sent
  Problem problem;           ///< unavailable and refused only
};

/// Waits; handed in, so that tests need not.
using Wait = std::function<void(std::chrono::milliseconds)>;

/// https to anywhere; http only to this machine itself (localhost, 127.0.0.0/8, ::1).
[[nodiscard]] bool may_be_fetched(const std::string& url);

/// GET, by https alone (http on this machine excepted, redirects included; no redirect leads from
/// the network to this machine's http). Certificates are always verified. What was cut off is
/// continued where it broke off when the server can (Range with If-Range), else begun again.
/// Attempts that may succeed later are repeated after back_off or Retry-After. Throws nothing for
/// what happens on the network.
[[nodiscard]] HttpResult http_get(const HttpRequest& request,
                                  const HttpLimits& limits,
                                  const Wait& wait);

} // namespace nightsow::climate
