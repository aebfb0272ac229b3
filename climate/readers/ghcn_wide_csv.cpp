#include "climate/readers/ghcn_wide_csv.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/ghcn_values.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/table_header.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace nightsow::climate {

namespace {

struct Element {
  std::optional<std::size_t> value;
  std::optional<std::size_t> attributes;
};

struct WideHeader {
  std::size_t station = 0;
  std::size_t date = 0;
  std::optional<std::size_t> name;
  std::optional<std::size_t> latitude;
  std::optional<std::size_t> longitude;
  std::optional<std::size_t> elevation;
  Element night;
  Element day;
  /// The archive's own files put the date right behind the station, the order form the name.
  bool archive = false;
};

using Fields = std::span<const std::string_view>;

std::optional<std::size_t> place_of(const std::vector<std::string>& names, std::string_view name) {
  const auto found = std::find(names.begin(), names.end(), name);
  if (found == names.end()) {
    return std::nullopt;
  }
  return static_cast<std::size_t>(found - names.begin());
}

std::optional<WideHeader> wide_header(const Opening& opening) {
  if (opening.lines.empty()) {
    return std::nullopt;
  }
  const std::vector<std::string> names = fields_of(opening.lines[0], ',');
  const auto station = place_of(names, "STATION");
  const auto date = place_of(names, "DATE");
  if (!station || !date) {
    return std::nullopt;
  }
  WideHeader header;
  header.station = *station;
  header.date = *date;
  header.name = place_of(names, "NAME");
  header.latitude = place_of(names, "LATITUDE");
  header.longitude = place_of(names, "LONGITUDE");
  header.elevation = place_of(names, "ELEVATION");
  header.night = {place_of(names, "TMIN"), place_of(names, "TMIN_ATTRIBUTES")};
  header.day = {place_of(names, "TMAX"), place_of(names, "TMAX_ATTRIBUTES")};
  const bool attributes = header.night.attributes || header.day.attributes;
  const bool order_form = header.name == *station + 1;
  header.archive = *date == *station + 1 && attributes;
  const bool elements = header.night.value || header.day.value;
  return elements && (header.archive || order_form) ? std::optional(header) : std::nullopt;
}

// "M,Q,S" or "M,Q,S,TIME": the second of them.
std::string_view quality_in(std::string_view attributes) {
  const std::size_t first = attributes.find(',');
  if (first == std::string_view::npos) {
    return {};
  }
  const std::string_view rest = attributes.substr(first + 1);
  return rest.substr(0, rest.find(','));
}

// The value in the file's unit; NaN when it is missing, flagged or unreadable, `good` becomes false
// for the last.
float take_element(
    Readings& readings, const CsvReader& rows, const Element& element, Date date, bool& good) {
  const Fields fields = rows.fields();
  if (!element.value || *element.value >= fields.size()) {
    return missing_c; // rows may be cut short of their empty fields
  }
  const std::string_view field = fields[*element.value];
  const auto value = read_temperature(field);
  if (!value) {
    report_fault(readings,
                 rows.line(),
                 rows.column(*element.value),
                 "'" + printable(field) + "' as a value",
                 "a temperature",
                 "correct it");
    good = false;
    return missing_c;
  }
  const bool flags = element.attributes && *element.attributes < fields.size();
  const std::string_view quality = flags ? quality_in(fields[*element.attributes]) : "";
  return unless_flagged(readings, *value, quality, date, rows.line());
}

bool read_row(Readings& readings, const CsvReader& rows, const WideHeader& header) {
  const Fields fields = rows.fields();
  const auto date =
      header.date < fields.size() ? read_date(fields[header.date], std::nullopt) : std::nullopt;
  if (!date) {
    const bool there = header.date < fields.size();
    report_fault(readings,
                 rows.line(),
                 there ? rows.column(header.date) : 1,
                 "'" + printable(there ? fields[header.date] : "") + "' where the date should be",
                 "a day of the calendar, such as 2024-03-31",
                 "correct the date or remove the row");
    return false;
  }
  bool good = true;
  const float night = take_element(readings, rows, header.night, date->date, good);
  const float day = take_element(readings, rows, header.day, date->date, good);
  readings.rows.push_back({date->date, night, day, static_cast<std::uint32_t>(rows.line())});
  return good;
}

std::optional<double> number_at(Fields fields, std::optional<std::size_t> column) {
  const auto number =
      column && *column < fields.size() ? read_decimal(fields[*column]) : std::nullopt;
  return number && *number > -999.0 ? number : std::nullopt; // -999.9 is an unknown elevation
}

void read_place(const WideHeader& header, Fields fields, StationFacts& station) {
  if (header.name && *header.name < fields.size()) {
    station.name = trimmed(fields[*header.name]);
  }
  station.latitude = number_at(fields, header.latitude);
  station.longitude = number_at(fields, header.longitude);
  station.elevation_m = number_at(fields, header.elevation);
}

struct Choice {
  TemperatureUnit unit = TemperatureUnit::tenths_of_celsius;
  std::string because;
};

Choice choose_unit(const WideHeader& header, const ValueSpread& spread) {
  if (header.archive) {
    return {TemperatureUnit::tenths_of_celsius,
            "the archive's own layout, with attributes, is in tenths of °C"};
  }
  const auto told = unit_by_values(spread).value_or(TemperatureUnit::celsius);
  if (told == TemperatureUnit::celsius && spread.whole_numbers) {
    return {TemperatureUnit::fahrenheit,
            "the order form names no unit; its whole numbers are °F, as its °C have a decimal"};
  }
  return {told,
          "the order form names no unit; the " + describe(spread) + " were taken as " +
              std::string(unit_name(told))};
}

void settle_unit(const WideHeader& header, Readings& readings) {
  const Choice choice = choose_unit(header, spread_of(readings.rows));
  readings.unit = unit_name(choice.unit);
  readings.because.push_back(choice.because);
  if (!header.archive) {
    add_note(readings, choice.because, "order the file in metric units if this is wrong");
  }
  convert_rows(readings.rows, choice.unit, choice.unit);
  for (Finding& finding : readings.findings) {
    finding.value_c =
        static_cast<double>(to_celsius(static_cast<float>(finding.value_c), choice.unit));
  }
}

} // namespace

std::vector<std::string> recognise_ghcn_wide_csv(const Opening& opening) {
  const auto header = wide_header(opening);
  if (!header) {
    return {};
  }
  return {header->archive
              ? "line 1 names STATION, DATE, TMAX or TMIN and their ATTRIBUTES"
              : "line 1 names STATION, NAME, DATE, TMAX or TMIN, as the order form does"};
}

Readings read_ghcn_wide_csv(const Opening& opening, std::string_view name) {
  const WideHeader header = *wide_header(opening);
  Readings readings;
  readings.file = name;
  OneStation station{opening.station};
  bool placed = false;
  CsvReader rows{opening.text, ',', name};
  (void)rows.next(); // the header
  while (rows.next() && !station.hopeless()) {
    ++readings.rows_read;
    const bool named = header.station < rows.fields().size();
    if (named && !station.meet(rows.fields()[header.station])) {
      continue;
    }
    if (!std::exchange(placed, true)) {
      read_place(header, rows.fields(), readings.station);
    }
    if (!read_row(readings, rows, header)) {
      ++readings.rows_faulty;
    }
  }
  station.refuse_several(name);
  readings.station.id = station.id();
  settle_unit(header, readings);
  return readings;
}

bool is_ghcn_wide_without_header(const Opening& opening) {
  if (opening.lines.empty()) {
    return false;
  }
  // STATION, DATE, LATITUDE, LONGITUDE, ELEVATION, NAME, then values and attributes in pairs.
  const std::vector<std::string> fields = fields_of(opening.lines[0], ',');
  return fields.size() >= 8 && is_ghcn_station(fields[0]) && read_date(fields[1], std::nullopt) &&
         read_decimal(fields[2]) && read_decimal(fields[3]) && read_decimal(fields[4]);
}

} // namespace nightsow::climate
