#include "climate/readers/daily_table.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/much_memory.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/day_order.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/plain_rows.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/table_header.hpp"

#include <algorithm>
#include <optional>
#include <span>
#include <utility>

namespace nightsow::climate {

namespace {

// What the rows of one file are read with.
struct Table {
  TableHeader header;
  std::optional<DayOrder> order;
  std::size_t last_needed = 0; ///< the last column that must be there
  std::optional<std::size_t> station;
};

// What turns up while they are read.
struct Course {
  Readings readings;
  OneStation station;
  std::string time; ///< the first row's time of day; only its beginning matters
  std::size_t time_line = 0;
};

using Fields = std::span<const std::string_view>;

std::string quoted(std::string_view text) {
  return "'" + printable(text) + "'";
}

CsvReader rows_below(const Opening& opening, const TableHeader& header, std::string_view name) {
  const std::string_view line = opening.lines[header.line - 1];
  const auto offset = static_cast<std::size_t>(line.data() - opening.text.data());
  return {opening.text.substr(offset), header.separator, name};
}

// ---- one row --------------------------------------------------------------------------------

std::optional<Date> date_of_row(const Table& table,
                                Course& course,
                                Fields fields,
                                std::size_t line) {
  if (!table.header.date) {
    const auto& [year, month, day] = *table.header.year_month_day;
    return read_date(fields[year], fields[month], fields[day]);
  }
  const auto field = read_date(fields[*table.header.date], table.order);
  if (!field) {
    return std::nullopt;
  }
  const std::string_view time = field->time.substr(0, 6); // "T00:00"; seconds and zones vary
  if (course.time_line == 0) {
    course.time = time;
    course.time_line = line;
  } else if (time != course.time) {
    refuse_file(course.readings.file,
                line,
                "a row for " + quoted(time) + ", while line " + std::to_string(course.time_line) +
                    " has " + quoted(course.time) + ": readings within the day",
                "one row a day",
                "bring a file of daily minima and maxima");
  }
  return field->date;
}

std::string date_as_found(const Table& table, Fields fields) {
  if (table.header.date) {
    return quoted(fields[*table.header.date]);
  }
  const auto& [year, month, day] = *table.header.year_month_day;
  return quoted(fields[year]) + ", " + quoted(fields[month]) + ", " + quoted(fields[day]);
}

// NaN for a missing or unreadable value; `good` becomes false for the latter.
float value_of(const Table& table,
               Course& course,
               const CsvReader& rows,
               std::optional<std::size_t> column,
               std::size_t line,
               bool& good) {
  if (!column) {
    return missing_c;
  }
  const std::string_view field = rows.fields()[*column];
  const auto value = read_temperature(field);
  if (!value) {
    report_fault(course.readings,
                 line,
                 rows.column(*column),
                 quoted(field) + " in column " + quoted(table.header.names[*column]),
                 "a temperature",
                 "correct it, or leave it empty when nothing was read");
    good = false;
  }
  return value.value_or(missing_c);
}

// Too few fields, or more than the header has: then nothing in the row can be trusted to stand in
// its column (an unquoted decimal comma makes two fields of one).
bool has_its_fields(const Table& table, Course& course, Fields fields, std::size_t line) {
  const std::size_t names = table.header.names.size();
  const bool enough = fields.size() > table.last_needed;
  const bool surplus = fields.size() > names &&
                       std::any_of(fields.begin() + static_cast<std::ptrdiff_t>(names),
                                   fields.end(),
                                   [](std::string_view field) { return !trimmed(field).empty(); });
  if (enough && !surplus) {
    return true;
  }
  report_fault(course.readings,
               line,
               1,
               "a row of " + std::to_string(fields.size()) + " fields",
               "the " + std::to_string(names) + " columns of the header",
               surplus ? "put decimal commas in quotes, or part the fields by semicolons"
                       : "complete the row or remove it");
  return false;
}

bool read_row(const Table& table, Course& course, const CsvReader& rows, std::size_t line) {
  const Fields fields = rows.fields();
  if (!has_its_fields(table, course, fields, line)) {
    return false;
  }
  const auto date = date_of_row(table, course, fields, line);
  if (!date) {
    const std::size_t column =
        table.header.date ? *table.header.date : (*table.header.year_month_day)[0];
    report_fault(course.readings,
                 line,
                 rows.column(column),
                 date_as_found(table, fields) + " where the date should be",
                 "a day of the calendar, such as 2024-03-31",
                 "correct the date or remove the row");
    return false;
  }
  bool good = true;
  Reading row{*date, missing_c, missing_c, static_cast<std::uint32_t>(line)};
  row.night_c = value_of(table, course, rows, table.header.night, line, good);
  row.day_c = value_of(table, course, rows, table.header.day, line, good);
  course.readings.rows.push_back(row);
  return good;
}

// ---- the whole table ------------------------------------------------------------------------

bool is_comment(Fields fields) {
  return fields[0].starts_with('#') || (fields.size() == 1 && trimmed(fields[0]).empty());
}

constexpr std::size_t shortest_row = 10; // "20240331,5"

// Rows are about as long as the first one; memory taken once is cheaper than memory taken anew.
void reserve_rows(const Opening& opening, const TableHeader& header, Readings& readings) {
  if (header.line < opening.lines.size()) {
    const std::size_t length = std::max(opening.lines[header.line].size(), shortest_row);
    reserve_much(readings.rows, opening.text.size() / length + 1);
  }
}

// Where rows may be plain, how; tables that mix stations or spread the date over columns are read
// field by field.
std::optional<PlainLayout> plain_layout(const Table& table) {
  if (!table.header.date || table.station) {
    return std::nullopt;
  }
  return PlainLayout{table.header.separator,
                     table.header.names.size(),
                     *table.header.date,
                     table.header.night,
                     table.header.day};
}

void read_rows(const Opening& opening, const Table& table, Course& course) {
  CsvReader rows = rows_below(opening, table.header, course.readings.file);
  (void)rows.next(); // the header itself
  reserve_rows(opening, table.header, course.readings);
  PlainRows plain{plain_layout(table)};
  while (rows.next() && !course.station.hopeless()) {
    if (is_comment(rows.fields())) {
      continue;
    }
    ++course.readings.rows_read;
    const Fields fields = rows.fields();
    if (table.station && *table.station < fields.size() &&
        !course.station.meet(fields[*table.station])) {
      continue;
    }
    if (!read_row(table, course, rows, rows.line() + table.header.line - 1)) {
      ++course.readings.rows_faulty;
    }
    if (course.time.empty()) {
      plain.read(rows, rows.next_line() + table.header.line - 1, course.readings);
    }
  }
}

std::optional<double> number_in(const std::vector<std::string>& fields,
                                std::optional<std::size_t> column) {
  return column && *column < fields.size() ? read_decimal(fields[*column]) : std::nullopt;
}

// The place stands in columns of the table, or, where a preamble names it, in two lines above.
void read_place(const Opening& opening, const TableHeader& table, StationFacts& station) {
  for (std::size_t i = 0; i < table.line; ++i) {
    const TableHeader names = read_header(opening.lines[i], i + 1, table.separator);
    const auto latitude = names.column_of(ColumnMeaning::latitude);
    if (!latitude || i + 1 >= opening.lines.size()) {
      continue;
    }
    const std::vector<std::string> fields = fields_of(opening.lines[i + 1], table.separator);
    station.latitude = number_in(fields, latitude);
    station.longitude = number_in(fields, names.column_of(ColumnMeaning::longitude));
    station.elevation_m = number_in(fields, names.column_of(ColumnMeaning::elevation));
    return;
  }
}

std::optional<TemperatureUnit> unit_in_name(const TableHeader& header,
                                            std::optional<std::size_t> column) {
  return column ? header.columns[*column].unit : std::nullopt;
}

struct Units {
  TemperatureUnit night = TemperatureUnit::celsius;
  TemperatureUnit day = TemperatureUnit::celsius;
};

// A unit named for one element holds for the other, too, unless that has its own.
std::optional<Units> units_in_names(const TableHeader& header) {
  const auto night = unit_in_name(header, header.night);
  const auto day = unit_in_name(header, header.day);
  if (!night && !day) {
    return std::nullopt;
  }
  return Units{night ? *night : *day, day ? *day : *night};
}

std::string name_units(const Units& units) {
  std::string names(unit_name(units.night));
  if (units.day != units.night) {
    names += " and " + std::string(unit_name(units.day));
  }
  return names;
}

// Names win where they speak, even against the values, but then that is said.
void take_named_units(const Units& named,
                      const ValueSpread& spread,
                      std::size_t line,
                      Readings& readings) {
  readings.unit = name_units(named);
  readings.because.push_back("the unit stands in the header: " + readings.unit);
  if (readings.unit == "°C" && unit_by_values(spread) != TemperatureUnit::celsius) {
    readings.problems.push_back(
        {Severity::warning,
         readings.file,
         line,
         0,
         "the header says °C, which the " + describe(spread) + " do not fit",
         "",
         "check the unit, and correct the header if it is wrong"});
  }
}

Units take_units_of_values(const ValueSpread& spread, std::size_t line, Readings& readings) {
  const auto told = unit_by_values(spread);
  if (!told) {
    refuse_file(readings.file,
                line,
                "no unit is named, and the " + describe(spread) + " fit neither °C nor °F",
                "°C, °F or whole tenths of °C",
                "convert the values, or name the unit in the header");
  }
  readings.unit = unit_name(*told);
  if (spread.values > 0) {
    const std::string guess =
        "no unit is named; the " + describe(spread) + " were taken as " + readings.unit;
    readings.because.push_back(guess);
    add_note(readings, guess, "name the unit in the header (tmin_c, tmin_f) if this is wrong");
  }
  return {*told, *told};
}

void settle_units(const TableHeader& header, Readings& readings) {
  const ValueSpread spread = spread_of(readings.rows);
  auto units = units_in_names(header);
  if (units) {
    take_named_units(*units, spread, header.line, readings);
  } else {
    units = take_units_of_values(spread, header.line, readings);
  }
  convert_rows(readings.rows, units->night, units->day);
}

Table table_of(const TableHeader& header) {
  Table table{header, std::nullopt, 0, header.column_of(ColumnMeaning::station_id)};
  if (!table.station) {
    table.station = header.column_of(ColumnMeaning::station_name);
  }
  std::vector<std::size_t> needed;
  if (header.date) {
    needed.push_back(*header.date);
  } else {
    needed.assign(header.year_month_day->begin(), header.year_month_day->end());
  }
  for (const auto& column : {header.night, header.day}) {
    if (column) {
      needed.push_back(*column);
    }
  }
  table.last_needed = *std::max_element(needed.begin(), needed.end());
  return table;
}

} // namespace

std::vector<std::string> recognise_daily_table(const Opening& opening) {
  const auto header = find_header(opening);
  if (!header) {
    return {};
  }
  std::string columns = "line " + std::to_string(header->line) + " names the columns:";
  for (std::size_t i = 0; i < header->names.size(); ++i) {
    const bool used =
        header->date == i || header->night == i || header->day == i ||
        (header->year_month_day &&
         std::count(header->year_month_day->begin(), header->year_month_day->end(), i) > 0);
    if (used) {
      columns += (columns.back() == ':' ? " " : ", ") + quoted(header->names[i]) + " is " +
                 std::string(meaning_name(header->columns[i].meaning));
    }
  }
  return {columns, "fields are parted by a " + std::string(separator_name(header->separator))};
}

Readings read_daily_table(const Opening& opening, std::string_view name) {
  const auto header = find_header(opening);
  Course course;
  course.station = OneStation{opening.station};
  course.readings.file = name;
  if (!header->rivals.empty()) {
    std::string rivals;
    for (const std::string& rival : header->rivals) {
      rivals += (rivals.empty() ? "" : " and ") + quoted(rival);
    }
    refuse_file(name,
                header->line,
                "the columns " + rivals + " hold the same element",
                "one column of minima and one of maxima",
                "remove or rename the one not meant");
  }
  Table table = table_of(*header);
  if (header->date) {
    const FoundOrder found = find_day_order(rows_below(opening, *header, name),
                                            *header->date,
                                            header->names[*header->date],
                                            header->line,
                                            name);
    table.order = found.order;
    if (!found.because.empty()) {
      course.readings.because.push_back(found.because);
    }
  }
  read_rows(opening, table, course);
  course.station.refuse_several(name);
  read_place(opening, *header, course.readings.station);
  course.readings.station.id = course.station.id();
  settle_units(*header, course.readings);
  if (!course.time.empty()) {
    course.readings.because.push_back("every date carries the time of day " + quoted(course.time) +
                                      ", which is not used");
  }
  return std::move(course.readings);
}

} // namespace nightsow::climate
