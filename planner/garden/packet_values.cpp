#include "planner/garden/packet_values.hpp"

#include "climate/base/celsius.hpp"
#include "climate/base/csv.hpp"
#include "planner/garden/date_range.hpp"
#include "planner/garden/plain_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

namespace nightsow::planner {

namespace {

// "~40" is taken as 32 to 48 (common practice, no source).
constexpr double about_share = 0.2;
constexpr double most_seeds = 1e6;
constexpr double most_grams = 1e4;
constexpr double coldest_store_c = -80.0;
constexpr double hottest_store_c = 60.0;

constexpr std::string_view en_dash = "\xE2\x80\x93";
constexpr std::string_view degree_sign = "\xC2\xB0";

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool take_prefix(std::string_view& text, std::string_view prefix) {
  if (!text.starts_with(prefix)) {
    return false;
  }
  text = trimmed(text.substr(prefix.size()));
  return true;
}

bool take_suffix(std::string_view& text, std::string_view suffix) {
  if (!text.ends_with(suffix)) {
    return false;
  }
  text = trimmed(text.substr(0, text.size() - suffix.size()));
  return true;
}

// Spreadsheets write 40 as 40.0 where a column has gaps. 1,000 could be one or a thousand.
std::optional<double> parse_whole(std::string_view text) {
  take_suffix(text, ".0");
  if (text.empty() || !std::all_of(text.begin(), text.end(), is_digit)) {
    return std::nullopt;
  }
  const auto value = parse_decimal(text);
  return value && *value <= most_seeds ? value : std::nullopt;
}

std::optional<double> parse_grams(std::string_view text) {
  const double unit = take_suffix(text, "mg") ? 0.001 : take_suffix(text, "g") ? 1.0 : 0.0;
  const auto number = unit > 0.0 ? parse_decimal(text) : std::nullopt;
  if (!number || *number <= 0.0 || *number > most_grams) {
    return std::nullopt;
  }
  return *number * unit;
}

std::optional<SeedCount> parse_seed_range(std::string_view text) {
  for (const std::string_view dash : {std::string_view{"-"}, en_dash}) {
    const std::size_t at = text.find(dash);
    if (at == std::string_view::npos) {
      continue;
    }
    const auto low = parse_whole(trimmed(text.substr(0, at)));
    const auto high = parse_whole(trimmed(text.substr(at + dash.size())));
    if (low && high && *low <= *high) {
      return SeedCount{low, high, {}};
    }
  }
  return std::nullopt;
}

} // namespace

std::optional<double> parse_decimal(std::string_view text) {
  std::string number(text);
  std::replace(number.begin(), number.end(), ',', '.');
  const bool plain = std::all_of(
      number.begin(), number.end(), [](char c) { return is_digit(c) || c == '.' || c == '-'; });
  double value = 0.0;
  const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), value);
  if (!plain || error != std::errc{} || end != number.data() + number.size()) {
    return std::nullopt;
  }
  return value;
}

std::optional<SeedCount> parse_seed_count(std::string_view cell) {
  const std::string lower = lower_case(trimmed(cell));
  std::string_view text = lower;
  const bool about = take_prefix(text, "~") || take_prefix(text, "about ") ||
                     take_prefix(text, "circa ") || take_prefix(text, "ca. ") ||
                     take_prefix(text, "ca ") || take_prefix(text, "c. ");
  if (const auto grams = parse_grams(text)) {
    return SeedCount{{}, {}, grams};
  }
  static_cast<void>(take_suffix(text, "seeds") || take_suffix(text, "seed"));
  if (const auto number = parse_whole(text)) {
    const double spread = about ? about_share : 0.0;
    return SeedCount{*number * (1.0 - spread), *number * (1.0 + spread), {}};
  }
  return parse_seed_range(text);
}

std::optional<double> parse_temperature(std::string_view cell) {
  const std::string lower = lower_case(trimmed(cell));
  std::string_view text = lower;
  const bool celsius = take_suffix(text, "c");
  if (!celsius && !take_suffix(text, "f")) {
    return std::nullopt;
  }
  static_cast<void>(take_suffix(text, degree_sign));
  const auto number = parse_decimal(text);
  if (!number) {
    return std::nullopt;
  }
  const double value = celsius ? *number : from_fahrenheit(*number).degrees();
  const bool possible = value >= coldest_store_c && value <= hottest_store_c;
  return possible ? std::optional(value) : std::nullopt;
}

std::optional<GerminationTest> parse_germination_test(std::string_view cell) {
  std::string_view text = trimmed(cell);
  const std::size_t end = std::min(text.find(' '), text.size());
  const std::size_t slash = text.find('/');
  if (slash >= end) {
    return std::nullopt;
  }
  const auto sprouted = parse_whole(text.substr(0, slash));
  const auto of = parse_whole(text.substr(slash + 1, end - slash - 1));
  if (!sprouted || !of || *of < 1.0 || *sprouted > *of) {
    return std::nullopt;
  }
  GerminationTest test{static_cast<int>(*sprouted), static_cast<int>(*of), {}, {}};
  text = trimmed(text.substr(end));
  const std::size_t day_end = std::min(text.find(' '), text.size());
  if (const auto day = parse_iso_date(text.substr(0, day_end))) {
    test.on = day;
    text = trimmed(text.substr(day_end));
  }
  if (!text.empty()) {
    test.at_c = parse_temperature(text);
    if (!test.at_c) {
      return std::nullopt;
    }
  }
  return test;
}

std::optional<bool> parse_yes_or_no(std::string_view cell) {
  const std::string text = lower_case(trimmed(cell));
  for (const std::string_view yes : {"yes", "y", "true", "1", "x"}) {
    if (text == yes) {
      return true;
    }
  }
  for (const std::string_view no : {"no", "n", "false", "0"}) {
    if (text == no) {
      return false;
    }
  }
  return std::nullopt;
}

std::optional<int> parse_positive(std::string_view cell) {
  const auto number = parse_whole(trimmed(cell));
  return number && *number >= 1.0 ? std::optional(static_cast<int>(*number)) : std::nullopt;
}

} // namespace nightsow::planner
