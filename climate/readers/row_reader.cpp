#include "climate/readers/row_reader.hpp"

#include <algorithm>

namespace nightsow::climate {

namespace {

constexpr std::string_view blanks = " \t";

std::string_view text_from(const Opening& opening, std::size_t line) {
  if (line <= 1 || line > opening.lines.size()) {
    return opening.text;
  }
  const std::string_view start = opening.lines[line - 1];
  return opening.text.substr(static_cast<std::size_t>(start.data() - opening.text.data()));
}

} // namespace

std::vector<std::string_view> split_at_blanks(std::string_view line) {
  std::vector<std::string_view> fields;
  for (std::size_t at = line.find_first_not_of(blanks); at != std::string_view::npos;
       at = line.find_first_not_of(blanks, at)) {
    const std::size_t end = std::min(line.find_first_of(blanks, at), line.size());
    fields.push_back(line.substr(at, end - at));
    at = end;
  }
  return fields;
}

RowReader::RowReader(const Opening& opening,
                     std::size_t first_line,
                     char separator,
                     std::string_view where)
    : blanks_(separator == runs_of_blanks), lines_before_(first_line > 0 ? first_line - 1 : 0),
      csv_(text_from(opening, first_line), separator, where),
      lines_(text_from(opening, first_line)) {}

bool RowReader::next() {
  if (!blanks_) {
    const bool more = csv_.next();
    fields_ = csv_.fields();
    return more;
  }
  while (lines_.next()) {
    split_ = split_at_blanks(lines_.line());
    if (!split_.empty()) {
      fields_ = split_;
      return true;
    }
  }
  return false;
}

std::size_t RowReader::line() const {
  return lines_before_ + (blanks_ ? lines_.number() : csv_.line());
}

std::size_t RowReader::column(std::size_t index) const {
  return blanks_ ? static_cast<std::size_t>(fields_[index].data() - lines_.line().data()) + 1
                 : csv_.column(index);
}

} // namespace nightsow::climate
