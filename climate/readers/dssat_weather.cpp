#include "climate/readers/dssat_weather.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/row_reader.hpp"
#include "climate/readers/temperature_unit.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace nightsow::climate {

namespace {

// A column reaches from behind the name before its own to the end of its own.
struct Slot {
  std::string_view name;
  std::size_t from = 0;
  std::size_t end = 0;
};

std::vector<Slot> slots_of(std::string_view header) {
  std::vector<Slot> slots;
  std::size_t from = 0;
  for (std::string_view name : split_at_blanks(header)) {
    const auto end = static_cast<std::size_t>(name.data() - header.data()) + name.size();
    name.remove_prefix(name.starts_with('@') ? 1 : 0);
    if (!name.empty()) {
      slots.push_back({name, from, end});
      from = end;
    }
  }
  return slots;
}

std::optional<Slot> slot_named(const std::vector<Slot>& slots, std::string_view name) {
  const auto found =
      std::find_if(slots.begin(), slots.end(), [&](const Slot& slot) { return slot.name == name; });
  return found == slots.end() ? std::nullopt : std::optional(*found);
}

std::string_view field_in(std::string_view line, const Slot& slot) {
  return slot.from < line.size() ? trimmed(line.substr(slot.from, slot.end - slot.from))
                                 : std::string_view{};
}

struct Columns {
  Slot date;
  std::optional<Slot> night;
  std::optional<Slot> day;
};

std::optional<Columns> columns_in(std::string_view line) {
  if (!line.starts_with('@')) {
    return std::nullopt;
  }
  const std::vector<Slot> slots = slots_of(line);
  const auto date = slot_named(slots, "DATE");
  const auto night = slot_named(slots, "TMIN");
  const auto day = slot_named(slots, "TMAX");
  return date && (night || day) ? std::optional(Columns{*date, night, day}) : std::nullopt;
}

bool is_comment(std::string_view line) {
  return line.starts_with('!') || line.starts_with('*') || line.starts_with('$');
}

// "@ INSI LAT LONG ELEV" above, its values on the next line that is no comment.
void read_place(const Opening& opening, StationFacts& station) {
  std::vector<Slot> slots;
  for (const std::string_view line : opening.lines) {
    if (is_comment(line) || trimmed(line).empty()) {
      continue;
    }
    if (!slots.empty()) {
      const auto number = [&](std::string_view name) {
        const auto slot = slot_named(slots, name);
        const auto value = slot ? read_decimal(field_in(line, *slot)) : std::nullopt;
        return value && *value > -99.0 ? value : std::nullopt;
      };
      if (const auto id = slot_named(slots, "INSI")) {
        station.id = printable(field_in(line, *id));
      }
      station.latitude = number("LAT");
      station.elevation_m = number("ELEV");
      const auto longitude = slot_named(slots, "LONG");
      station.longitude = longitude ? read_decimal(field_in(line, *longitude)) : std::nullopt;
      return;
    }
    if (line.starts_with('@') && slot_named(slots_of(line), "LAT")) {
      slots = slots_of(line);
    }
  }
}

std::optional<Date> date_of(std::string_view field) {
  constexpr int century = 100;
  const auto number = read_whole(field);
  if (!number || (field.size() != 5 && field.size() != 7)) {
    return std::nullopt;
  }
  int year = *number / 1000;
  if (field.size() == 5) {
    year += last_short_year / century * century;
    year -= year > last_short_year ? century : 0;
  }
  return date_in_year(year, *number % 1000);
}

float value_of(Readings& readings,
               std::string_view line,
               const std::optional<Slot>& slot,
               std::size_t number,
               bool& good) {
  if (!slot) {
    return missing_c;
  }
  const std::string_view field = field_in(line, *slot);
  const auto value = read_temperature(field);
  if (!value) {
    report_fault(readings,
                 number,
                 slot->from + 1,
                 "'" + printable(field) + "' under " + std::string(slot->name),
                 "a temperature that ends where the column's name ends",
                 "correct it, or write -99 when nothing was read");
    good = false;
  }
  return value ? to_celsius(*value, TemperatureUnit::celsius) : missing_c;
}

bool read_row(Readings& readings,
              const Columns& columns,
              std::string_view line,
              std::size_t number,
              bool& short_year) {
  const std::string_view field = field_in(line, columns.date);
  const auto date = date_of(field);
  if (!date) {
    report_fault(readings,
                 number,
                 1,
                 "'" + printable(field) + "' where the date should be",
                 "a year and the day of the year, such as 2024091 or 24091",
                 "correct the date or remove the row");
    return false;
  }
  short_year = short_year || field.size() == 5;
  bool good = true;
  Reading row{*date, missing_c, missing_c, static_cast<std::uint32_t>(number)};
  row.night_c = value_of(readings, line, columns.night, number, good);
  row.day_c = value_of(readings, line, columns.day, number, good);
  if (!std::isnan(row.night_c) || !std::isnan(row.day_c)) {
    readings.rows.push_back(row);
  }
  return good;
}

} // namespace

std::vector<std::string> recognise_dssat_weather(const Opening& opening) {
  const auto header =
      std::find_if(opening.lines.begin(), opening.lines.end(), [](std::string_view line) {
        return columns_in(line).has_value();
      });
  if (header == opening.lines.end()) {
    return {};
  }
  return {"line " + std::to_string(header - opening.lines.begin() + 1) +
          " begins with @ and names DATE and TMIN or TMAX, with the values aligned under them"};
}

Readings read_dssat_weather(const Opening& opening, std::string_view name) {
  Readings readings;
  readings.file = name;
  readings.unit = unit_name(TemperatureUnit::celsius);
  read_place(opening, readings.station);
  std::optional<Columns> columns;
  bool short_year = false;
  LineReader lines{opening.text};
  while (lines.next()) {
    const std::string_view line = lines.line();
    if (line.starts_with('@')) { // a file may name its columns anew
      columns = columns_in(line);
    } else if (columns && !is_comment(line) && !trimmed(line).empty()) {
      ++readings.rows_read;
      if (!read_row(readings, *columns, line, lines.number(), short_year)) {
        ++readings.rows_faulty;
      }
    }
  }
  if (short_year) {
    add_note(readings,
             "years of two digits were taken as " + std::to_string(last_short_year - 99) + " to " +
                 std::to_string(last_short_year),
             "");
  }
  return readings;
}

} // namespace nightsow::climate
