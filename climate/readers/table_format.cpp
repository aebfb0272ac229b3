#include "climate/readers/table_format.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/row_reader.hpp"
#include "climate/readers/table_header.hpp"

#include <algorithm>

namespace nightsow::climate {

namespace {

bool equal_caseless(std::string_view a, std::string_view b) {
  return a.size() == b.size() && find_caseless(a, b) == 0;
}

bool fits(std::string_view name, std::string_view pattern) {
  if (pattern.ends_with('*')) {
    pattern.remove_suffix(1);
    return equal_caseless(name.substr(0, pattern.size()), pattern);
  }
  return equal_caseless(name, pattern);
}

bool fits_one(std::string_view name, std::string_view patterns) {
  while (!patterns.empty()) {
    const std::size_t bar = std::min(patterns.find('|'), patterns.size());
    if (fits(name, patterns.substr(0, bar))) {
      return true;
    }
    patterns.remove_prefix(std::min(bar + 1, patterns.size()));
  }
  return false;
}

// ---- finding the columns --------------------------------------------------------------------

bool place_dates(const TableFormat& format, PlacedColumns& columns) {
  for (const DateColumns& dates : format.dates) {
    columns.form = dates.form;
    columns.date.clear();
    bool all = dates.form != DateForm::none;
    for (const std::string_view name : dates.names) {
      if (name.empty()) {
        continue;
      }
      const auto column = column_named(columns.names, name);
      all = all && column;
      if (column) {
        columns.date.push_back(*column);
      }
    }
    if (all) {
      return true;
    }
  }
  return false;
}

bool is_number_of_station(std::string_view name) {
  return !name.empty() &&
         std::all_of(name.begin(), name.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool place_temperatures(const TableFormat& format, PlacedColumns& columns) {
  if (format.column_a_station) {
    return columns.names.size() > 1 &&
           std::all_of(columns.names.begin() + 1, columns.names.end(), is_number_of_station);
  }
  columns.night = column_named(columns.names, format.night);
  columns.day = column_named(columns.names, format.day);
  if (columns.names.size() == 2) { // a date and nothing but that value
    columns.value = column_named(columns.names, format.value);
  }
  return columns.night || columns.day || columns.value;
}

std::optional<PlacedColumns> place_in(const TableFormat& format,
                                      std::vector<std::string> names,
                                      std::size_t line) {
  PlacedColumns columns;
  columns.header_line = line;
  columns.names = std::move(names);
  if (!place_dates(format, columns) || !place_temperatures(format, columns)) {
    return std::nullopt;
  }
  columns.station = column_named(columns.names, format.station);
  columns.station_name = column_named(columns.names, format.station_name);
  return columns;
}

// ---- dates ----------------------------------------------------------------------------------

std::optional<Date> date_of_day_number(std::string_view year_field, std::string_view day_field) {
  const auto year = read_whole(year_field);
  const auto day = read_whole(day_field);
  return year && day ? date_in_year(*year, *day) : std::nullopt;
}

// New Zealand reads its instruments at 9 am local time: 2100 UTC of the day before, 2000 under
// summer time. The local date of that moment is the date of the day.
std::optional<Date> local_date_of_utc_end(std::string_view field) {
  constexpr int new_zealand_hours = 12;
  constexpr int hours_a_day = 24;
  const std::string_view text = trimmed(field);
  const std::size_t colon = std::min(text.find(':'), text.size());
  const auto date = read_date(text.substr(0, colon), std::nullopt);
  const auto clock = read_whole(text.substr(std::min(colon + 1, text.size())));
  if (!date || !clock || *clock < 0 || *clock >= hours_a_day * 100) {
    return std::nullopt;
  }
  const bool next_day = *clock / 100 + new_zealand_hours >= hours_a_day;
  return date->date + Days{next_day ? 1 : 0};
}

// ---- recognising a table without a header ---------------------------------------------------

float value_at(std::span<const std::string_view> fields, std::optional<std::size_t> column) {
  const float value = column ? read_temperature(fields[*column]).value_or(missing_c) : missing_c;
  return is_missing_code(value, TemperatureUnit::tenths_of_celsius) ||
                 is_missing_code(value, TemperatureUnit::celsius)
             ? missing_c
             : value;
}

// A number or nothing in each column, a date, and the night not above the day: then the row's
// numbers as they stand there.
std::optional<Reading> shaped_row(const PlacedColumns& columns,
                                  std::span<const std::string_view> fields) {
  const bool numbers = fields.size() == columns.names.size() &&
                       std::all_of(fields.begin() + 1, fields.end(), [](std::string_view field) {
                         return read_temperature(field).has_value();
                       });
  const auto date = numbers ? date_of_row(columns, fields) : std::nullopt;
  if (!date) {
    return std::nullopt;
  }
  const Reading row{*date, value_at(fields, columns.night), value_at(fields, columns.day), 0};
  return row.night_c > row.day_c ? std::nullopt : std::optional(row);
}

// Nothing but the shape of its rows tells such a file, so nearly all of them must have it, and
// their values must fit the format's unit.
bool rows_have_shape(const TableFormat& format, const Opening& opening) {
  constexpr std::size_t one_in = 10;
  const auto columns = place_columns(format, opening);
  std::vector<Reading> rows;
  std::size_t others = 0;
  for (const std::string_view line : opening.lines) {
    if (trimmed(line).empty() || is_comment(format, line)) {
      continue;
    }
    const bool blanks = format.separator == runs_of_blanks;
    const auto parted = blanks ? std::vector<std::string>{} : fields_of(line, format.separator);
    const auto fields = blanks ? split_at_blanks(line)
                               : std::vector<std::string_view>(parted.begin(), parted.end());
    if (const auto row = shaped_row(*columns, fields)) {
      rows.push_back(*row);
    } else {
      ++others;
    }
  }
  return rows.size() > others * one_in && unit_by_values(spread_of(rows)) == format.unit;
}

bool has_marks(const TableFormat& format, const Opening& opening) {
  return std::all_of(format.marks.begin(), format.marks.end(), [&](std::string_view mark) {
    return mark.empty() ||
           std::any_of(opening.lines.begin(), opening.lines.end(), [&](std::string_view line) {
             return line.find(mark) != std::string_view::npos;
           });
  });
}

std::string describe_columns(const PlacedColumns& columns) {
  const auto name = [&](std::optional<std::size_t> column) {
    return column ? "'" + printable(columns.names[*column]) + "'" : std::string("not there");
  };
  return "line " + std::to_string(columns.header_line) + " names the columns: minima " +
         name(columns.night) + ", maxima " + name(columns.day);
}

} // namespace

bool is_comment(const TableFormat& format, std::string_view row) {
  const std::string_view begins = trimmed(row);
  return !begins.empty() && format.comments.find(begins.front()) != std::string_view::npos;
}

std::vector<std::string> names_in(const TableFormat& format, std::string_view line) {
  line.remove_prefix(std::min(line.find_first_not_of("#@ "), line.size()));
  if (format.separator != runs_of_blanks) {
    return fields_of(line, format.separator);
  }
  const std::vector<std::string_view> fields = split_at_blanks(line);
  return {fields.begin(), fields.end()};
}

std::optional<std::size_t> column_named(std::span<const std::string> names,
                                        std::string_view wanted) {
  const auto found = std::find_if(
      names.begin(), names.end(), [&](const std::string& name) { return fits_one(name, wanted); });
  if (found == names.end()) {
    return std::nullopt;
  }
  return static_cast<std::size_t>(found - names.begin());
}

std::optional<PlacedColumns> place_columns(const TableFormat& format, const Opening& opening) {
  if (!format.layout.empty()) {
    return place_in(format, fields_of(format.layout, ','), 0);
  }
  for (std::size_t i = 0; i < opening.lines.size(); ++i) {
    if (auto columns = place_in(format, names_in(format, opening.lines[i]), i + 1)) {
      return columns;
    }
  }
  return std::nullopt;
}

std::optional<Date> date_of_row(const PlacedColumns& columns,
                                std::span<const std::string_view> fields) {
  const auto field = [&](std::size_t i) { return fields[columns.date[i]]; };
  switch (columns.form) {
  case DateForm::one_column:
    if (const auto date = read_date(field(0), std::nullopt)) {
      return date->date;
    }
    break;
  case DateForm::year_month_day:
    return read_date(field(0), field(1), field(2));
  case DateForm::year_day_of_year:
    return date_of_day_number(field(0), field(1));
  case DateForm::utc_day_end:
    return local_date_of_utc_end(field(0));
  case DateForm::none:
    break;
  }
  return std::nullopt;
}

std::vector<std::string> recognise_table(const TableFormat& format, const Opening& opening) {
  if (!has_marks(format, opening)) {
    return {};
  }
  const bool marked = !format.marks[0].empty();
  const auto columns = place_columns(format, opening);
  if (!marked && (!columns || (!format.layout.empty() && !rows_have_shape(format, opening)))) {
    return {};
  }
  std::vector<std::string> because;
  if (marked) {
    because.push_back("one of the first lines holds '" + printable(format.marks[0]) + "'");
  }
  if (columns && columns->header_line > 0 && (columns->night || columns->day)) {
    because.push_back(describe_columns(*columns));
  } else if (!format.layout.empty()) {
    because.push_back("rows hold, by their places, " + std::string(format.layout));
  } else if (!marked) {
    because.push_back("line " + std::to_string(columns->header_line) + " is the header of one");
  }
  return because;
}

} // namespace nightsow::climate
