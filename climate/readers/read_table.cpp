#include "climate/readers/read_table.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/quality_rules.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/row_reader.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::climate {

namespace {

using Fields = std::span<const std::string_view>;

struct Table {
  const TableFormat* format = nullptr;
  PlacedColumns columns;
  std::vector<PlacedRule> rules;
  std::size_t last_needed = 0;
};

struct Course {
  Readings readings;
  OneStation station;
  bool placed = false; ///< the station's place was read
};

// ---- one row --------------------------------------------------------------------------------

bool has_its_fields(const Table& table, Course& course, Fields fields, std::size_t line) {
  const std::size_t names = table.columns.names.size();
  const bool surplus = fields.size() > names &&
                       std::any_of(fields.begin() + static_cast<std::ptrdiff_t>(names),
                                   fields.end(),
                                   [](std::string_view field) { return !trimmed(field).empty(); });
  if (fields.size() > table.last_needed && !surplus) {
    return true;
  }
  report_fault(course.readings,
               line,
               1,
               "a row of " + std::to_string(fields.size()) + " fields",
               "the " + std::to_string(names) + " columns of this format",
               "complete the row or remove it");
  return false;
}

float value_of(const Table& table,
               Course& course,
               const RowReader& rows,
               std::optional<std::size_t> column,
               bool& good) {
  if (!column) {
    return missing_c;
  }
  const std::string_view field = rows.fields()[*column];
  const auto value = read_temperature(field);
  if (!value) {
    report_fault(course.readings,
                 rows.line(),
                 rows.column(*column),
                 "'" + printable(field) + "' in column '" +
                     printable(table.columns.names[*column]) + "'",
                 "a temperature",
                 "correct it, or leave it empty when nothing was read");
    good = false;
    return missing_c;
  }
  return to_celsius(*value, table.format->unit);
}

// A row that holds neither a date nor a temperature tells only of the station.
bool holds_nothing(const Table& table, Fields fields) {
  const auto empty = [&](std::size_t column) { return trimmed(fields[column]).empty(); };
  return std::all_of(table.columns.date.begin(), table.columns.date.end(), empty) &&
         (!table.columns.night || empty(*table.columns.night)) &&
         (!table.columns.day || empty(*table.columns.day));
}

bool read_row(Table& table, Course& course, const RowReader& rows) {
  const Fields fields = rows.fields();
  if (!has_its_fields(table, course, fields, rows.line())) {
    return false;
  }
  if (holds_nothing(table, fields)) {
    return true;
  }
  const auto date = date_of_row(table.columns, fields);
  if (!date) {
    report_fault(course.readings,
                 rows.line(),
                 rows.column(table.columns.date[0]),
                 "'" + printable(fields[table.columns.date[0]]) + "' where the date should be",
                 "a day of the calendar",
                 "correct the date or remove the row");
    return false;
  }
  bool good = true;
  Reading row{*date, missing_c, missing_c, static_cast<std::uint32_t>(rows.line())};
  row.night_c = value_of(table, course, rows, table.columns.night, good);
  row.day_c = value_of(table, course, rows, table.columns.day, good);
  row.night_c = judged(table.rules, course.readings, fields, row, Element::night);
  row.day_c = judged(table.rules, course.readings, fields, row, Element::day);
  if (!std::isnan(row.night_c) || !std::isnan(row.day_c)) {
    course.readings.rows.push_back(row);
  }
  return good;
}

// ---- the station ----------------------------------------------------------------------------

std::string_view field_at(Fields fields, std::optional<std::size_t> column) {
  return column && *column < fields.size() ? trimmed(fields[*column]) : std::string_view{};
}

std::optional<double> number_in(const Table& table, Fields fields, std::string_view column) {
  const auto number = read_decimal(field_at(fields, column_named(table.columns.names, column)));
  return number && *number > -999.0 ? number : std::nullopt;
}

void read_place(const Table& table, Fields fields, StationFacts& station) {
  const TableFormat& format = *table.format;
  if (const auto name = field_at(fields, table.columns.station_name); !name.empty()) {
    station.name = printable(name);
  }
  if (const auto latitude = number_in(table, fields, format.latitude)) {
    station.latitude = latitude;
  }
  if (const auto longitude = number_in(table, fields, format.longitude)) {
    station.longitude = longitude;
  }
  if (const auto elevation = number_in(table, fields, format.elevation)) {
    station.elevation_m = elevation;
  }
}

bool is_of_the_station(const Table& table, Course& course, Fields fields) {
  if (!course.station.meet(field_at(fields, table.columns.station),
                           field_at(fields, table.columns.station_name))) {
    return false;
  }
  if (!course.placed) {
    read_place(table, fields, course.readings.station);
    course.placed = true;
  }
  return true;
}

// ---- the whole table ------------------------------------------------------------------------

[[noreturn]] void refuse_without_columns(const TableFormat& format, std::string_view name) {
  std::string columns(format.night);
  columns += columns.empty() || format.day.empty() ? "" : " or ";
  columns += format.day;
  refuse_file(name,
              0,
              "this is " + std::string(format.name) +
                  ", but no line names dates and daily minima or maxima of it",
              columns.empty() ? "daily minima or maxima" : "the columns " + columns,
              "download the daily minima and maxima, and keep the lines above the rows");
}

// Where each column is a station, the one asked for, or the only one.
std::size_t column_of_station(const PlacedColumns& columns,
                              std::string_view station,
                              std::string_view name) {
  std::string list;
  for (std::size_t i = 1; i < columns.names.size(); ++i) {
    if (columns.names[i] == station) {
      return i;
    }
    list += (i == 1 ? "" : ", ") + columns.names[i];
  }
  if (station.empty() && columns.names.size() == 2) {
    return 1;
  }
  refuse_file(name,
              0,
              "each column of this file is a station: " + printable(list, 400),
              "the number of one of them",
              R"(name it in garden.json, beside the file: "station": ")" + columns.names[1] + '"');
}

void place_value(Table& table, const Opening& opening, std::string_view name, Course& course) {
  PlacedColumns& columns = table.columns;
  if (table.format->column_a_station) {
    columns.value = column_of_station(columns, opening.station, name);
    course.readings.station.id = columns.names[*columns.value];
  }
  if (columns.value) {
    const Element element = element_by_file_name(name);
    (element == Element::night ? columns.night : columns.day) = columns.value;
    course.readings.because.push_back(
        std::string("only the file's name tells that it holds ") +
        (element == Element::night ? "daily minima" : "daily maxima"));
  }
}

Table table_of(const TableFormat& format, const Opening& opening, std::string_view name) {
  auto columns = place_columns(format, opening);
  if (!columns) {
    refuse_without_columns(format, name);
  }
  return {&format, std::move(*columns), {}, 0};
}

std::size_t last_needed(const PlacedColumns& columns) {
  std::size_t last = *std::max_element(columns.date.begin(), columns.date.end());
  for (const auto& column : {columns.night, columns.day}) {
    last = std::max(last, column.value_or(0));
  }
  return last;
}

void read_rows(Table& table, const Opening& opening, Course& course) {
  const std::size_t header = table.columns.header_line;
  RowReader rows{
      opening, std::max<std::size_t>(header, 1), table.format->separator, course.readings.file};
  if (header > 0) {
    (void)rows.next(); // the header itself
  }
  while (rows.next() && !course.station.hopeless()) {
    if (is_comment(*table.format, rows.fields()[0]) ||
        (rows.fields().size() == 1 && trimmed(rows.fields()[0]).empty())) {
      continue;
    }
    ++course.readings.rows_read;
    if (is_of_the_station(table, course, rows.fields()) && !read_row(table, course, rows)) {
      ++course.readings.rows_faulty;
    }
  }
}

} // namespace

Readings read_table(const TableFormat& format, const Opening& opening, std::string_view name) {
  Course course{{}, OneStation{opening.station}, false};
  Readings& readings = course.readings;
  readings.file = name;
  readings.unit = unit_name(format.unit);
  Table table = table_of(format, opening, name);
  const std::size_t above =
      table.columns.header_line > 0 ? table.columns.header_line - 1 : opening.lines.size();
  readings.station = read_preamble(format.preamble, opening, above, readings.because);
  place_value(table, opening, name, course);
  table.rules = place_rules(format, table.columns);
  table.last_needed = last_needed(table.columns);
  read_rows(table, opening, course);
  course.station.refuse_several(name);
  if (!course.station.id().empty()) {
    readings.station.id = course.station.id();
  }
  if (!format.day_is.empty()) {
    readings.because.push_back("its days: " + std::string(format.day_is));
  }
  if (!format.layout.empty() && format.marks[0].empty()) {
    add_note(readings,
             "no line names the columns; they were taken as " + std::string(format.layout) +
                 ", in " + readings.unit,
             "give the file a header if this is wrong");
  }
  say_quality(table.rules, readings);
  return std::move(course.readings);
}

Element element_by_file_name(std::string_view name) {
  const std::string_view file = name.substr(name.find_last_of("/\\") + 1);
  const bool night = find_caseless(file, "min") != std::string_view::npos;
  const bool day = find_caseless(file, "max") != std::string_view::npos;
  if (night == day) {
    refuse_file(name,
                0,
                "nothing in this file, nor its name, tells whether it holds daily minima or maxima",
                "a name with min or max in it, as the archive gives it",
                "give the file the name that it was downloaded under, such as tmin.txt");
  }
  return night ? Element::night : Element::day;
}

} // namespace nightsow::climate
