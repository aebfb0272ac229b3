#include "planner/cli/streams.hpp"

#include "climate/base/problem.hpp"

#include <unistd.h>

#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <system_error>

namespace nightsow::planner {

namespace {

/// Returns 0, or the errno of the write that failed.
int write_whole(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written >= 0) {
      text.remove_prefix(static_cast<std::size_t>(written));
    } else if (errno != EINTR) {
      return errno;
    }
  }
  return 0;
}

std::filesystem::path cache_folder() {
  const auto folder_in = [](const char* name) {
    const char* const value = std::getenv(name);
    return std::filesystem::path(value != nullptr ? value : "");
  };
  // The specification has relative paths ignored.
  if (const auto cache = folder_in("XDG_CACHE_HOME"); cache.is_absolute()) {
    return cache / "nightsow";
  }
  if (const auto home = folder_in("HOME"); home.is_absolute()) {
    return home / ".cache" / "nightsow";
  }
  return std::filesystem::temp_directory_path() / "nightsow";
}

} // namespace

Surroundings look_around() {
  const char* const no_color = std::getenv("NO_COLOR");
  const bool plain = no_color != nullptr && *no_color != '\0';
  return {std::chrono::system_clock::now(), ::isatty(STDOUT_FILENO) == 1 && !plain, cache_folder()};
}

void ignore_broken_pipes() {
  static_cast<void>(std::signal(SIGPIPE, SIG_IGN));
}

std::string read_standard_input() {
  std::string text;
  if (::isatty(STDIN_FILENO) == 1) {
    return text;
  }
  std::array<char, 4096> part{};
  while (true) {
    const ssize_t bytes = ::read(STDIN_FILENO, part.data(), part.size());
    if (bytes == 0) {
      return text;
    }
    if (bytes > 0) {
      text.append(part.data(), static_cast<std::size_t>(bytes));
    } else if (errno != EINTR) {
      throw StorageError(
          {Severity::error,
           "standard input",
           0,
           0,
           "cannot be read: " + std::error_code(errno, std::generic_category()).message(),
           "",
           "check where it comes from"});
    }
  }
}

void write_answer(std::string_view text) {
  const int failure = write_whole(STDOUT_FILENO, text);
  if (failure != 0 && failure != EPIPE) {
    throw StorageError(
        {Severity::error,
         "standard output",
         0,
         0,
         "cannot be written: " + std::error_code(failure, std::generic_category()).message(),
         "",
         "check where the answer is sent to"});
  }
}

void write_notes(std::string_view text) {
  static_cast<void>(write_whole(STDERR_FILENO, text));
}

} // namespace nightsow::planner
