#pragma once

#include "climate/archive/fetch.hpp"
#include "climate/archive/http.hpp"
#include "climate/archive/sidecar.hpp"

#include <chrono>
#include <filesystem>
#include <string>

namespace nightsow::climate {

/// How a file comes to stand in a folder.
enum class Arrival {
  fetched,   ///< it is new
  unchanged, ///< the archive says that ours is still the newest
  kept,      ///< the archive cannot be reached: the last good copy stays
};

struct FetchedFile {
  Arrival arrival = Arrival::fetched;
  Sidecar sidecar;
  std::string text;    ///< the whole file, as it stands there now
  std::string trouble; ///< kept only: why
};

/// What the network needs; one for all files of a command.
struct Network {
  HttpLimits limits;
  Wait wait;
  std::chrono::system_clock::time_point now;
};

/// Whose a folder is: in the grower's own no file is replaced that was not fetched, or was changed
/// since; in the cache any is.
enum class FolderOf { grower, cache };

/// The copy that is there, when its sidecar and its bytes go together and it came from that
/// address.
[[nodiscard]] std::optional<FetchedFile> last_good_copy(const PlannedFetch& plan,
                                                        const std::filesystem::path& folder);

/// Brings the file into the folder, which is made when it is not there: the file, checked and
/// written at once or not at all, and its sidecar. Throws StorageError when it cannot be had and
/// there is no last good copy, or when a file would be lost; InputError when something else came.
[[nodiscard]] FetchedFile fetch_file(const PlannedFetch& plan,
                                     const std::filesystem::path& folder,
                                     FolderOf owner,
                                     const Network& network);

} // namespace nightsow::climate
