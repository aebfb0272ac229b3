#include "climate/readers/ghcn_dly.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/much_memory.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/figures_at_once.hpp"
#include "climate/readers/ghcn_values.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/table_header.hpp"

#include <cmath>
#include <optional>
#include <utility>

namespace nightsow::climate {

namespace {

// Columns from 0: 0-10 station, 11-14 year, 15-16 month, 17-20 element, then 31 times a value of
// five characters and the flags M, Q, S of one each.
constexpr std::size_t first_slot = 21;
constexpr std::size_t slot_width = 8;
constexpr std::size_t value_width = 5;
constexpr std::size_t quality_place = 6;
constexpr int slots = 31;
constexpr std::size_t line_length = first_slot + slot_width * slots + 1;

// In the CSV: id, year, month, element, then 31 times value and three flags.
constexpr std::size_t first_value_column = 4;
constexpr std::size_t columns_a_day = 4;

// What all the days of a line share.
struct MonthLine {
  Date first{};
  int days = 0;
  GhcnElement element = GhcnElement::other;
  std::size_t line = 0;
};

std::string_view part(std::string_view line, std::size_t from, std::size_t count) {
  return from < line.size() ? line.substr(from, count) : std::string_view{};
}

std::optional<Date> day_of(const MonthLine& month, int day) {
  return day <= month.days ? std::optional{month.first + Days{day - 1}} : std::nullopt;
}

std::optional<MonthLine> month_line(std::string_view year,
                                    std::string_view month,
                                    std::string_view element,
                                    std::size_t line) {
  const auto first = read_date(year, month, "1");
  if (!first || !is_ghcn_element(element)) {
    return std::nullopt;
  }
  const date::year_month_day ymd{*first};
  const date::year_month_day_last last{ymd.year() / ymd.month() / date::last};
  const auto days = static_cast<int>(static_cast<unsigned>(last.day()));
  return MonthLine{*first, days, ghcn_element(element), line};
}

std::optional<MonthLine> head_of(std::string_view line, std::size_t number) {
  if (!is_ghcn_station(part(line, 0, 11))) {
    return std::nullopt;
  }
  return month_line(part(line, 11, 4), part(line, 15, 2), part(line, 17, 4), number);
}

// One day of a line. False when it cannot be read; the fault is then listed.
bool take_day(Readings& readings,
              const MonthLine& month,
              int day,
              std::string_view value,
              std::string_view quality_flag,
              std::size_t column) {
  const auto celsius = read_tenths(value);
  if (!celsius) {
    report_fault(readings,
                 month.line,
                 column,
                 "'" + printable(value) + "' as the value of day " + std::to_string(day),
                 "whole tenths of °C, or -9999",
                 "correct it");
    return false;
  }
  const auto date = day_of(month, day);
  if (date) {
    const float sound = unless_flagged(readings, *celsius, quality_flag, *date, month.line);
    add_ghcn_row(readings, month.element, *date, sound, month.line);
    return true;
  }
  if (std::isnan(*celsius)) {
    return true;
  }
  report_fault(readings,
               month.line,
               column,
               "a value for day " + std::to_string(day) + " of a month that has no such day",
               "-9999",
               "remove it");
  return false;
}

// Nearly all values are whole numbers that fill their five columns from the right, and carry no
// quality flag. False, and nothing taken, for the others.
bool take_plain_day(Readings& readings, const MonthLine& month, int day, const char* slot) {
  const auto tenths = slot[quality_place] == ' ' ? right_aligned_whole(slot) : std::optional<int>{};
  if (!tenths) {
    return false;
  }
  add_ghcn_row(
      readings, month.element, month.first + Days{day - 1}, celsius_of_tenths(*tenths), month.line);
  return true;
}

bool read_fixed_line(Readings& readings, const MonthLine& month, std::string_view line) {
  bool good = true;
  for (int day = 1; day <= slots; ++day) {
    const std::size_t slot = first_slot + slot_width * static_cast<std::size_t>(day - 1);
    const bool whole = slot + slot_width <= line.size();
    if (whole && day <= month.days && take_plain_day(readings, month, day, &line[slot])) {
      continue;
    }
    good = take_day(readings,
                    month,
                    day,
                    part(line, slot, value_width),
                    part(line, slot + quality_place, 1),
                    slot + 1) &&
           good;
  }
  return good;
}

bool read_csv_row(Readings& readings, const MonthLine& month, const CsvReader& rows) {
  const auto fields = rows.fields();
  bool good = true;
  for (int day = 1; day <= slots; ++day) {
    const std::size_t value =
        first_value_column + columns_a_day * static_cast<std::size_t>(day - 1);
    if (value >= fields.size()) {
      break;
    }
    const std::string_view flag = value + 2 < fields.size() ? fields[value + 2] : "";
    good = take_day(readings, month, day, fields[value], flag, rows.column(value)) && good;
  }
  return good;
}

void report_head(Readings& readings, std::size_t line, std::string_view found) {
  report_fault(readings,
               line,
               1,
               "'" + printable(found, 21) + "' at the head of the line",
               "station, year, month and element, such as XX000000001198001TMIN",
               "correct it or remove the line");
}

bool is_month_header(const std::vector<std::string>& names) {
  return names.size() > first_value_column && names[0] == "id" && names[1] == "year" &&
         names[2] == "month" && names[3] == "element" && names[4] == "VALUE1";
}

} // namespace

std::vector<std::string> recognise_ghcn_dly(const Opening& opening) {
  int heads = 0;
  int others = 0;
  for (const std::string_view line : opening.lines) {
    const bool head = head_of(line, 0).has_value();
    heads += head ? 1 : 0;
    others += head || trimmed(line).empty() ? 0 : 1;
  }
  if (heads <= others) { // a damaged line or two do not make another format of it
    return {};
  }
  return {"lines begin with a station of eleven characters, year, month and element, in fixed "
          "columns"};
}

std::vector<std::string> recognise_ghcn_month_csv(const Opening& opening) {
  if (opening.lines.empty() || !is_month_header(fields_of(opening.lines[0], ','))) {
    return {};
  }
  return {"line 1 names id, year, month, element, VALUE1: one element and month a row"};
}

Readings read_ghcn_dly(const Opening& opening, std::string_view name) {
  Readings readings;
  readings.file = name;
  readings.unit = unit_name(TemperatureUnit::tenths_of_celsius);
  reserve_much(readings.rows, opening.text.size() / line_length * static_cast<std::size_t>(slots));
  OneStation station{opening.station};
  LineReader lines{opening.text};
  while (lines.next() && !station.hopeless()) {
    if (trimmed(lines.line()).empty()) {
      continue;
    }
    ++readings.rows_read;
    const auto month = head_of(lines.line(), lines.number());
    if (!month) {
      report_head(readings, lines.number(), lines.line());
      ++readings.rows_faulty;
      continue;
    }
    if (station.meet(part(lines.line(), 0, 11)) && month->element != GhcnElement::other &&
        !read_fixed_line(readings, *month, lines.line())) {
      ++readings.rows_faulty;
    }
  }
  station.refuse_several(name);
  readings.station.id = station.id();
  return readings;
}

Readings read_ghcn_month_csv(const Opening& opening, std::string_view name) {
  Readings readings;
  readings.file = name;
  readings.unit = unit_name(TemperatureUnit::tenths_of_celsius);
  OneStation station{opening.station};
  CsvReader rows{opening.text, ',', name};
  (void)rows.next(); // the header
  while (rows.next() && !station.hopeless()) {
    ++readings.rows_read;
    const auto fields = rows.fields();
    const auto month = fields.size() > first_value_column
                           ? month_line(fields[1], fields[2], fields[3], rows.line())
                           : std::nullopt;
    if (!month) {
      report_head(readings, rows.line(), fields[0]);
      ++readings.rows_faulty;
      continue;
    }
    if (station.meet(fields[0]) && month->element != GhcnElement::other &&
        !read_csv_row(readings, *month, rows)) {
      ++readings.rows_faulty;
    }
  }
  station.refuse_several(name);
  readings.station.id = station.id();
  return readings;
}

} // namespace nightsow::climate
