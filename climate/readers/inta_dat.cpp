#include "climate/readers/inta_dat.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/temperature_unit.hpp"

#include <cmath>
#include <optional>

namespace nightsow::climate {

namespace {

// Columns from 0.
constexpr std::size_t station_width = 5;
constexpr std::size_t day_at = 13;
constexpr std::size_t night_at = 18;
constexpr std::size_t value_width = 5;
constexpr std::size_t shortest_line = night_at + value_width;

std::optional<Date> date_of(std::string_view line) {
  return line.size() < shortest_line
             ? std::nullopt
             : read_date(line.substr(5, 4), line.substr(9, 2), line.substr(11, 2));
}

std::optional<float> value_at(std::string_view line, std::size_t column) {
  const auto value = read_decimal(line.substr(column, value_width));
  return value ? std::optional(to_celsius(static_cast<float>(*value), TemperatureUnit::celsius))
               : std::nullopt;
}

bool has_shape(std::string_view line) {
  return date_of(line) && value_at(line, day_at) && value_at(line, night_at) &&
         line.substr(day_at, value_width).find('.') != std::string_view::npos &&
         line.substr(night_at, value_width).find('.') != std::string_view::npos;
}

bool read_line(Readings& readings, std::string_view line, std::size_t number) {
  const auto date = date_of(line);
  const auto night = date ? value_at(line, night_at) : std::nullopt;
  const auto day = date ? value_at(line, day_at) : std::nullopt;
  if (!night || !day) {
    report_fault(readings,
                 number,
                 1,
                 "'" + printable(line, shortest_line) + "' at the head of the line",
                 "station, date, maximum and minimum in fixed columns",
                 "correct it or remove the line");
    return false;
  }
  if (!std::isnan(*night) || !std::isnan(*day)) {
    readings.rows.push_back({*date, *night, *day, static_cast<std::uint32_t>(number)});
  }
  return true;
}

} // namespace

std::vector<std::string> recognise_inta_dat(const Opening& opening) {
  std::size_t shaped = 0;
  std::size_t others = 0;
  for (const std::string_view line : opening.lines) {
    if (!trimmed(line).empty()) {
      ++(has_shape(line) ? shaped : others);
    }
  }
  if (shaped <= others) { // a damaged line or two do not make another format of it
    return {};
  }
  return {"lines hold station, date, maximum and minimum in fixed columns that touch each other"};
}

Readings read_inta_dat(const Opening& opening, std::string_view name) {
  Readings readings;
  readings.file = name;
  readings.unit = unit_name(TemperatureUnit::celsius);
  OneStation station{opening.station};
  LineReader lines{opening.text};
  while (lines.next() && !station.hopeless()) {
    const std::string_view line = lines.line();
    if (trimmed(line).empty()) {
      continue;
    }
    ++readings.rows_read;
    if (station.meet(line.substr(0, station_width)) && !read_line(readings, line, lines.number())) {
      ++readings.rows_faulty;
    }
  }
  station.refuse_several(name);
  readings.station.id = station.id();
  return readings;
}

} // namespace nightsow::climate
