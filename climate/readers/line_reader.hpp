#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// Walks the lines of a text: LF, CRLF, CR or a mix of them, the last line ended or not. A leading
/// UTF-8 byte order mark is passed over.
class LineReader {
public:
  /// `text` must outlive the reader and the lines.
  explicit LineReader(std::string_view text);

  /// Moves to the next line, blank ones included; false at the end.
  [[nodiscard]] bool next();

  /// The present line without its line end.
  [[nodiscard]] std::string_view line() const { return line_; }

  /// Its number, from 1.
  [[nodiscard]] std::size_t number() const { return number_; }

private:
  std::string_view text_;
  std::string_view line_;
  std::size_t position_ = 0;
  std::size_t line_feed_ = 0;
  std::size_t number_ = 0;
};

/// The beginning of a file: what a format sees when it is asked whether the file is its own; and
/// which of its stations is wanted.
struct Opening {
  std::string_view text;               ///< the whole text
  std::vector<std::string_view> lines; ///< the first `opening_lines` of it, blank ones included
  std::string_view station = {};       ///< id or name of the one wanted; empty: the only one
};

inline constexpr std::size_t opening_lines = 100;

/// `text` must outlive the opening.
[[nodiscard]] Opening opening_of(std::string_view text);

} // namespace nightsow::climate
