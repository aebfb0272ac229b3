#include "planner/garden/date_range.hpp"

#include "climate/base/csv.hpp"
#include "planner/garden/plain_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <vector>

namespace nightsow::planner {

namespace {

constexpr int first_year = 1900;
constexpr int last_year = 2199;

enum class DatePart { year, month_name, number };

struct DateToken {
  DatePart part = DatePart::number;
  int value = 0;
};

constexpr std::array<std::string_view, 12> month_names{"january",
                                                       "february",
                                                       "march",
                                                       "april",
                                                       "may",
                                                       "june",
                                                       "july",
                                                       "august",
                                                       "september",
                                                       "october",
                                                       "november",
                                                       "december"};

std::optional<DateToken> parse_month_name(std::string_view word) {
  for (std::size_t i = 0; i < month_names.size(); ++i) {
    if (word.size() >= 3 && month_names[i].starts_with(word)) {
      return DateToken{DatePart::month_name, static_cast<int>(i) + 1};
    }
  }
  return std::nullopt;
}

std::optional<DateToken> parse_date_token(std::string_view word) {
  if (!word.empty() && (word.front() < '0' || word.front() > '9')) {
    return parse_month_name(word);
  }
  int value = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
  if (error != std::errc{} || end != word.data() + word.size() || word.size() == 3) {
    return std::nullopt;
  }
  if (word.size() < 3) {
    return DateToken{DatePart::number, value};
  }
  if (value < first_year || value > last_year) {
    return std::nullopt;
  }
  return DateToken{DatePart::year, value};
}

// Separated by '-', '/', '.' or blanks, as many as there are between two tokens.
std::vector<DateToken> date_tokens(std::string_view text) {
  constexpr std::string_view separators = "-/. ";
  std::vector<DateToken> tokens;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(separators), text.size());
    const auto token = parse_date_token(text.substr(0, end));
    if (!token) {
      return {};
    }
    tokens.push_back(*token);
    text = text.substr(end);
    const std::size_t next = text.find_first_not_of(separators);
    if (next == std::string_view::npos && !text.empty()) {
      return {};
    }
    text = text.substr(std::min(next, text.size()));
  }
  return tokens;
}

std::optional<DateRange> whole_month(int year, int month) {
  const auto first = make_date(year, static_cast<unsigned>(month), 1);
  if (!first) {
    return std::nullopt;
  }
  const date::year_month_day_last last{
      date::year{year}, date::month_day_last{date::month{static_cast<unsigned>(month)}}};
  return DateRange{*first, Date{last}};
}

std::optional<DateRange> one_day(int year, int month, int day) {
  const auto date = make_date(year, static_cast<unsigned>(month), static_cast<unsigned>(day));
  return date ? std::optional(DateRange{*date, *date}) : std::nullopt;
}

// Two numbers before a year. With dots the day comes first everywhere; with anything else only when
// the other order is no date, or says the same.
std::optional<DateRange> day_and_month(int first, int second, int year, bool dots) {
  const auto day_first = one_day(year, second, first);
  const auto month_first = one_day(year, first, second);
  if (dots || !month_first || first == second) {
    return day_first;
  }
  return day_first ? std::nullopt : month_first;
}

std::optional<DateRange> range_of(const std::vector<DateToken>& tokens, bool dots) {
  constexpr auto year = DatePart::year;
  constexpr auto name = DatePart::month_name;
  constexpr auto number = DatePart::number;
  const auto part = [&](std::size_t i) { return tokens[i].part; };
  const auto value = [&](std::size_t i) { return tokens[i].value; };
  if (tokens.size() == 1 && part(0) == year) {
    return DateRange{Date{date::year{value(0)} / 1 / 1}, Date{date::year{value(0)} / 12 / 31}};
  }
  if (tokens.size() == 2 && part(0) == year && part(1) != year) {
    return whole_month(value(0), value(1));
  }
  if (tokens.size() == 2 && part(1) == year && part(0) != year) {
    return whole_month(value(1), value(0));
  }
  if (tokens.size() != 3) {
    return std::nullopt;
  }
  if (part(0) == year && part(1) != year && part(2) == number) {
    return one_day(value(0), value(1), value(2));
  }
  if (part(2) != year) {
    return std::nullopt;
  }
  if (part(0) == number && part(1) == name) {
    return one_day(value(2), value(1), value(0));
  }
  if (part(0) == name && part(1) == number) {
    return one_day(value(2), value(0), value(1));
  }
  if (part(0) == number && part(1) == number) {
    return day_and_month(value(0), value(1), value(2), dots);
  }
  return std::nullopt;
}

} // namespace

std::optional<DateRange> parse_date_range(std::string_view cell) {
  const std::string text = lower_case(trimmed(cell));
  const bool dots = text.find('.') != std::string::npos;
  return range_of(date_tokens(text), dots);
}

Date DateRange::middle() const {
  return first + Days{days_between(first, last) / 2};
}

std::string format_date_range(const DateRange& range) {
  std::string first = format_iso_date(range.first);
  if (range.first == range.last) {
    return first;
  }
  const std::string month = first.substr(0, 7);
  return month == format_iso_date(range.last).substr(0, 7) ? month : first.substr(0, 4);
}

Date months_before(Date day, int months) {
  const date::year_month_day ymd{day};
  const auto earlier = ymd - date::months{months};
  return earlier.ok() ? Date{earlier} : Date{earlier.year() / earlier.month() / date::last};
}

} // namespace nightsow::planner
