#include "climate/base/folder_lock.hpp"

#include "climate/base/problem.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <string>
#include <system_error>
#include <thread>

namespace nightsow {

namespace {

constexpr int tries = 100; // of 50 ms: five seconds (common practice, no source)
constexpr std::chrono::milliseconds between_tries{50};

[[noreturn]] void refuse(const std::filesystem::path& folder,
                         std::string found,
                         std::string remedy) {
  throw StorageError(
      {Severity::error, folder.string(), 0, 0, std::move(found), "", std::move(remedy)});
}

bool locked(int descriptor) {
  for (int i = 0; i < tries; ++i) {
    if (::flock(descriptor, LOCK_EX | LOCK_NB) == 0) {
      return true;
    }
    if (errno != EWOULDBLOCK && errno != EINTR) {
      return false;
    }
    std::this_thread::sleep_for(between_tries);
  }
  return false;
}

} // namespace

FolderLock::FolderLock(const std::filesystem::path& folder)
    : descriptor_(
          ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
  if (descriptor_ < 0) {
    refuse(folder,
           "cannot open: " + std::error_code(errno, std::generic_category()).message(),
           "check the folder and its permissions; nothing was written");
  }
  if (!locked(descriptor_)) {
    ::close(descriptor_);
    refuse(folder,
           "another program has kept the folder locked for 5 s",
           "end it, or wait, and type the command again; nothing was written");
  }
}

FolderLock::~FolderLock() {
  ::close(descriptor_);
}

} // namespace nightsow
