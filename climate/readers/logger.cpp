#include "climate/readers/logger.hpp"

#include "climate/base/csv.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/clock_stamp.hpp"
#include "climate/readers/logger_row.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/sub_daily.hpp"
#include "climate/readers/table_header.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>
#include <span>
#include <utility>

namespace nightsow::climate {

namespace {

struct Course {
  Readings readings;
  OneStation station;
  std::vector<LoggerRow> rows;     ///< with a time and a temperature
  std::vector<std::size_t> blocks; ///< line of each further header
  // Rows without a time since the last one with it: faults, or, at the end, a footer.
  std::vector<Problem> undated;
  std::size_t undated_rows = 0;
  std::size_t events = 0;
};

std::string quoted(std::string_view text) {
  return "'" + printable(text) + "'";
}

CsvReader rows_below(const Opening& opening, const LoggerHeader& header, std::string_view name) {
  const std::string_view line = opening.lines[header.line - 1];
  const auto offset = static_cast<std::size_t>(line.data() - opening.text.data());
  return {opening.text.substr(offset), header.separator, name};
}

// ---- the whole file -------------------------------------------------------------------------

void report_undated(Course& course) {
  course.readings.rows_faulty += course.undated_rows;
  for (Problem& problem : course.undated) {
    report_fault(course.readings,
                 problem.line,
                 problem.column,
                 std::move(problem.found),
                 std::move(problem.expected),
                 std::move(problem.remedy));
  }
  course.undated.clear();
  course.undated_rows = 0;
}

void take_undated(const LoggerLayout& layout,
                  Course& course,
                  const CsvReader& rows,
                  std::size_t line) {
  const Fields fields = rows.fields();
  if (is_header_row(fields)) {
    course.blocks.push_back(line);
    return;
  }
  ++course.undated_rows;
  if (course.undated.size() < most_faults_listed) {
    const LoggerHeader& header = layout.header;
    const bool minute = !minute_is_sound(header, fields);
    const std::size_t column =
        minute ? *header.minute : header.stamp.value_or(header.year.value_or(0));
    course.undated.push_back(
        {Severity::warning,
         course.readings.file,
         line,
         column < fields.size() ? rows.column(column) : 1,
         quoted(field_at(fields, column)) + " where the " + (minute ? "minute" : "time") +
             " should be",
         minute ? "a minute, 0 to 59" : "a date and a time, such as 2024-03-31 21:30",
         "correct it or remove the row"});
  }
}

void take_row(const LoggerLayout& layout, Course& course, const CsvReader& rows, std::size_t line) {
  const Fields fields = rows.fields();
  const LoggerRow row = understand_row(layout, fields, line);
  if (!row.stamp && !row.instant) {
    take_undated(layout, course, rows, line);
    return;
  }
  report_undated(course);
  if (!course.station.meet(field_at(fields, layout.header.station))) {
    return;
  }
  if (!row.value) {
    ++course.readings.rows_faulty;
    report_fault(course.readings,
                 line,
                 rows.column(layout.channel.column),
                 quoted(field_at(fields, layout.channel.column)) + " in column " +
                     quoted(layout.channel.name),
                 "a temperature",
                 "correct it, or leave it empty when nothing was read");
  } else if (std::isnan(*row.value)) {
    ++course.events;
  } else {
    course.rows.push_back(row);
  }
}

bool is_blank(Fields fields) {
  return std::all_of(
      fields.begin(), fields.end(), [](std::string_view field) { return trimmed(field).empty(); });
}

void read_rows(const Opening& opening, const LoggerLayout& layout, Course& course) {
  CsvReader rows = rows_below(opening, layout.header, course.readings.file);
  (void)rows.next(); // the header itself
  while (rows.next() && !course.station.hopeless()) {
    const Fields fields = rows.fields();
    if (is_blank(fields) || (fields[0].starts_with('#') && fields.size() == 1)) {
      continue;
    }
    ++course.readings.rows_read;
    take_row(layout, course, rows, rows.line() + layout.header.line - 1);
  }
  if (course.rows.empty()) {
    report_undated(course);
  } else if (course.undated_rows > 0) {
    add_note(course.readings,
             std::to_string(course.undated_rows) +
                 " lines behind the last reading hold no time and were taken as a footer",
             "");
  }
  if (course.events > 0) {
    add_note(course.readings,
             std::to_string(course.events) + " rows hold no temperature (events or gaps)",
             "");
  }
}

[[noreturn]] void refuse(const Course& course,
                         std::size_t line,
                         std::string found,
                         std::string expected,
                         std::string remedy) {
  throw InputError({Severity::error,
                    course.readings.file,
                    line,
                    0,
                    std::move(found),
                    std::move(expected),
                    std::move(remedy)});
}

StampOrder order_of(const LoggerLayout& layout, Course& course) {
  std::vector<PlacedStamp> stamps;
  for (const LoggerRow& row : course.rows) {
    if (row.stamp) {
      stamps.push_back({*row.stamp, row.line});
    }
  }
  const std::string name =
      layout.header.stamp ? layout.header.names[*layout.header.stamp] : std::string();
  const StampsOrder found = find_stamp_order(stamps, name, course.readings.file);
  if (!found.because.empty()) {
    course.readings.because.push_back(found.because);
  }
  return found.order;
}

float in_celsius(const LoggerLayout& layout, const LoggerRow& row) {
  const auto unit = row.unit ? row.unit : layout.channel.unit;
  return unit ? to_celsius(*row.value, *unit) : *row.value;
}

// A second block that begins before the first one ends is of another sensor. Rows whose date is no
// day are in neither: a block is what stands between the lines of two headers.
void refuse_blocks_of_one_time(const TimedSeries& series, const Course& course) {
  const std::vector<TimedReading>& all = series.readings;
  for (const std::size_t header : course.blocks) {
    const auto first = std::find_if(
        all.begin(), all.end(), [&](const TimedReading& reading) { return reading.line > header; });
    if (first == all.begin() || first == all.end()) {
      continue;
    }
    if (first->clock > all.front().clock && first->clock < std::prev(first)->clock) {
      refuse(course,
             first->line,
             "a second block of readings for the same time",
             "one block of readings in a file",
             "which sensor is meant? Keep its block only");
    }
  }
}

TimedSeries series_of(const LoggerLayout& layout, Course& course) {
  const StampOrder order = order_of(layout, course);
  TimedSeries series;
  std::set<std::int64_t> offsets;
  std::size_t without = 0;
  for (const LoggerRow& row : course.rows) {
    TimedReading reading{{}, in_celsius(layout, row), static_cast<std::uint32_t>(row.line)};
    if (row.instant) {
      reading.clock = date::local_seconds{row.instant->time_since_epoch()};
      offsets.insert(0);
    } else if (const auto clock = clock_time(*row.stamp, order)) {
      const auto offset = row.stamp->offset ? row.stamp->offset : layout.header.offset;
      without += offset ? 0U : 1U;
      if (offset) {
        offsets.insert(offset->count());
      }
      reading.clock = *clock - offset.value_or(std::chrono::seconds{0});
    } else {
      ++course.readings.rows_faulty;
      report_fault(course.readings,
                   row.line,
                   0,
                   "a date that is no day of the calendar",
                   "a date and a time, such as 2024-03-31 21:30",
                   "correct it or remove the row");
      continue;
    }
    series.readings.push_back(reading);
  }
  if (!offsets.empty() && without > 0) {
    refuse(course,
           0,
           "some times tell their distance from UTC and others do not",
           "times of one clock",
           "write all of them in one way");
  }
  series.in_utc = !offsets.empty();
  // UTC itself is nobody's civil time.
  if (offsets.size() == 1 && *offsets.begin() != 0) {
    series.offset = std::chrono::seconds{*offsets.begin()};
  }
  return series;
}

// Where neither a name nor a column gave the unit the nights and days themselves tell it.
void settle_unit(const LoggerLayout& layout, Course& course) {
  Readings& readings = course.readings;
  if (layout.header.unit || layout.channel.unit) {
    readings.unit = layout.header.unit ? "as its column of units says"
                                       : std::string(unit_name(*layout.channel.unit));
    readings.because.push_back(layout.header.unit
                                   ? "a column names the unit of each reading"
                                   : "the unit stands in the header: " + readings.unit);
    return;
  }
  const ValueSpread spread = spread_of(readings.rows);
  const auto told = unit_by_values(spread);
  if (!told) {
    refuse(course,
           layout.header.line,
           "no unit is named, and the " + describe(spread) + " fit neither °C nor °F",
           "°C or °F",
           "name the unit in the header");
  }
  readings.unit = unit_name(*told);
  add_note(readings,
           "no unit is named; the " + describe(spread) + " were taken as " + readings.unit,
           "name the unit in the header (Temp (°C), Temp (°F)) if this is wrong");
  convert_rows(readings.rows, *told, *told);
}

} // namespace

std::vector<std::string> recognise_logger(const Opening& opening, const ReadingChoices& choices) {
  const auto header = find_logger_header(opening, choices.column);
  if (!header) {
    return {};
  }
  if (!shows_times_of_day(opening, *header)) {
    return {};
  }
  return {"line " + std::to_string(header->line) +
              " names the time and the temperature, and the rows are of times within the day",
          "fields are parted by a " + std::string(separator_name(header->separator))};
}

Readings read_logger(const Opening& opening, std::string_view name, const ReadingChoices& choices) {
  Course course;
  course.readings.file = name;
  course.station = OneStation{choices.station};
  LoggerLayout layout;
  layout.header = *find_logger_header(opening, choices.column);
  layout.channel = choose_channel(layout.header, choices.column, name);
  layout.split_decimals = has_split_decimals(opening, layout.header, layout.channel);
  course.readings.because.push_back("temperatures are those of column " +
                                    quoted(layout.channel.name));
  read_rows(opening, layout, course);
  course.station.refuse_several(name);
  course.readings.station.id = course.station.id();
  TimedSeries series = series_of(layout, course);
  refuse_blocks_of_one_time(series, course);
  add_nights_and_days(std::move(series), choices, course.readings);
  if (!course.readings.rows.empty()) {
    settle_unit(layout, course);
  }
  return std::move(course.readings);
}

} // namespace nightsow::climate
