#include "climate/readers/clock_stamp.hpp"

#include "climate/base/csv.hpp"
#include "climate/readers/column_name.hpp"
#include "climate/readers/date_field.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace nightsow::climate {

namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

void skip_blanks(std::string_view& text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) {
    text.remove_prefix(1);
  }
}

bool take(std::string_view& text, char c) {
  if (text.empty() || text.front() != c) {
    return false;
  }
  text.remove_prefix(1);
  return true;
}

struct Number {
  int value = 0;
  std::size_t digits = 0;
};

Number take_number(std::string_view& text, std::size_t most) {
  Number number;
  while (number.digits < text.size() && number.digits < most && is_digit(text[number.digits])) {
    number.value = number.value * 10 + (text[number.digits] - '0');
    ++number.digits;
  }
  text.remove_prefix(number.digits);
  return number;
}

// "AM", "p.m.", "a. m.": 'a' or 'p'; 0 when there is none, and then nothing is taken.
char take_half_of_day(std::string_view& text) {
  std::string_view rest = text;
  skip_blanks(rest);
  const char half = rest.empty() ? '\0' : lower(rest.front());
  if (half != 'a' && half != 'p') {
    return '\0';
  }
  rest.remove_prefix(1);
  take(rest, '.');
  skip_blanks(rest);
  if (rest.empty() || lower(rest.front()) != 'm') {
    return '\0';
  }
  rest.remove_prefix(1);
  take(rest, '.');
  text = rest;
  return half;
}

std::optional<int> hour_of(int hour, char half) {
  if (half == '\0') {
    return hour <= 24 ? std::optional(hour) : std::nullopt;
  }
  if (hour < 1 || hour > 12) {
    return std::nullopt;
  }
  return hour % 12 + (half == 'p' ? 12 : 0);
}

// h:mm, h:mm:ss, h:mm:ss.fff, each with AM or PM behind it.
std::optional<seconds> take_clock(std::string_view& text) {
  const Number hour = take_number(text, 2);
  if (hour.digits == 0 || !take(text, ':')) {
    return std::nullopt;
  }
  const Number minute = take_number(text, 2);
  Number second;
  if (take(text, ':')) {
    second = take_number(text, 2);
    if (second.digits != 2) {
      return std::nullopt;
    }
    if (!text.empty() && (text.front() == '.' || text.front() == ',')) {
      text.remove_prefix(1);
      static_cast<void>(take_number(text, text.size()));
    }
  }
  const auto h = hour_of(hour.value, take_half_of_day(text));
  if (!h || minute.digits != 2 || minute.value > 59 || second.value > 59) {
    return std::nullopt;
  }
  const seconds time = hours{*h} + minutes{minute.value} + seconds{second.value};
  return time <= hours{24} ? std::optional(time) : std::nullopt;
}

// "+02:00", "-5", "+0530"; the sign must be there.
std::optional<seconds> take_signed_offset(std::string_view& text) {
  const bool west = text.starts_with('-');
  if (!west && !text.starts_with('+')) {
    return std::nullopt;
  }
  text.remove_prefix(1);
  const Number hour = take_number(text, 2);
  take(text, ':');
  const Number minute = take_number(text, 2);
  if (hour.digits == 0 || hour.value > 14 || minute.value > 59) {
    return std::nullopt;
  }
  const seconds offset = hours{hour.value} + minutes{minute.value};
  return west ? -offset : offset;
}

bool take_word(std::string_view& text, std::string_view word) {
  if (text.size() < word.size() ||
      !std::equal(
          word.begin(), word.end(), text.begin(), [](char a, char b) { return a == lower(b); })) {
    return false;
  }
  text.remove_prefix(word.size());
  return true;
}

std::optional<seconds> take_offset(std::string_view& text) {
  skip_blanks(text);
  if (take_word(text, "utc") || take_word(text, "gmt")) {
    const auto offset = take_signed_offset(text);
    return offset ? offset : std::optional(seconds{0});
  }
  if (take_word(text, "z")) {
    return seconds{0};
  }
  return take_signed_offset(text);
}

// Takes the three numbers of a date.
bool take_date(std::string_view& text, ClockStamp& stamp) {
  const Number first = take_number(text, 8);
  if (first.digits == 8) {
    stamp.a = first.value / 10000;
    stamp.b = first.value / 100 % 100;
    stamp.c = first.value % 100;
    stamp.year_leads = true;
    return true;
  }
  if (text.empty() || (text.front() != '-' && text.front() != '/' && text.front() != '.')) {
    return false;
  }
  const char mark = text.front();
  text.remove_prefix(1);
  const Number second = take_number(text, 2);
  if (!take(text, mark)) {
    return false;
  }
  const Number third = take_number(text, 4);
  stamp.a = first.value;
  stamp.b = second.value;
  stamp.c = third.value;
  stamp.year_leads = first.digits == 4;
  stamp.year_follows = third.digits == 4;
  stamp.points = mark == '.';
  const auto short_number = [](const Number& n) { return n.digits == 1 || n.digits == 2; };
  return short_number(second) && (stamp.year_leads || short_number(first)) &&
         (stamp.year_follows ? !stamp.year_leads : short_number(third));
}

struct OffsetPlace {
  std::size_t begin = 0;
  std::size_t end = 0;
  seconds offset{0};
};

std::optional<OffsetPlace> find_offset(std::string_view name) {
  for (std::size_t i = 0; i < name.size(); ++i) {
    std::string_view rest = name.substr(i);
    if (!take_word(rest, "utc") && !take_word(rest, "gmt")) {
      continue;
    }
    std::string_view behind = rest;
    skip_blanks(behind);
    const auto offset = take_signed_offset(behind);
    return OffsetPlace{
        i, name.size() - (offset ? behind : rest).size(), offset.value_or(seconds{0})};
  }
  return std::nullopt;
}

} // namespace

std::optional<ClockStamp> read_stamp(std::string_view field) {
  std::string_view text = trimmed(field);
  ClockStamp stamp;
  if (!take_date(text, stamp)) {
    return std::nullopt;
  }
  if (text.empty()) {
    return stamp;
  }
  if (text.front() != 'T' && text.front() != ' ') {
    return std::nullopt;
  }
  text.remove_prefix(1);
  skip_blanks(text);
  const auto time = take_clock(text);
  if (!time) {
    return std::nullopt;
  }
  stamp.time = *time;
  stamp.has_time = true;
  stamp.offset = take_offset(text);
  return text.empty() ? std::optional(stamp) : std::nullopt;
}

std::optional<seconds> read_time_of_day(std::string_view field, bool bare) {
  std::string_view text = trimmed(field);
  if (bare && !text.empty() && std::all_of(text.begin(), text.end(), is_digit)) {
    const std::size_t digits = text.size();
    const int number = take_number(text, 4).value;
    if (!text.empty()) {
      return std::nullopt;
    }
    const seconds time =
        digits > 2 ? seconds{hours{number / 100} + minutes{number % 100}} : seconds{hours{number}};
    const bool real = time <= hours{24} && (digits <= 2 || number % 100 < 60);
    return real ? std::optional(time) : std::nullopt;
  }
  const auto time = take_clock(text);
  skip_blanks(text);
  return text.empty() ? time : std::nullopt;
}

std::optional<date::sys_seconds> read_unix_time(std::string_view field) {
  constexpr std::int64_t year_1980 = 315'532'800;
  constexpr std::int64_t year_2100 = 4'102'444'800;
  constexpr std::size_t digits_of_milliseconds = 12;
  std::string_view text = trimmed(field);
  if (text.ends_with(".0")) {
    text.remove_suffix(2);
  }
  std::int64_t number = 0;
  const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || stop != text.data() + text.size()) {
    return std::nullopt;
  }
  if (text.size() >= digits_of_milliseconds) {
    number /= 1000;
  }
  if (number < year_1980 || number >= year_2100) {
    return std::nullopt;
  }
  return date::sys_seconds{seconds{number}};
}

std::optional<seconds> offset_in(std::string_view name) {
  const auto place = find_offset(name);
  return place ? std::optional(place->offset) : std::nullopt;
}

std::string without_offset(std::string_view name) {
  const auto place = find_offset(name);
  if (!place) {
    return std::string(name);
  }
  return std::string(name.substr(0, place->begin)) + std::string(name.substr(place->end));
}

std::optional<date::local_seconds> clock_time(const ClockStamp& stamp, StampOrder order) {
  constexpr int first_short_year = 70;
  int year = stamp.a;
  int month = stamp.b;
  int day = stamp.c;
  if (!stamp.year_leads &&
      (stamp.year_follows || stamp.points || order != StampOrder::year_first)) {
    const bool month_first = order == StampOrder::month_first && !stamp.points;
    year = stamp.c;
    month = month_first ? stamp.a : stamp.b;
    day = month_first ? stamp.b : stamp.a;
  }
  if (!stamp.year_leads && !stamp.year_follows) {
    year += year < first_short_year ? 2000 : 1900;
  }
  if (year < earliest_year || year > latest_year || month < 1 || day < 1) {
    return std::nullopt;
  }
  const auto date = make_date(year, static_cast<unsigned>(month), static_cast<unsigned>(day));
  return date ? std::optional(date::local_seconds{*date} + stamp.time) : std::nullopt;
}

} // namespace nightsow::climate
