#include "climate/archive/fetch_file.hpp"

#include "climate/archive/content_check.hpp"
#include "climate/base/file.hpp"
#include "climate/base/problem.hpp"

#include <utility>

namespace nightsow::climate {

namespace fs = std::filesystem;

namespace {

std::optional<Sidecar> sidecar_of(const fs::path& file) {
  const fs::path path = sidecar_path(file);
  return fs::is_regular_file(path) ? read_sidecar(read_whole_file(path, "fetch")) : std::nullopt;
}

// A file and the sidecar that vouches for its bytes, wherever they came from.
std::optional<FetchedFile> vouched_copy(const fs::path& file) {
  auto sidecar = sidecar_of(file);
  if (!sidecar || !fs::is_regular_file(file)) {
    return std::nullopt;
  }
  std::string text = read_whole_file(file, "fetch");
  if (sha256_of(text) != sidecar->sha256) {
    return std::nullopt;
  }
  return FetchedFile{Arrival::kept, *std::move(sidecar), std::move(text), ""};
}

void refuse_to_lose(const fs::path& file) {
  if (fs::exists(file) && !vouched_copy(file)) {
    throw StorageError({Severity::error,
                        file.string(),
                        0,
                        0,
                        "a file of this name is there that was not fetched, or was changed since",
                        "",
                        "give it another name, then fetch again"});
  }
}

void make_folder(const fs::path& folder) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) {
    throw StorageError({Severity::error,
                        folder.string(),
                        0,
                        0,
                        "cannot make this folder: " + error.message(),
                        "",
                        "check its name and the permissions"});
  }
}

// Two addresses that differ at most in the days asked for, which end later each day.
bool is_of_one_place(const std::string& url_a, const std::string& url_b) {
  const auto before_days = [](const std::string& url) { return url.substr(0, url.find("&start")); };
  return before_days(url_a) == before_days(url_b);
}

} // namespace

std::optional<FetchedFile> last_good_copy(const PlannedFetch& plan, const fs::path& folder) {
  auto copy = vouched_copy(folder / plan.file);
  return copy && copy->sidecar.url == plan.url ? copy : std::nullopt;
}

FetchedFile fetch_file(const PlannedFetch& plan,
                       const fs::path& folder,
                       FolderOf owner,
                       const Network& network) {
  const fs::path file = folder / plan.file;
  if (owner == FolderOf::grower) {
    refuse_to_lose(file);
  }
  auto copy = vouched_copy(file);
  const bool same_address = copy && copy->sidecar.url == plan.url;
  HttpRequest request{plan.url, "", ""};
  if (same_address) {
    request.etag = copy->sidecar.etag;
    request.last_modified = copy->sidecar.last_modified;
  }
  HttpResult result = http_get(request, network.limits, network.wait);
  const std::string now = format_instant(network.now);
  switch (result.kind) {
  case HttpResult::Kind::refused:
    throw StorageError(result.problem);
  case HttpResult::Kind::unavailable:
    if (!copy || !is_of_one_place(copy->sidecar.url, plan.url)) {
      throw StorageError(result.problem);
    }
    copy->trouble = to_text(result.problem);
    return *std::move(copy);
  case HttpResult::Kind::unchanged:
    if (!same_address) {
      throw StorageError(
          {Severity::error,
           plan.url,
           0,
           0,
           "the archive says \"unchanged\" (304) though nothing was there to compare",
           "",
           "check the address"});
    }
    copy->arrival = Arrival::unchanged;
    copy->sidecar.checked_at = now;
    write_atomically(sidecar_path(file), to_text(copy->sidecar));
    return *std::move(copy);
  case HttpResult::Kind::fresh:
    break;
  }
  check_content(plan, result.body);
  make_folder(folder);
  const Sidecar sidecar{plan.source,
                        plan.url,
                        plan.licence,
                        now,
                        now,
                        result.etag,
                        result.last_modified,
                        sha256_of(result.body),
                        result.body.size()};
  write_atomically(file, result.body);
  write_atomically(sidecar_path(file), to_text(sidecar));
  return {Arrival::fetched, sidecar, std::move(result.body), ""};
}

} // namespace nightsow::climate
