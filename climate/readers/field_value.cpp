#include "climate/readers/field_value.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <string>

namespace nightsow::climate {

namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// Whole numbers up to this many digits and powers of ten up to this are exact in a double, so one
// division gives the nearest double. Longer figures take the slow way.
constexpr int exact_digits = 15;
constexpr std::array powers_of_ten{
    1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

// The digits and the decimal mark; what follows them stays in `text`.
struct Figure {
  std::int64_t digits = 0;
  int count = 0;
  int decimals = 0;
};

Figure take_figure(std::string_view& text) {
  Figure figure;
  bool behind_mark = false;
  std::size_t i = 0;
  for (; i < text.size() && figure.count <= exact_digits; ++i) {
    const char c = text[i];
    if (is_digit(c)) {
      figure.digits = figure.digits * 10 + (c - '0');
      ++figure.count;
      figure.decimals += behind_mark ? 1 : 0;
    } else if ((c == '.' || c == ',') && !behind_mark) {
      behind_mark = true;
    } else {
      break;
    }
  }
  text.remove_prefix(i);
  return figure;
}

// Exponents and figures of more than 15 digits, which daily tables hardly ever hold.
std::optional<double> read_slowly(std::string_view field) {
  std::string text(field);
  if (std::count(text.begin(), text.end(), ',') + std::count(text.begin(), text.end(), '.') > 1) {
    return std::nullopt;
  }
  std::replace(text.begin(), text.end(), ',', '.');
  double value = 0.0;
  const char* const end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value);
  // from_chars also reads "inf" and "nan".
  if (error != std::errc{} || stop != end || !(is_digit(text.front()) || text.front() == '.')) {
    return std::nullopt;
  }
  return value;
}

} // namespace

std::optional<double> read_decimal(std::string_view field) {
  std::string_view text = trimmed(field);
  const bool negative = text.starts_with('-');
  if (negative || text.starts_with('+')) {
    text.remove_prefix(1);
  }
  const std::string_view unsigned_text = text;
  const Figure figure = take_figure(text);
  if (figure.count == 0) {
    return std::nullopt;
  }
  if (text.empty() && figure.count <= exact_digits) {
    const double value = static_cast<double>(figure.digits) /
                         powers_of_ten[static_cast<std::size_t>(figure.decimals)];
    return negative ? -value : value;
  }
  const auto value = read_slowly(unsigned_text);
  return value && negative ? -*value : value;
}

std::optional<int> read_whole(std::string_view field) {
  const std::string_view text = trimmed(field);
  int value = 0;
  const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || stop != text.data() + text.size()) {
    return std::nullopt;
  }
  return value;
}

bool is_missing_word(std::string_view field) {
  constexpr std::array<std::string_view, 7> words{"", "-", "na", "n/a", "nan", "null", "none"};
  const std::string_view text = trimmed(field);
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
    return std::equal(text.begin(), text.end(), word.begin(), word.end(), [](char a, char b) {
      return lower(a) == b;
    });
  });
}

std::optional<float> read_temperature(std::string_view field) {
  if (const auto value = read_decimal(field)) {
    return static_cast<float>(*value);
  }
  if (is_missing_word(field)) {
    return missing_c;
  }
  return std::nullopt;
}

} // namespace nightsow::climate
