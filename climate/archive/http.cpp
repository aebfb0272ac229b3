#include "climate/archive/http.hpp"

#include "climate/archive/retry.hpp"
#include "climate/base/csv.hpp"

#include <curl/curl.h>
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <map>
#include <memory>
#include <optional>
#include <string_view>

namespace nightsow::climate {

namespace {

using Kind = HttpResult::Kind;

constexpr long status_ok = 200;
constexpr long status_partial = 206;
constexpr long status_unchanged = 304;
constexpr long status_not_found = 404;
constexpr long status_bad_range = 416;
constexpr long status_too_many = 429;
constexpr long status_server_fault = 500;
constexpr std::size_t error_page_bytes = 65536; // of a page that nobody reads

struct Address {
  std::string scheme;
  std::string host;
};

std::optional<Address> address_of(const std::string& url) {
  const std::unique_ptr<CURLU, decltype(&curl_url_cleanup)> parts{curl_url(), &curl_url_cleanup};
  if (!parts || curl_url_set(parts.get(), CURLUPART_URL, url.c_str(), 0) != CURLUE_OK) {
    return std::nullopt;
  }
  const auto part = [&](CURLUPart which) {
    char* text = nullptr;
    std::string copy;
    if (curl_url_get(parts.get(), which, &text, 0) == CURLUE_OK) {
      copy = text;
    }
    curl_free(text);
    return copy;
  };
  return Address{part(CURLUPART_SCHEME), part(CURLUPART_HOST)};
}

bool is_loopback(const std::string& host) {
  const bool numbers = host.find_first_not_of("0123456789.") == std::string::npos;
  return host == "localhost" || host == "[::1]" || (numbers && host.starts_with("127."));
}

bool is_loopback_http(const std::string& url) {
  const auto address = address_of(url);
  return address && address->scheme == "http" && is_loopback(address->host);
}

// What came so far of a body that broke off, and by what its continuation is recognised.
struct Partial {
  std::string body;
  std::string validator; ///< for If-Range; empty: it cannot be continued
};

// One request on the wire.
struct Transfer {
  CURL* handle = nullptr;
  std::string* body = nullptr;
  std::size_t largest = 0;
  std::size_t resumed_from = 0;
  std::size_t unread = 0;
  bool begun = false;
  bool too_large = false;
  bool wrong_range = false;
  long status = 0;
  std::map<std::string, std::string> headers; ///< names in lower case

  [[nodiscard]] std::string header(const std::string& name) const {
    const auto found = headers.find(name);
    return found == headers.end() ? "" : found->second;
  }
};

std::size_t take_header(char* data, std::size_t size, std::size_t count, void* user) {
  auto& transfer = *static_cast<Transfer*>(user);
  const std::string_view line{data, size * count};
  const std::size_t colon = line.find(':');
  if (line.starts_with("HTTP/")) {
    transfer.headers.clear();
  } else if (colon != std::string_view::npos) {
    std::string name{line.substr(0, colon)};
    std::transform(name.begin(), name.end(), name.begin(), [](unsigned char letter) {
      return static_cast<char>(std::tolower(letter));
    });
    std::string_view value = line.substr(colon + 1);
    value = value.substr(0, value.find_last_not_of("\r\n") + 1);
    transfer.headers[name] = std::string(trimmed(value));
  }
  return size * count;
}

void begin_body(Transfer& transfer) {
  transfer.begun = true;
  curl_easy_getinfo(transfer.handle, CURLINFO_RESPONSE_CODE, &transfer.status);
  if (transfer.status == status_ok) {
    transfer.body->clear(); // also where a Range was asked for and ignored
  } else if (transfer.status == status_partial) {
    transfer.wrong_range = transfer.resumed_from == 0 ||
                           !transfer.header("content-range")
                                .starts_with(fmt::format("bytes {}-", transfer.resumed_from));
  }
}

// Returning less than came makes libcurl break off.
std::size_t take_body(char* data, std::size_t size, std::size_t count, void* user) {
  auto& transfer = *static_cast<Transfer*>(user);
  const std::size_t bytes = size * count;
  if (!transfer.begun) {
    begin_body(transfer);
  }
  if (transfer.status != status_ok && transfer.status != status_partial) {
    transfer.unread += bytes;
    return transfer.unread > error_page_bytes ? 0 : bytes;
  }
  transfer.too_large = transfer.body->size() + bytes > transfer.largest;
  if (transfer.wrong_range || transfer.too_large) {
    return 0;
  }
  transfer.body->append(data, bytes);
  return bytes;
}

class HeaderList {
public:
  HeaderList() = default;
  HeaderList(const HeaderList&) = delete;
  HeaderList& operator=(const HeaderList&) = delete;
  HeaderList(HeaderList&&) = delete;
  HeaderList& operator=(HeaderList&&) = delete;

  ~HeaderList() { curl_slist_free_all(list_); }

  void add(const std::string& line) {
    if (curl_slist* longer = curl_slist_append(list_, line.c_str())) {
      list_ = longer;
    }
  }

  [[nodiscard]] curl_slist* get() const { return list_; }

private:
  curl_slist* list_ = nullptr;
};

void set_limits(CURL* handle, const HttpLimits& limits) {
  const long connect = limits.connect.count();
  const long total = limits.total.count();
  const long stalled = limits.stalled.count();
  curl_easy_setopt(handle, CURLOPT_CONNECTTIMEOUT, connect);
  curl_easy_setopt(handle, CURLOPT_TIMEOUT, total);
  curl_easy_setopt(handle, CURLOPT_LOW_SPEED_LIMIT, limits.slowest);
  curl_easy_setopt(handle, CURLOPT_LOW_SPEED_TIME, stalled);
  curl_easy_setopt(handle, CURLOPT_MAXFILESIZE_LARGE, static_cast<curl_off_t>(limits.largest));
  curl_easy_setopt(handle, CURLOPT_FOLLOWLOCATION, 0L); // each address is looked at by ourselves
  curl_easy_setopt(handle, CURLOPT_PROTOCOLS_STR, "http,https");
  curl_easy_setopt(handle, CURLOPT_SSL_VERIFYPEER, 1L);
  curl_easy_setopt(handle, CURLOPT_SSL_VERIFYHOST, 2L);
  curl_easy_setopt(handle, CURLOPT_NOSIGNAL, 1L);
  curl_easy_setopt(handle, CURLOPT_USERAGENT, "nightsow");
}

void set_conditions(CURL* handle,
                    const HttpRequest& request,
                    const Partial& partial,
                    HeaderList& headers) {
  if (!partial.body.empty()) {
    // Bytes of a packed answer cannot be continued unpacked: asked for plain.
    curl_easy_setopt(handle, CURLOPT_RANGE, fmt::format("{}-", partial.body.size()).c_str());
    headers.add("If-Range: " + partial.validator);
  } else {
    curl_easy_setopt(handle, CURLOPT_ACCEPT_ENCODING, "gzip");
    if (!request.etag.empty()) {
      headers.add("If-None-Match: " + request.etag);
    }
    if (!request.last_modified.empty()) {
      headers.add("If-Modified-Since: " + request.last_modified);
    }
  }
  curl_easy_setopt(handle, CURLOPT_HTTPHEADER, headers.get());
}

struct Attempt {
  HttpResult result;
  int attempts = 1; ///< so many in all, before it is given up
  std::optional<std::chrono::seconds> asked_wait;
};

Attempt failed(Kind kind, const std::string& url, std::string found, std::string remedy) {
  Attempt attempt;
  attempt.result.kind = kind;
  attempt.result.problem = {Severity::error, url, 0, 0, std::move(found), "", std::move(remedy)};
  return attempt;
}

Attempt failed_by_status(const std::string& url,
                         const Transfer& transfer,
                         const HttpLimits& limits) {
  if (transfer.status == status_not_found) {
    return failed(Kind::refused,
                  url,
                  "the archive has no such file (404)",
                  "check the station's number; --dry-run shows the addresses");
  }
  if (transfer.status == status_too_many || transfer.status >= status_server_fault) {
    Attempt attempt = failed(Kind::unavailable,
                             url,
                             transfer.status == status_too_many
                                 ? "the archive says that too much is asked of it (429)"
                                 : fmt::format("the archive has a fault ({})", transfer.status),
                             "try again later");
    attempt.attempts = limits.attempts;
    attempt.asked_wait =
        read_retry_after(transfer.header("retry-after"), std::chrono::system_clock::now());
    return attempt;
  }
  return failed(Kind::refused,
                url,
                fmt::format("the archive refuses to answer (status {})", transfer.status),
                "check the options; --dry-run shows the addresses");
}

bool is_nobody_there(CURLcode code) {
  return code == CURLE_COULDNT_CONNECT || code == CURLE_COULDNT_RESOLVE_HOST ||
         code == CURLE_COULDNT_RESOLVE_PROXY || code == CURLE_OPERATION_TIMEDOUT;
}

bool may_pass(CURLcode code) {
  return is_nobody_there(code) || code == CURLE_PARTIAL_FILE || code == CURLE_RECV_ERROR ||
         code == CURLE_SEND_ERROR || code == CURLE_GOT_NOTHING || code == CURLE_HTTP2 ||
         code == CURLE_HTTP2_STREAM || code == CURLE_SSL_CONNECT_ERROR;
}

Attempt failed_on_the_way(const std::string& url, CURLcode code, const HttpLimits& limits) {
  const std::string why = curl_easy_strerror(code);
  if (!may_pass(code)) {
    return failed(Kind::refused, url, "cannot be fetched: " + why, "check the address");
  }
  Attempt attempt = failed(
      Kind::unavailable, url, "cannot be fetched: " + why, "check the network, or try again later");
  attempt.attempts = is_nobody_there(code) ? std::min(limits.attempts, 2) : limits.attempts;
  return attempt;
}

Attempt failed_as_too_large(const std::string& url, const HttpLimits& limits) {
  return failed(Kind::refused,
                url,
                fmt::format("the answer is over {} MiB", limits.largest >> 20U),
                "this is not what an archive of readings sends; check the address");
}

// Keeps what came when it can be continued.
void keep_for_resuming(Partial& partial, const Transfer& transfer) {
  if (transfer.status == 0) {
    return; // nobody answered: what an earlier attempt brought is as good as before
  }
  const std::string etag = transfer.header("etag");
  partial.validator =
      !etag.empty() && !etag.starts_with("W/") ? etag : transfer.header("last-modified");
  const bool body_came = transfer.status == status_ok || transfer.status == status_partial;
  if (!body_came || partial.validator.empty() || transfer.wrong_range ||
      !transfer.header("content-encoding").empty()) {
    partial = {};
  }
}

Attempt judge(const std::string& url,
              CURLcode code,
              const Transfer& transfer,
              const HttpLimits& limits,
              Partial& partial) {
  if (transfer.too_large || code == CURLE_FILESIZE_EXCEEDED) {
    return failed_as_too_large(url, limits);
  }
  if (transfer.wrong_range || transfer.status == status_bad_range) {
    partial = {};
    Attempt attempt = failed(
        Kind::unavailable, url, "the archive sent another part than was asked for", "try again");
    attempt.attempts = limits.attempts;
    return attempt;
  }
  if (transfer.status == status_unchanged) {
    Attempt attempt;
    attempt.result.kind = Kind::unchanged;
    return attempt;
  }
  if (transfer.status != 0 && transfer.status != status_ok && transfer.status != status_partial) {
    return failed_by_status(url, transfer, limits);
  }
  if (code != CURLE_OK) {
    keep_for_resuming(partial, transfer);
    return failed_on_the_way(url, code, limits);
  }
  Attempt attempt;
  attempt.result = {Kind::fresh,
                    std::move(partial.body),
                    transfer.header("etag"),
                    transfer.header("last-modified"),
                    {}};
  return attempt;
}

// One request; a redirect's target is left in `next`.
Attempt ask_once(const HttpRequest& request,
                 const std::string& url,
                 const HttpLimits& limits,
                 Partial& partial,
                 std::string& next) {
  const std::unique_ptr<CURL, decltype(&curl_easy_cleanup)> handle{curl_easy_init(),
                                                                   &curl_easy_cleanup};
  Transfer transfer;
  transfer.handle = handle.get();
  transfer.body = &partial.body;
  transfer.largest = limits.largest;
  transfer.resumed_from = partial.body.size();
  HeaderList headers;
  set_limits(handle.get(), limits);
  set_conditions(handle.get(), request, partial, headers);
  curl_easy_setopt(handle.get(), CURLOPT_URL, url.c_str());
  curl_easy_setopt(handle.get(), CURLOPT_HEADERFUNCTION, &take_header);
  curl_easy_setopt(handle.get(), CURLOPT_HEADERDATA, &transfer);
  curl_easy_setopt(handle.get(), CURLOPT_WRITEFUNCTION, &take_body);
  curl_easy_setopt(handle.get(), CURLOPT_WRITEDATA, &transfer);
  const CURLcode code = curl_easy_perform(handle.get());
  if (!transfer.begun) {
    begin_body(transfer); // an empty one
  }
  char* target = nullptr;
  curl_easy_getinfo(handle.get(), CURLINFO_REDIRECT_URL, &target);
  if (target != nullptr) {
    next = target;
    return {};
  }
  return judge(url, code, transfer, limits, partial);
}

Attempt ask(const HttpRequest& request, const HttpLimits& limits, Partial& partial) {
  const bool from_this_machine = is_loopback_http(request.url);
  std::string url = request.url;
  for (int redirects = 0; redirects <= limits.redirects; ++redirects) {
    if (!may_be_fetched(url) || (is_loopback_http(url) && !from_this_machine)) {
      return failed(Kind::refused,
                    url,
                    redirects == 0 ? "this address is not fetched"
                                   : "the archive sends us on to an address that is not fetched",
                    "only https is used, so that nobody on the way can change the readings");
    }
    std::string next;
    Attempt attempt = ask_once(request, url, limits, partial, next);
    if (next.empty()) {
      return attempt;
    }
    url = next;
  }
  return failed(Kind::refused,
                request.url,
                fmt::format("the archive sends us on more than {} times", limits.redirects),
                "check the address");
}

} // namespace

bool may_be_fetched(const std::string& url) {
  const auto address = address_of(url);
  return address && (address->scheme == "https" || is_loopback_http(url));
}

HttpResult http_get(const HttpRequest& request, const HttpLimits& limits, const Wait& wait) {
  static const CURLcode started = curl_global_init(CURL_GLOBAL_DEFAULT);
  if (started != CURLE_OK) {
    return failed(Kind::unavailable, request.url, "the network library does not start", "").result;
  }
  Partial partial;
  for (int number = 1;; ++number) {
    Attempt attempt = ask(request, limits, partial);
    if (attempt.result.kind != Kind::unavailable || number >= attempt.attempts) {
      return std::move(attempt.result);
    }
    if (attempt.asked_wait && *attempt.asked_wait > limits.longest_wait) {
      attempt.result.problem.remedy =
          fmt::format("it asks us to wait {} seconds; try again then", attempt.asked_wait->count());
      return std::move(attempt.result);
    }
    const auto own = back_off(number, request.url);
    wait(attempt.asked_wait ? std::max<std::chrono::milliseconds>(*attempt.asked_wait, own) : own);
  }
}

} // namespace nightsow::climate
