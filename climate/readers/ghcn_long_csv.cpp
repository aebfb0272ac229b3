#include "climate/readers/ghcn_long_csv.hpp"

#include "climate/base/csv.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/ghcn_values.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/table_header.hpp"

#include <optional>
#include <utility>

namespace nightsow::climate {

namespace {

// Columns counted from that of the date.
constexpr std::size_t element_after_date = 1;
constexpr std::size_t value_after_date = 2;
constexpr std::size_t quality_after_date = 4;

// The row's date column, or nothing when the row has another shape. Names in headers vary, the
// shape of rows does not.
template <typename Field> std::optional<std::size_t> date_column(const std::vector<Field>& fields) {
  const std::size_t date = !fields.empty() && is_ghcn_station(fields[0]) ? 1 : 0;
  const bool shaped = fields.size() > date + value_after_date &&
                      read_date(fields[date], std::nullopt) &&
                      is_ghcn_element(fields[date + element_after_date]) &&
                      read_tenths(fields[date + value_after_date]);
  return shaped ? std::optional(date) : std::nullopt;
}

// A header, when there is one, stands on the first line.
std::optional<std::size_t> date_column_of(const Opening& opening) {
  for (std::size_t i = 0; i < opening.lines.size() && i < 2; ++i) {
    if (const auto date = date_column(fields_of(opening.lines[i], ','))) {
      return date;
    }
  }
  return std::nullopt;
}

bool read_row(Readings& readings, const CsvReader& rows, std::size_t date_at) {
  const auto fields = rows.fields();
  if (fields.size() <= date_at + value_after_date) {
    report_fault(readings,
                 rows.line(),
                 1,
                 "a row of " + std::to_string(fields.size()) + " fields",
                 "date, element and value",
                 "complete the row or remove it");
    return false;
  }
  const GhcnElement element = ghcn_element(fields[date_at + element_after_date]);
  if (element == GhcnElement::other) {
    return true;
  }
  const auto date = read_date(fields[date_at], std::nullopt);
  if (!date) {
    report_fault(readings,
                 rows.line(),
                 rows.column(date_at),
                 "'" + printable(fields[date_at]) + "' where the date should be",
                 "a day of the calendar, such as 20240331",
                 "correct the date or remove the row");
    return false;
  }
  const std::size_t value_at = date_at + value_after_date;
  const auto value = read_tenths(fields[value_at]);
  if (!value) {
    report_fault(readings,
                 rows.line(),
                 rows.column(value_at),
                 "'" + printable(fields[value_at]) + "' as a value",
                 "whole tenths of °C, or -9999",
                 "correct it");
    return false;
  }
  const std::size_t quality_at = date_at + quality_after_date;
  const std::string_view quality = quality_at < fields.size() ? fields[quality_at] : "";
  const float sound = unless_flagged(readings, *value, quality, date->date, rows.line());
  add_ghcn_row(readings, element, date->date, sound, rows.line());
  return true;
}

} // namespace

std::vector<std::string> recognise_ghcn_long_csv(const Opening& opening) {
  const auto date = date_column_of(opening);
  if (!date) {
    return {};
  }
  return {std::string("rows hold ") + (*date == 1 ? "station, " : "") +
          "date, element and a whole number: one element and day a row"};
}

Readings read_ghcn_long_csv(const Opening& opening, std::string_view name) {
  const std::size_t date_at = *date_column_of(opening);
  Readings readings;
  readings.file = name;
  readings.unit = unit_name(TemperatureUnit::tenths_of_celsius);
  OneStation station{opening.station};
  CsvReader rows{opening.text, ',', name};
  bool header = !date_column(fields_of(opening.lines[0], ','));
  while (rows.next() && !station.hopeless()) {
    if (std::exchange(header, false)) {
      continue;
    }
    ++readings.rows_read;
    if (date_at == 1 && !station.meet(rows.fields()[0])) {
      continue;
    }
    if (!read_row(readings, rows, date_at)) {
      ++readings.rows_faulty;
    }
  }
  station.refuse_several(name);
  readings.station.id = station.id();
  return readings;
}

} // namespace nightsow::climate
