#include "climate/base/date.hpp"

#include <charconv>

namespace nightsow {

namespace {

// date::parse into local_days warns under g++ -O3, and reads more forms than ISO 8601 allows.
bool read_digits(std::string_view text, int& value) {
  for (const char c : text) {
    if (c < '0' || c > '9') {
      return false;
    }
  }
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc{} && end == text.data() + text.size();
}

void append_padded(std::string& out, int value, std::size_t width) {
  const std::string digits = std::to_string(value);
  if (digits.size() < width) {
    out.append(width - digits.size(), '0');
  }
  out += digits;
}

} // namespace

std::optional<Date> make_date(int year, unsigned month, unsigned day) {
  const auto ymd = date::year{year} / date::month{month} / date::day{day};
  if (!ymd.ok()) {
    return std::nullopt;
  }
  return Date{ymd};
}

std::optional<Date> parse_iso_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
    return std::nullopt;
  }
  int year = 0;
  int month = 0;
  int day = 0;
  if (!read_digits(text.substr(0, 4), year) || !read_digits(text.substr(5, 2), month) ||
      !read_digits(text.substr(8, 2), day)) {
    return std::nullopt;
  }
  return make_date(year, static_cast<unsigned>(month), static_cast<unsigned>(day));
}

std::string format_iso_date(Date day) {
  const date::year_month_day ymd{day};
  std::string text;
  text.reserve(10);
  append_padded(text, static_cast<int>(ymd.year()), 4);
  text += '-';
  append_padded(text, static_cast<int>(static_cast<unsigned>(ymd.month())), 2);
  text += '-';
  append_padded(text, static_cast<int>(static_cast<unsigned>(ymd.day())), 2);
  return text;
}

int year_of(Date day) {
  return static_cast<int>(date::year_month_day{day}.year());
}

int day_of_year(Date day) {
  const date::year_month_day ymd{day};
  return days_between(Date{ymd.year() / date::January / 1}, day) + 1;
}

Date in_year(date::month_day day, int year) {
  const auto ymd = date::year{year} / day.month() / day.day();
  return ymd.ok() ? Date{ymd} : Date{date::year{year} / date::March / 1};
}

date::month_day recurring_day(Date day) {
  const date::year_month_day ymd{day};
  if (ymd.month() == date::February && ymd.day() == date::day{29}) {
    return date::March / 1;
  }
  return ymd.month() / ymd.day();
}

IsoWeek iso_week(Date day) {
  const date::weekday weekday{day};
  const Date thursday = day + Days{4} - Days{static_cast<int>(weekday.iso_encoding())};
  return {year_of(thursday), (day_of_year(thursday) - 1) / 7 + 1};
}

} // namespace nightsow
