#pragma once

#include <array>
#include <cstddef>
#include <deque>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow {

/// Walks the records of a separated text (RFC 4180, and what people write instead): LF, CRLF, CR or
/// a mix; fields may be quoted, a quote inside is doubled, line breaks inside quotes belong to the
/// field. Blanks are kept. A leading UTF-8 byte order mark is passed over. Blank lines are passed
/// over but counted, so `line()` is the true line of the file.
///
/// Fields are views into the text, or, where quotes had to be undoubled, into the reader; they live
/// until the next call of next().
class CsvReader {
public:
  /// `text` must outlive the reader. `where` names the file in errors.
  CsvReader(std::string_view text, char separator, std::string_view where);

  /// Moves to the next record; false at the end.
  /// Throws InputError on a line over 1 MiB or a quote that is never closed.
  [[nodiscard]] bool next();

  [[nodiscard]] std::span<const std::string_view> fields() const { return fields_; }

  /// The line, from 1, on which the present record begins.
  [[nodiscard]] std::size_t line() const { return line_; }

  /// The column, from 1, in bytes, at which field `index` of the present record begins.
  [[nodiscard]] std::size_t column(std::size_t index) const { return columns_[index]; }

  /// The line behind the present record.
  [[nodiscard]] std::size_t next_line() const { return next_line_; }

  /// What has not been read yet; it begins a line.
  [[nodiscard]] std::string_view rest() const { return text_.substr(position_); }

  /// Passes over so many bytes of the rest, which hold so many lines and end behind the last of
  /// them. For those who read plain lines faster; fields() is void until the next call of next().
  void skip(std::size_t bytes, std::size_t lines) {
    position_ += bytes;
    next_line_ += lines;
  }

private:
  void read_record();
  void read_quoted_field();
  void read_plain_field();
  void end_line();
  [[nodiscard]] std::size_t end_of_field(std::size_t from) const;

  std::string_view text_;
  char separator_;
  std::string_view where_;
  std::array<bool, 256> ends_field_{}; ///< by byte: separator and line ends
  std::size_t position_ = 0;
  std::size_t line_start_ = 0;
  std::size_t line_ = 0;
  std::size_t next_line_ = 1;
  std::vector<std::string_view> fields_;
  std::vector<std::size_t> columns_;
  std::deque<std::string> undoubled_;
};

/// Without blanks (space, tab, no-break space in UTF-8 not included) at both ends.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// The field as a CSV file needs it: quoted when it holds the separator, a quote or a line break.
[[nodiscard]] std::string csv_field(std::string_view text, char separator = ',');

} // namespace nightsow
