#include "planner/journal/sqlite_failure.hpp"

#include "climate/base/problem.hpp"

#include <SQLiteCpp/Exception.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <string>

namespace nightsow::planner {

namespace {

constexpr int primary_code = 0xff; // of an extended result code

Problem storage(const std::filesystem::path& file, std::string found, std::string remedy) {
  return {Severity::error, file.string(), 0, 0, std::move(found), "", std::move(remedy)};
}

// "CHECK constraint failed: seeds_are_1_or_more" as a sentence.
std::string broken_rule(std::string_view message) {
  const std::size_t colon = message.rfind(": ");
  std::string rule(colon == std::string_view::npos ? message : message.substr(colon + 2));
  std::replace(rule.begin(), rule.end(), '_', ' ');
  return rule;
}

[[noreturn]] void tell(const std::filesystem::path& file, const SQLite::Exception& error) {
  const std::string message = error.what();
  switch (error.getErrorCode() & primary_code) {
  case SQLITE_BUSY:
  case SQLITE_LOCKED:
    throw StorageError(storage(
        file,
        fmt::format("another program has kept the journal locked for {} s", patience_ms / 1000),
        "end it, or wait, and type the command again; nothing was written"));
  case SQLITE_FULL:
    throw StorageError(
        storage(file, "the disk is full", "make room and type it again; nothing was written"));
  case SQLITE_IOERR:
    throw StorageError(storage(file,
                               "cannot read or write: " + message,
                               "check the disk and its free space; nothing was written"));
  case SQLITE_READONLY:
  case SQLITE_PERM:
  case SQLITE_AUTH:
  case SQLITE_CANTOPEN:
    throw StorageError(storage(file,
                               "cannot open or write: " + message,
                               "check the folder and its permissions; nothing was written"));
  case SQLITE_CORRUPT:
  case SQLITE_NOTADB:
    refuse_damaged(file, message);
  case SQLITE_CONSTRAINT:
    throw UsageError({Severity::error,
                      "entry",
                      0,
                      0,
                      "the journal does not take this",
                      broken_rule(message),
                      "correct it; nothing was written"});
  default:
    throw error;
  }
}

} // namespace

void refuse_damaged(const std::filesystem::path& file, std::string_view found) {
  throw InputError({Severity::error,
                    file.string(),
                    0,
                    0,
                    fmt::format("the journal is damaged: {}", found),
                    "a journal as nightsow writes it",
                    "keep a copy of the file as it is; bring back your last copy, or copy what can "
                    "be read: nightsow journal salvage FILE"});
}

void telling_failures(const std::filesystem::path& file, const std::function<void()>& work) {
  try {
    work();
  } catch (const SQLite::Exception& error) {
    tell(file, error);
  }
}

} // namespace nightsow::planner
