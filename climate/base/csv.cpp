#include "climate/base/csv.hpp"

#include "climate/base/problem.hpp"

#include <algorithm>

namespace nightsow {

namespace {

constexpr std::size_t longest_line = 1U << 20U; // 1 MiB

} // namespace

CsvReader::CsvReader(std::string_view text, char separator, std::string_view where)
    : text_(text), separator_(separator), where_(where) {
  for (const char end : {separator, '\n', '\r'}) {
    ends_field_[static_cast<unsigned char>(end)] = true;
  }
  if (text_.starts_with("\xEF\xBB\xBF")) {
    position_ = 3;
  }
}

bool CsvReader::next() {
  while (position_ < text_.size() && (text_[position_] == '\n' || text_[position_] == '\r')) {
    end_line();
  }
  if (position_ >= text_.size()) {
    return false;
  }
  read_record();
  return true;
}

void CsvReader::read_record() {
  fields_.clear();
  columns_.clear();
  if (!undoubled_.empty()) {
    undoubled_.clear();
  }
  line_ = next_line_;
  line_start_ = position_;
  while (true) {
    columns_.push_back(position_ - line_start_ + 1);
    if (position_ < text_.size() && text_[position_] == '"') {
      read_quoted_field();
    } else {
      read_plain_field();
    }
    if (position_ - line_start_ > longest_line) {
      throw InputError({Severity::error,
                        std::string(where_),
                        line_,
                        0,
                        "a line of over 1 MiB",
                        "lines of a daily table",
                        "check that this is the file you meant"});
    }
    if (position_ < text_.size() && text_[position_] == separator_) {
      ++position_;
      continue;
    }
    end_line();
    return;
  }
}

void CsvReader::read_plain_field() {
  const std::size_t begin = position_;
  position_ = end_of_field(begin);
  fields_.push_back(text_.substr(begin, position_ - begin));
}

// The place of the next separator, line end or end of the text. A table of bytes is quicker than
// three comparisons a byte, and most bytes of a weather file pass here.
std::size_t CsvReader::end_of_field(std::size_t from) const {
  const char* const end = text_.data() + text_.size();
  const char* at = text_.data() + from;
  while (at != end && !ends_field_[static_cast<unsigned char>(*at)]) {
    ++at;
  }
  return static_cast<std::size_t>(at - text_.data());
}

void CsvReader::read_quoted_field() {
  const std::size_t opening = position_++;
  std::string text;
  bool undoubled = false;
  std::size_t begin = position_;
  while (true) {
    const std::size_t quote = text_.find('"', position_);
    if (quote == std::string_view::npos) {
      throw InputError({Severity::error,
                        std::string(where_),
                        line_,
                        opening - line_start_ + 1,
                        "a quote that is never closed",
                        "a closing quote",
                        "close it or remove it"});
    }
    position_ = quote + 1;
    if (position_ < text_.size() && text_[position_] == '"') {
      text.append(text_.substr(begin, position_ - begin));
      undoubled = true;
      begin = ++position_;
      continue;
    }
    const std::string_view last = text_.substr(begin, quote - begin);
    next_line_ +=
        static_cast<std::size_t>(std::count(text_.begin() + static_cast<std::ptrdiff_t>(opening),
                                            text_.begin() + static_cast<std::ptrdiff_t>(quote),
                                            '\n'));
    if (undoubled) {
      text.append(last);
      fields_.emplace_back(undoubled_.emplace_back(std::move(text)));
    } else {
      fields_.push_back(last);
    }
    break;
  }
  // What stands between a closing quote and the separator is padding; RFC 4180 allows none.
  position_ = end_of_field(position_);
}

void CsvReader::end_line() {
  if (position_ >= text_.size()) {
    return;
  }
  if (text_[position_] == '\r' && position_ + 1 < text_.size() && text_[position_ + 1] == '\n') {
    ++position_;
  }
  ++position_;
  ++next_line_;
}

std::string_view trimmed(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t'; };
  while (!text.empty() && blank(text.front())) {
    text.remove_prefix(1);
  }
  while (!text.empty() && blank(text.back())) {
    text.remove_suffix(1);
  }
  return text;
}

std::string csv_field(std::string_view text, char separator) {
  if (text.find_first_of("\"\r\n") == std::string_view::npos &&
      text.find(separator) == std::string_view::npos) {
    return std::string(text);
  }
  std::string quoted = "\"";
  for (const char c : text) {
    quoted += c;
    if (c == '"') {
      quoted += '"';
    }
  }
  quoted += '"';
  return quoted;
}

} // namespace nightsow
