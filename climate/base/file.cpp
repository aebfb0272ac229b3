#include "climate/base/file.hpp"

#include "climate/base/much_memory.hpp"
#include "climate/base/problem.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <system_error>

namespace nightsow {

namespace {

constexpr std::uintmax_t largest_file = std::uintmax_t{1} << 30U; // 1 GiB

// A descriptor that closes itself; write_atomically also needs close's own verdict.
class Descriptor {
public:
  explicit Descriptor(int number) : number_(number) {}

  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  Descriptor(Descriptor&&) = delete;
  Descriptor& operator=(Descriptor&&) = delete;

  ~Descriptor() {
    if (number_ >= 0) {
      ::close(number_);
    }
  }

  [[nodiscard]] int number() const { return number_; }

private:
  int number_;
};

[[noreturn]] void storage_failure(const std::filesystem::path& path, std::string_view doing) {
  throw StorageError({Severity::error,
                      path.string(),
                      0,
                      0,
                      "cannot " + std::string(doing) + ": " +
                          std::error_code(errno, std::generic_category()).message(),
                      "",
                      "check the folder, its permissions and the free space"});
}

void write_all(int descriptor, std::string_view content, const std::filesystem::path& path) {
  while (!content.empty()) {
    const ssize_t written = ::write(descriptor, content.data(), content.size());
    if (written < 0) {
      if (errno == EINTR) {
        continue;
      }
      storage_failure(path, "write");
    }
    content.remove_prefix(static_cast<std::size_t>(written));
  }
}

std::filesystem::path folder_of(const std::filesystem::path& path) {
  return path.has_parent_path() ? path.parent_path() : std::filesystem::path(".");
}

} // namespace

std::string read_whole_file(const std::filesystem::path& path, std::string_view named_by) {
  const std::string name = path.string();
  const Descriptor file{::open(path.c_str(), O_RDONLY | O_CLOEXEC)};
  if (file.number() < 0) {
    if (errno == ENOENT || errno == ENOTDIR) {
      throw InputError({Severity::error,
                        name,
                        0,
                        0,
                        "there is no such file",
                        "the file that " + std::string(named_by) + " names",
                        "correct the name, or put the file there"});
    }
    storage_failure(path, "open");
  }

  struct stat status {};

  if (::fstat(file.number(), &status) != 0) {
    storage_failure(path, "examine");
  }
  if (!S_ISREG(status.st_mode)) {
    throw InputError({Severity::error,
                      name,
                      0,
                      0,
                      "this is not a plain file",
                      "a file",
                      "name the file itself"});
  }
  if (static_cast<std::uintmax_t>(status.st_size) > largest_file) {
    throw InputError({Severity::error,
                      name,
                      0,
                      0,
                      "the file is over 1 GiB",
                      "a smaller file",
                      "cut it to the station and years you need"});
  }
  std::string content;
  const auto size = static_cast<std::size_t>(status.st_size);
  content.reserve(size);
  expect_much(content.data(), content.capacity());
  // A string cannot grow but by zeros. Bit by bit, those are still in the processor's cache when
  // the file's bytes come to stand there, which spares the memory one way of the whole file.
  constexpr std::size_t bytes_at_once = 1U << 18U;
  while (content.size() < size) {
    const std::size_t have = content.size();
    content.resize(std::min(have + bytes_at_once, size));
    const ssize_t got = ::read(file.number(), content.data() + have, content.size() - have);
    if (got < 0 && errno != EINTR) {
      storage_failure(path, "read");
    }
    content.resize(have + (got > 0 ? static_cast<std::size_t>(got) : 0));
    if (got == 0) {
      break;
    }
  }
  return content;
}

void write_atomically(const std::filesystem::path& path, std::string_view content) {
  std::string temporary = path.string() + ".XXXXXX";
  {
    const Descriptor file{::mkstemp(temporary.data())};
    if (file.number() < 0) {
      storage_failure(path, "create a file beside it");
    }
    try {
      write_all(file.number(), content, path);
      if (::fchmod(file.number(), S_IRUSR | S_IWUSR | S_IRGRP | S_IROTH) != 0 ||
          ::fsync(file.number()) != 0) {
        storage_failure(path, "finish writing");
      }
    } catch (...) {
      ::unlink(temporary.c_str());
      throw;
    }
  }
  if (::rename(temporary.c_str(), path.c_str()) != 0) {
    const int reason = errno;
    ::unlink(temporary.c_str());
    errno = reason;
    storage_failure(path, "replace");
  }
  const Descriptor folder{::open(folder_of(path).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)};
  if (folder.number() >= 0) {
    ::fsync(folder.number());
  }
}

} // namespace nightsow
