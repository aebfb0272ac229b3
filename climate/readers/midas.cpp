#include "climate/readers/midas.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/preamble.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/table_format.hpp"
#include "climate/readers/temperature_unit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <span>
#include <utility>

namespace nightsow::climate {

namespace {

constexpr std::string_view first_mark = "Conventions,G,BADC-CSV";

constexpr std::array preamble{PreambleFact{"src_id,G", StationFact::id},
                              PreambleFact{"observation_station,G", StationFact::name},
                              PreambleFact{"location,G", StationFact::latitude},
                              PreambleFact{"height,G", StationFact::elevation}};

using Fields = std::span<const std::string_view>;

struct Columns {
  std::size_t end = 0;
  std::size_t hours = 0;
  std::optional<std::size_t> night;
  std::optional<std::size_t> day;
  std::optional<std::size_t> version;
  std::optional<std::size_t> station;
};

// What one row says of its hours.
struct Slot {
  float night_c = missing_c;
  float day_c = missing_c;
  int version = -1; ///< of the archive's checking; -1: no row yet
  std::uint32_t line = 0;
};

struct MidasDay {
  Slot whole;
  Slot to_evening; ///< from 9 to 21 of the day before
  Slot to_morning; ///< from 21 to 9
};

struct Course {
  Readings readings;
  OneStation station;
  std::map<Date, MidasDay> days;
  std::size_t other_hours = 0;
  std::size_t alone = 0;
};

// ---- the header -----------------------------------------------------------------------------

// The text behind the line "data", and how many lines come before it.
struct Body {
  std::string_view text;
  std::size_t lines_before = 0;
};

Body body_of(std::string_view text) {
  LineReader lines{text};
  while (lines.next()) {
    if (trimmed(lines.line()) == "data" && lines.next()) {
      const auto offset = static_cast<std::size_t>(lines.line().data() - text.data());
      return {text.substr(offset), lines.number() - 1};
    }
  }
  return {};
}

std::optional<Columns> columns_in(Fields fields) {
  const std::vector<std::string> names(fields.begin(), fields.end());
  const auto end = column_named(names, "ob_end_time");
  const auto hours = column_named(names, "ob_hour_count");
  Columns columns;
  columns.night = column_named(names, "min_air_temp");
  columns.day = column_named(names, "max_air_temp");
  columns.version = column_named(names, "version_num");
  columns.station = column_named(names, "src_id");
  if (!columns.station) {
    columns.station = column_named(names, "id");
  }
  if (!end || !hours || (!columns.night && !columns.day)) {
    return std::nullopt;
  }
  columns.end = *end;
  columns.hours = *hours;
  return columns;
}

// ---- one row --------------------------------------------------------------------------------

std::string_view field_at(Fields fields, std::optional<std::size_t> column) {
  return column && *column < fields.size() ? fields[*column] : std::string_view{};
}

// The hours that the row covers; nothing when it is of neither 12 nor 24.
Slot* slot_of(Course& course, const DateField& end, int hours) {
  constexpr int noon = 12;
  if (hours == 24) {
    return &course.days[end.date].whole;
  }
  const auto clock = read_whole(end.time.substr(std::min<std::size_t>(1, end.time.size()), 2));
  if (hours != 12 || !clock) {
    return nullptr;
  }
  return *clock < noon ? &course.days[end.date].to_morning
                       : &course.days[end.date + Days{1}].to_evening;
}

float value_of(Course& course,
               Fields fields,
               std::optional<std::size_t> column,
               std::size_t line,
               bool& good) {
  const std::string_view field = field_at(fields, column);
  const auto value = read_temperature(field);
  if (!value) {
    report_fault(course.readings,
                 line,
                 0,
                 "'" + printable(field) + "' as a temperature",
                 "a number, or NA",
                 "correct it");
    good = false;
  }
  return value ? to_celsius(*value, TemperatureUnit::celsius) : missing_c;
}

bool read_row(const Columns& columns, Course& course, Fields fields, std::size_t line) {
  const auto end = read_date(field_at(fields, columns.end), std::nullopt);
  const auto hours = read_whole(field_at(fields, columns.hours));
  if (!end || !hours) {
    report_fault(course.readings,
                 line,
                 1,
                 "'" + printable(field_at(fields, columns.end)) + "' and '" +
                     printable(field_at(fields, columns.hours)) +
                     "' where the end and the number of hours should be",
                 "such as 2024-03-31 09:00:00 and 24",
                 "correct the row or remove it");
    return false;
  }
  Slot* const slot = slot_of(course, *end, *hours);
  if (slot == nullptr) {
    ++course.other_hours;
    return true;
  }
  Slot row{missing_c,
           missing_c,
           std::max(0, read_whole(field_at(fields, columns.version)).value_or(0)),
           static_cast<std::uint32_t>(line)};
  bool good = true;
  row.night_c = value_of(course, fields, columns.night, line, good);
  row.day_c = value_of(course, fields, columns.day, line, good);
  if (row.version > slot->version) { // of two versions of a reading the one that was checked later
    *slot = row;
  }
  return good;
}

// ---- joining --------------------------------------------------------------------------------

float joined(Course& course, float whole, float evening, float morning, bool lowest) {
  if (!std::isnan(whole)) {
    return whole;
  }
  if (!std::isnan(evening) && !std::isnan(morning)) {
    return lowest ? std::min(evening, morning) : std::max(evening, morning);
  }
  course.alone += std::isnan(evening) && std::isnan(morning) ? 0U : 1U;
  return missing_c;
}

void join_days(Course& course) {
  for (const auto& [date, day] : course.days) {
    Reading row{
        date,
        joined(course, day.whole.night_c, day.to_evening.night_c, day.to_morning.night_c, true),
        joined(course, day.whole.day_c, day.to_evening.day_c, day.to_morning.day_c, false),
        std::max({day.whole.line, day.to_evening.line, day.to_morning.line})};
    if (!std::isnan(row.night_c) || !std::isnan(row.day_c)) {
      course.readings.rows.push_back(row);
    }
  }
}

void say_what_was_left(Course& course) {
  if (course.alone > 0) {
    add_note(course.readings,
             std::to_string(course.alone) +
                 " values of 12 hours stand without the other half of their day: not used",
             "");
  }
  if (course.other_hours > 0) {
    add_note(course.readings,
             std::to_string(course.other_hours) + " rows are of neither 12 nor 24 hours: not used",
             "");
  }
  course.readings.because.emplace_back("its days: 9 to 9 h, dated at their end; rows of 12 hours "
                                       "are joined; columns of quality codes are not judged");
}

void read_rows(const Body& body, CsvReader& rows, const Columns& columns, Course& course) {
  while (rows.next() && !course.station.hopeless()) {
    if (trimmed(rows.fields()[0]) == "end data") {
      break;
    }
    ++course.readings.rows_read;
    if (course.station.meet(field_at(rows.fields(), columns.station)) &&
        !read_row(columns, course, rows.fields(), body.lines_before + rows.line())) {
      ++course.readings.rows_faulty;
    }
  }
}

} // namespace

std::vector<std::string> recognise_midas(const Opening& opening) {
  if (opening.lines.empty() || !opening.lines[0].starts_with(first_mark)) {
    return {};
  }
  return {"line 1 says BADC-CSV"};
}

Readings read_midas(const Opening& opening, std::string_view name) {
  Course course{{}, OneStation{opening.station}, {}};
  Readings& readings = course.readings;
  readings.file = name;
  readings.unit = unit_name(TemperatureUnit::celsius);
  readings.station = read_preamble(preamble, opening, opening.lines.size(), readings.because);
  const Body body = body_of(opening.text);
  CsvReader rows{body.text, ',', name};
  const auto columns = rows.next() ? columns_in(rows.fields()) : std::nullopt;
  if (!columns) {
    throw InputError({Severity::error,
                      readings.file,
                      body.lines_before + 1,
                      0,
                      "no line \"data\" followed by the columns of daily temperatures",
                      "ob_end_time, ob_hour_count, and min_air_temp or max_air_temp",
                      "download the daily temperatures, whole files"});
  }
  read_rows(body, rows, *columns, course);
  course.station.refuse_several(name);
  if (!course.station.id().empty()) {
    readings.station.id = course.station.id();
  }
  join_days(course);
  say_what_was_left(course);
  return std::move(course.readings);
}

} // namespace nightsow::climate
