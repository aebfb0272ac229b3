#pragma once

#include <cstddef>
#include <stdexcept>
#include <string>
#include <vector>

namespace nightsow {

enum class Severity { note, warning, error };

/// Something wrong with what a person gave us, with its place and a way out. `line` and `column`
/// count from 1; 0 means not known. `where` is a file as the person named it, or a field.
struct Problem {
  Severity severity = Severity::error;
  std::string where;
  std::size_t line = 0;
  std::size_t column = 0;
  std::string found;     ///< what stands there
  std::string expected;  ///< what would be right; may be empty
  std::string remedy;    ///< what to do next; may be empty
  std::string pointer{}; ///< in a JSON file: where, as in RFC 6901; may be empty

  bool operator==(const Problem&) const = default;
};

/// "file:12:4: found; expected …; remedy" on one line; parts that are empty are left out.
[[nodiscard]] std::string to_text(const Problem& problem);

/// The base of the three ways in which a command cannot go on; caught once, in main.
class ProblemError : public std::runtime_error {
public:
  explicit ProblemError(Problem problem);

  [[nodiscard]] const Problem& problem() const { return problem_; }

private:
  Problem problem_;
};

/// A file's content is bad, or a file the garden names is not there (exit code 3).
class InputError : public ProblemError {
public:
  using ProblemError::ProblemError;
};

/// A command, option, taxon or date was typed wrongly, or there is no garden here (exit code 2).
class UsageError : public ProblemError {
public:
  using ProblemError::ProblemError;
};

/// Disk, lock, permission or network (exit code 4).
class StorageError : public ProblemError {
public:
  using ProblemError::ProblemError;
};

} // namespace nightsow
