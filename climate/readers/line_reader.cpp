#include "climate/readers/line_reader.hpp"

#include <algorithm>

namespace nightsow::climate {

LineReader::LineReader(std::string_view text) : text_(text) {
  if (text_.starts_with("\xEF\xBB\xBF")) {
    position_ = 3;
  }
}

bool LineReader::next() {
  if (position_ >= text_.size()) {
    return false;
  }
  // Two searches for one character each are far quicker than one search for either. The next line
  // feed is remembered: in a file of carriage returns only, it is the end of the text.
  if (line_feed_ < position_ || number_ == 0) {
    line_feed_ = std::min(text_.find('\n', position_), text_.size());
  }
  const std::string_view before_feed = text_.substr(position_, line_feed_ - position_);
  line_ = before_feed.substr(0, before_feed.find('\r'));
  position_ += line_.size();
  if (position_ < text_.size() && text_[position_] == '\r') {
    ++position_;
  }
  if (position_ < text_.size() && text_[position_] == '\n') {
    ++position_;
  }
  ++number_;
  return true;
}

Opening opening_of(std::string_view text) {
  Opening opening{text, {}};
  LineReader reader{text};
  while (opening.lines.size() < opening_lines && reader.next()) {
    opening.lines.push_back(reader.line());
  }
  return opening;
}

} // namespace nightsow::climate
