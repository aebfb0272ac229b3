#include "climate/base/located_json.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <set>
#include <utility>
#include <vector>

namespace nightsow {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t deepest = 64;

// Reports how far the parser has read: the parser itself tells positions only with errors.
class CountingIterator {
public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  CountingIterator(const char* at, const char** furthest) : at_(at), furthest_(furthest) {}

  reference operator*() const { return *at_; }

  CountingIterator& operator++() {
    *furthest_ = ++at_;
    return *this;
  }

  CountingIterator operator++(int) {
    const CountingIterator before = *this;
    ++*this;
    return before;
  }

  bool operator==(const CountingIterator& other) const { return at_ == other.at_; }

  bool operator!=(const CountingIterator& other) const { return at_ != other.at_; }

private:
  const char* at_;
  const char** furthest_;
};

struct Located {
  std::string pointer;
  std::size_t offset = 0;
};

// Builds the value and remembers where each part began. The names are those of nlohmann's SAX
// interface.
class TreeBuilder : public nlohmann::json_sax<Json> {
public:
  TreeBuilder(std::string_view text, const char* const* furthest)
      : begin_(text.data()), size_(text.size()), furthest_(furthest) {}

  bool null() override { return scalar(Json(nullptr), 4); }

  bool boolean(bool value) override { return scalar(Json(value), value ? 4 : 5); }

  bool number_integer(number_integer_t value) override {
    return scalar(Json(value), length_of_number());
  }

  bool number_unsigned(number_unsigned_t value) override {
    return scalar(Json(value), length_of_number());
  }

  bool number_float(number_float_t value, const string_t& /*text*/) override {
    return scalar(Json(value), length_of_number());
  }

  bool string(string_t& value) override {
    const std::size_t length = value.size() + 2;
    return scalar(Json(std::move(value)), length);
  }

  bool binary(binary_t& /*value*/) override { return false; }

  bool start_object(std::size_t /*elements*/) override { return open(Json::object()); }

  bool start_array(std::size_t /*elements*/) override { return open(Json::array()); }

  bool end_object() override { return close(); }

  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    if (!levels_.back().keys.insert(name).second) {
      fail("the key \"" + name + "\" stands here twice", "each key once", name.size() + 2);
      return false;
    }
    key_ = name;
    key_offset_ = offset_back(name.size() + 2);
    return true;
  }

  bool parse_error(std::size_t position,
                   const std::string& last_token,
                   const nlohmann::detail::exception& error) override {
    const std::string text = error.what();
    // No text in UTF-8 holds these bytes; UTF-16 begins with two of them.
    const bool never_in_utf8 = last_token.find_first_of("\xFE\xFF") != std::string::npos;
    const bool not_utf8 = never_in_utf8 || text.find("UTF-8") != std::string::npos;
    found_ = not_utf8 ? "bytes that are not UTF-8" : "no valid JSON near '" + last_token + "'";
    if (!not_utf8 && position > size_) {
      found_ = "the JSON text ends too early";
    }
    expected_ = not_utf8 ? "a UTF-8 text" : "JSON as in RFC 8259";
    fault_offset_ = position > 0 ? position - 1 : 0;
    failed_ = true;
    return false;
  }

  [[nodiscard]] Json take_root() { return std::move(root_); }

  [[nodiscard]] const std::vector<Located>& places() const { return places_; }

  [[nodiscard]] bool failed() const { return failed_; }

  [[nodiscard]] const std::string& found() const { return found_; }

  [[nodiscard]] const std::string& expected() const { return expected_; }

  [[nodiscard]] std::size_t fault_offset() const { return fault_offset_; }

private:
  struct Level {
    Json* value;
    std::string pointer;
    std::set<std::string> keys = {}; // an ordered object would look through all of its own
  };

  [[nodiscard]] std::size_t offset_back(std::size_t length) const {
    const auto read = static_cast<std::size_t>(*furthest_ - begin_);
    return read > length ? read - length : 0;
  }

  // How far back the number just read began. The parser has already looked at the character behind
  // it, where there is one.
  [[nodiscard]] std::size_t length_of_number() const {
    const auto in_number = [](char c) {
      return (c >= '0' && c <= '9') || c == '-' || c == '+' || c == '.' || c == 'e' || c == 'E';
    };
    const char* at = *furthest_;
    if (at != begin_ && !in_number(at[-1])) {
      --at;
    }
    while (at != begin_ && in_number(at[-1])) {
      --at;
    }
    return static_cast<std::size_t>(*furthest_ - at);
  }

  void fail(std::string found, std::string expected, std::size_t length) {
    found_ = std::move(found);
    expected_ = std::move(expected);
    fault_offset_ = offset_back(length);
    failed_ = true;
  }

  // Puts the value into its parent and returns where it now lives.
  Level place(Json value, std::size_t length) {
    if (levels_.empty()) {
      root_ = std::move(value);
      places_.push_back({"", offset_back(length)});
      return {&root_, ""};
    }
    const Level& parent = levels_.back();
    if (parent.value->is_array()) {
      const std::string pointer = parent.pointer + '/' + std::to_string(parent.value->size());
      parent.value->push_back(std::move(value));
      places_.push_back({pointer, offset_back(length)});
      return {&parent.value->back(), pointer};
    }
    const std::string pointer = parent.pointer + '/' + pointer_token(key_);
    places_.push_back({pointer, key_offset_});
    auto& members = parent.value->get_ref<Json::object_t&>();
    members.push_back({key_, std::move(value)}); // operator[] would look through all of them
    return {&members.back().second, pointer};
  }

  bool scalar(Json value, std::size_t length) {
    place(std::move(value), length);
    return true;
  }

  bool open(Json value) {
    if (levels_.size() >= deepest) {
      fail("JSON nested deeper than 64 levels", "a flat file", 1);
      return false;
    }
    levels_.push_back(place(std::move(value), 1));
    return true;
  }

  bool close() {
    levels_.pop_back();
    return true;
  }

  Json root_;
  std::vector<Located> places_;
  const char* begin_;
  std::size_t size_;
  const char* const* furthest_;
  std::vector<Level> levels_;
  std::string key_;
  std::size_t key_offset_ = 0;
  std::string found_;
  std::string expected_;
  std::size_t fault_offset_ = 0;
  bool failed_ = false;
};

std::pair<std::size_t, std::size_t> line_and_column(std::string_view text, std::size_t offset) {
  const std::string_view before = text.substr(0, std::min(offset, text.size()));
  const auto line = static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n')) + 1;
  const std::size_t line_break = before.rfind('\n');
  const std::size_t start = line_break == std::string_view::npos ? 0 : line_break + 1;
  return {line, before.size() - start + 1};
}

// Line starts once, then a binary search each: a catalogue has thousands of places.
class LineIndex {
public:
  explicit LineIndex(std::string_view text) {
    starts_.push_back(0);
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] == '\n') {
        starts_.push_back(i + 1);
      }
    }
  }

  [[nodiscard]] std::pair<std::size_t, std::size_t> at(std::size_t offset) const {
    const auto after = std::upper_bound(starts_.begin(), starts_.end(), offset);
    const auto line = static_cast<std::size_t>(after - starts_.begin());
    return {line, offset - starts_[line - 1] + 1};
  }

private:
  std::vector<std::size_t> starts_;
};

} // namespace

std::string pointer_token(std::string_view key) {
  std::string token;
  for (const char c : key) {
    if (c == '~') {
      token += "~0";
    } else if (c == '/') {
      token += "~1";
    } else {
      token += c;
    }
  }
  return token;
}

LocatedJson LocatedJson::parse(std::string_view text, std::string_view where) {
  const char* furthest = text.data();
  TreeBuilder tree{text, &furthest};
  const CountingIterator begin{text.data(), &furthest};
  const CountingIterator end{text.data() + text.size(), &furthest};
  const bool parsed = Json::sax_parse(begin, end, &tree, Json::input_format_t::json, true, true);
  if (!parsed || tree.failed()) {
    const auto [line, column] = line_and_column(text, tree.fault_offset());
    throw InputError({Severity::error,
                      std::string(where),
                      line,
                      column,
                      tree.found(),
                      tree.expected(),
                      "mend the file"});
  }
  LocatedJson located;
  located.where_ = std::string(where);
  const LineIndex lines{text};
  for (const Located& part : tree.places()) {
    const auto [line, column] = lines.at(part.offset);
    located.places_[part.pointer] = {line, column};
  }
  located.value_ = std::make_shared<const Json>(tree.take_root());
  return located;
}

Problem LocatedJson::problem_at(std::string_view pointer,
                                std::string found,
                                std::string expected,
                                std::string remedy,
                                Severity severity) const {
  const std::string_view named = pointer;
  auto place = places_.find(pointer);
  while (place == places_.end() && !pointer.empty()) {
    const std::size_t slash = pointer.rfind('/');
    pointer = pointer.substr(0, slash == std::string_view::npos ? 0 : slash);
    place = places_.find(pointer);
  }
  const Place at = place == places_.end() ? Place{} : place->second;
  return {severity,
          where_,
          at.line,
          at.column,
          std::move(found),
          std::move(expected),
          std::move(remedy),
          std::string(named)};
}

} // namespace nightsow
