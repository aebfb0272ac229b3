#include "climate/base/file_lock.hpp"

#include "climate/base/problem.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <string>
#include <system_error>
#include <thread>

namespace nightsow {

namespace {

constexpr std::chrono::milliseconds between_tries{50};
constexpr int most_tries = 60;

[[noreturn]] void refuse(const std::filesystem::path& path, std::string found, std::string remedy) {
  throw StorageError(
      {Severity::error, path.string(), 0, 0, std::move(found), "", std::move(remedy)});
}

} // namespace

FileLock::FileLock(const std::filesystem::path& path)
    : descriptor_(::open(
          path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, S_IRUSR | S_IWUSR | S_IRGRP | S_IROTH)) {
  if (descriptor_ < 0) {
    refuse(path,
           "cannot make the lock file: " +
               std::error_code(errno, std::generic_category()).message(),
           "check the folder and its permissions");
  }
  for (int tries = 0; ::flock(descriptor_, LOCK_EX | LOCK_NB) != 0; ++tries) {
    const int reason = errno;
    if ((reason != EWOULDBLOCK && reason != EINTR) || tries == most_tries) {
      ::close(descriptor_);
      refuse(path,
             reason == EWOULDBLOCK ? "another run is writing here"
                                   : "cannot lock the file: " +
                                         std::error_code(reason, std::generic_category()).message(),
             "try again when it has ended");
    }
    std::this_thread::sleep_for(between_tries);
  }
}

FileLock::~FileLock() {
  ::close(descriptor_);
}

} // namespace nightsow
