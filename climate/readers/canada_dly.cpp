#include "climate/readers/canada_dly.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/table_format.hpp"
#include "climate/readers/temperature_unit.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace nightsow::climate {

namespace {

// Columns from 0.
constexpr std::size_t station_width = 7;
constexpr std::size_t first_slot = 16;
constexpr std::size_t value_width = 6;
constexpr std::size_t slot_width = 7;
constexpr int slots = 31;
constexpr std::size_t longest_line = first_slot + slots * slot_width;

struct MonthLine {
  std::string_view year;
  std::string_view month;
  std::string_view element;
  std::string_view text;
  std::size_t line = 0;
};

bool all_digits(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

std::optional<MonthLine> month_line(std::string_view line, std::size_t number) {
  if (line.size() < first_slot + value_width || line.size() > longest_line + 2) {
    return std::nullopt;
  }
  const MonthLine month{line.substr(7, 4), line.substr(11, 2), line.substr(13, 3), line, number};
  const bool good = all_digits(month.element) && read_date(month.year, month.month, "1") &&
                    read_whole(line.substr(first_slot, value_width));
  return good ? std::optional(month) : std::nullopt;
}

std::optional<Element> element_of(const MonthLine& month) {
  if (month.element == "001") {
    return Element::day;
  }
  return month.element == "002" ? std::optional(Element::night) : std::nullopt;
}

// False when the value of that day cannot be read; the fault is then listed.
bool take_day(
    Readings& readings, const MonthLine& month, Element element, int day, std::size_t& estimated) {
  const std::size_t slot = first_slot + slot_width * static_cast<std::size_t>(day - 1);
  if (slot >= month.text.size()) {
    return true;
  }
  const auto tenths = read_temperature(month.text.substr(slot, value_width));
  const float celsius =
      tenths ? to_celsius(*tenths, TemperatureUnit::tenths_of_celsius) : missing_c;
  if (tenths && std::isnan(celsius)) {
    return true;
  }
  const auto date = read_date(month.year, month.month, std::to_string(day));
  if (!tenths || !date) {
    report_fault(readings,
                 month.line,
                 slot + 1,
                 "'" + printable(month.text.substr(slot, value_width)) + "' as the value of day " +
                     std::to_string(day),
                 date ? "tenths of °C in six characters" : "-99999, as the month has no such day",
                 "correct it");
    return false;
  }
  const std::string_view flag =
      slot + value_width < month.text.size() ? month.text.substr(slot + value_width, 1) : "";
  estimated += flag == "E" ? 1U : 0U;
  Reading row{*date, missing_c, missing_c, static_cast<std::uint32_t>(month.line)};
  (element == Element::night ? row.night_c : row.day_c) = celsius;
  readings.rows.push_back(row);
  return true;
}

bool read_month(Readings& readings, const MonthLine& month, std::size_t& estimated) {
  const auto element = element_of(month);
  bool good = true;
  for (int day = 1; element && day <= slots; ++day) {
    good = take_day(readings, month, *element, day, estimated) && good;
  }
  return good;
}

void report_head(Readings& readings, std::string_view line, std::size_t number) {
  report_fault(readings,
               number,
               1,
               "'" + printable(line, first_slot) + "' at the head of the line",
               "station, year, month and element in sixteen characters",
               "correct it or remove the line");
}

} // namespace

std::vector<std::string> recognise_canada_dly(const Opening& opening) {
  std::size_t months = 0;
  std::size_t others = 0;
  for (const std::string_view line : opening.lines) {
    if (!trimmed(line).empty()) {
      ++(month_line(line, 0) ? months : others);
    }
  }
  if (months <= others) { // a damaged line or two do not make another format of it
    return {};
  }
  return {"lines begin with a station of seven characters, year, month and an element's number, "
          "in fixed columns"};
}

Readings read_canada_dly(const Opening& opening, std::string_view name) {
  Readings readings;
  readings.file = name;
  readings.unit = unit_name(TemperatureUnit::tenths_of_celsius);
  OneStation station{opening.station};
  std::size_t estimated = 0;
  LineReader lines{opening.text};
  while (lines.next() && !station.hopeless()) {
    if (trimmed(lines.line()).empty()) {
      continue;
    }
    ++readings.rows_read;
    const auto month = month_line(lines.line(), lines.number());
    if (!month) {
      report_head(readings, lines.line(), lines.number());
      ++readings.rows_faulty;
    } else if (station.meet(lines.line().substr(0, station_width)) &&
               !read_month(readings, *month, estimated)) {
      ++readings.rows_faulty;
    }
  }
  station.refuse_several(name);
  readings.station.id = station.id();
  if (estimated > 0) {
    add_note(readings,
             std::to_string(estimated) + " of the values are estimated (E): used all the same",
             "");
  }
  return readings;
}

} // namespace nightsow::climate
