#include "climate/readers/date_field.hpp"

#include "climate/base/csv.hpp"
#include "climate/readers/field_value.hpp"

#include <array>

namespace nightsow::climate {

namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

std::optional<Date> plausible_date(int year, int month, int day) {
  if (year < earliest_year || year > latest_year || month < 1 || day < 1) {
    return std::nullopt;
  }
  return make_date(year, static_cast<unsigned>(month), static_cast<unsigned>(day));
}

struct Number {
  int value = 0;
  std::size_t digits = 0;
};

Number take_number(std::string_view& text) {
  Number number;
  while (number.digits < text.size() && number.digits < 9 && is_digit(text[number.digits])) {
    number.value = number.value * 10 + (text[number.digits] - '0');
    ++number.digits;
  }
  text.remove_prefix(number.digits);
  return number;
}

// Three numbers with the same mark between them, or one of eight digits (mark 0).
struct Shape {
  std::array<Number, 3> numbers;
  char mark = '\0';
  std::string_view rest;
};

std::optional<Shape> shape_of(std::string_view field) {
  std::string_view text = trimmed(field);
  Shape shape;
  shape.numbers[0] = take_number(text);
  if (shape.numbers[0].digits == 8) {
    shape.rest = text;
    return shape;
  }
  if (text.empty() || (text.front() != '-' && text.front() != '/' && text.front() != '.')) {
    return std::nullopt;
  }
  shape.mark = text.front();
  for (std::size_t i = 1; i < 3; ++i) {
    if (text.empty() || text.front() != shape.mark) {
      return std::nullopt;
    }
    text.remove_prefix(1);
    shape.numbers[i] = take_number(text);
  }
  shape.rest = text;
  return shape;
}

bool one_or_two(const Number& number) {
  return number.digits == 1 || number.digits == 2;
}

bool year_leads(const Shape& shape) {
  return shape.numbers[0].digits == 4 && one_or_two(shape.numbers[1]) &&
         one_or_two(shape.numbers[2]);
}

bool year_follows(const Shape& shape) {
  return one_or_two(shape.numbers[0]) && one_or_two(shape.numbers[1]) &&
         shape.numbers[2].digits == 4;
}

std::optional<Date> date_of(const Shape& shape, std::optional<DayOrder> order) {
  const auto& [a, b, c] = shape.numbers;
  if (shape.mark == '\0') {
    return plausible_date(a.value / 10000, a.value / 100 % 100, a.value % 100);
  }
  if (year_leads(shape)) {
    return plausible_date(a.value, b.value, c.value);
  }
  if (!year_follows(shape)) {
    return std::nullopt;
  }
  if (shape.mark == '.') {
    return plausible_date(c.value, b.value, a.value); // nobody writes points with the month first
  }
  if (!order) {
    return std::nullopt;
  }
  return *order == DayOrder::day_first ? plausible_date(c.value, b.value, a.value)
                                       : plausible_date(c.value, a.value, b.value);
}

// Most files write YYYY-MM-DD and nothing else; reading it straight away halves the time of a
// table.
std::optional<Date> plain_iso_date(std::string_view field) {
  if (field.size() != 10 || field[4] != '-' || field[7] != '-') {
    return std::nullopt;
  }
  bool digits = true;
  const auto two = [&](std::size_t i) {
    digits = digits && is_digit(field[i]) && is_digit(field[i + 1]);
    return (field[i] - '0') * 10 + (field[i + 1] - '0');
  };
  const int year = two(0) * 100 + two(2);
  const int month = two(5);
  const int day = two(8);
  return digits ? plausible_date(year, month, day) : std::nullopt;
}

// "T00:00", " 00:00:00", "T00:00:00+02:00", "T00:00Z": a T or a blank, then a clock time.
bool is_time(std::string_view rest) {
  return rest.size() >= 5 && (rest[0] == 'T' || rest[0] == ' ') && is_digit(rest[1]) &&
         (rest[2] == ':' || (is_digit(rest[2]) && rest[3] == ':'));
}

} // namespace

std::optional<DateField> read_date(std::string_view field, std::optional<DayOrder> order) {
  if (const auto date = plain_iso_date(field)) {
    return DateField{*date, {}};
  }
  const auto shape = shape_of(field);
  if (!shape || (!shape->rest.empty() && !is_time(shape->rest))) {
    return std::nullopt;
  }
  const auto date = date_of(*shape, order);
  if (!date) {
    return std::nullopt;
  }
  return DateField{*date, shape->rest};
}

std::optional<Date> read_date(std::string_view year, std::string_view month, std::string_view day) {
  const auto y = read_whole(year);
  const auto m = read_whole(month);
  const auto d = read_whole(day);
  return y && m && d ? plausible_date(*y, *m, *d) : std::nullopt;
}

std::optional<Date> date_in_year(int year, int day_of_year) {
  const auto first = plausible_date(year, 1, 1);
  if (!first || day_of_year < 1 || day_of_year > 366) {
    return std::nullopt;
  }
  const Date date = *first + Days{day_of_year - 1};
  return year_of(date) == year ? std::optional(date) : std::nullopt;
}

std::optional<LeadingNumbers> unordered_date(std::string_view field) {
  const auto shape = shape_of(field);
  if (!shape || !year_follows(*shape) || shape->mark == '.') {
    return std::nullopt;
  }
  return LeadingNumbers{shape->numbers[0].value, shape->numbers[1].value};
}

} // namespace nightsow::climate
