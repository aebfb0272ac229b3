#include "climate/readers/open_meteo_csv.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/clock_stamp.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/sub_daily.hpp"
#include "climate/readers/table_header.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::climate {

namespace {

using std::chrono::seconds;

// Lines up to a blank one.
struct Block {
  std::string_view text;
  std::size_t line = 0; ///< of its first line, from 1
  TableHeader header;
};

struct Place {
  std::string id;
  StationFacts station;
  seconds offset{0};
  std::string zone;
};

std::vector<Block> blocks_of(std::string_view text) {
  std::vector<Block> blocks;
  LineReader lines{text};
  const char* begin = nullptr;
  std::size_t first = 0;
  const char* end = nullptr;
  const auto close = [&] {
    if (begin != nullptr) {
      const std::string_view block{begin, static_cast<std::size_t>(end - begin)};
      blocks.push_back({block, first, read_header(block.substr(0, block.find('\n')), first, ',')});
      begin = nullptr;
    }
  };
  while (lines.next()) {
    if (trimmed(lines.line()).empty()) {
      close();
      continue;
    }
    if (begin == nullptr) {
      begin = lines.line().data();
      first = lines.number();
    }
    end = lines.line().data() + lines.line().size();
  }
  close();
  return blocks;
}

std::optional<std::size_t> named(const TableHeader& header, std::string_view name) {
  const auto found = std::find(header.names.begin(), header.names.end(), name);
  return found == header.names.end()
             ? std::nullopt
             : std::optional(static_cast<std::size_t>(found - header.names.begin()));
}

std::string field(const CsvReader& rows, std::optional<std::size_t> column) {
  return column && *column < rows.fields().size() ? std::string(trimmed(rows.fields()[*column]))
                                                  : std::string();
}

// Left empty it is UTC.
seconds offset_of(const std::string& text, std::size_t line, std::string_view name) {
  if (text.empty()) {
    return seconds{0};
  }
  const auto whole = read_whole(text);
  if (!whole || std::chrono::abs(seconds{*whole}) > farthest_from_utc) {
    refuse_file(name,
                line,
                "utc_offset_seconds is '" + printable(text) +
                    "', which is no place's distance from UTC",
                "whole seconds, 18 hours (64800) at most east or west",
                "download it again");
  }
  return seconds{*whole};
}

std::vector<Place> places_of(const Block& block, std::string_view name) {
  std::vector<Place> places;
  CsvReader rows{block.text, ',', name};
  (void)rows.next(); // the names
  while (rows.next()) {
    Place place;
    place.id = field(rows, named(block.header, "location_id"));
    place.station.latitude = read_decimal(field(rows, named(block.header, "latitude")));
    place.station.longitude = read_decimal(field(rows, named(block.header, "longitude")));
    place.station.elevation_m = read_decimal(field(rows, named(block.header, "elevation")));
    place.offset = offset_of(
        field(rows, named(block.header, "utc_offset_seconds")), rows.line() + block.line - 1, name);
    place.zone = field(rows, named(block.header, "timezone"));
    places.push_back(std::move(place));
  }
  return places;
}

std::string figure(std::optional<double> value) {
  if (!value) {
    return "?";
  }
  std::string text = std::to_string(*value);
  text.erase(text.find_last_not_of('0') + 1);
  return text;
}

std::string describe(const Place& place) {
  return printable(place.id) + " (" + figure(place.station.latitude) + ", " +
         figure(place.station.longitude) + ")";
}

Place chosen_place(const std::vector<Place>& places,
                   const std::string& station,
                   std::string_view name) {
  if (places.size() == 1 && (station.empty() || station == places.front().id)) {
    return places.front();
  }
  std::string list;
  for (const Place& place : places) {
    if (!station.empty() && place.id == station) {
      return place;
    }
    list += (list.empty() ? "" : "; ") + describe(place);
  }
  if (places.empty()) {
    refuse_file(
        name, 0, "the lines above the readings name no place", "one place", "download it again");
  }
  refuse_file(name,
              0,
              station.empty() ? "the file holds several places: " + list
                              : "the file has no place '" + printable(station) + "'",
              station.empty() ? "one place" : "one of: " + list,
              "which one is meant? Name it in garden.json beside the file: \"station\": \"" +
                  printable(places.front().id) + "\"");
}

// ---- rows -----------------------------------------------------------------------------------

std::optional<date::local_seconds> clock_of(const std::string& text, seconds offset) {
  if (const auto instant = read_unix_time(text)) {
    return date::local_seconds{instant->time_since_epoch() + offset};
  }
  const auto stamp = read_stamp(text);
  return stamp && stamp->year_leads ? clock_time(*stamp, StampOrder::year_first) : std::nullopt;
}

// One value in °C; NaN where there is none or it cannot be read, which is reported and makes the
// row a bad one.
float value_of(const Block& block,
               const CsvReader& rows,
               std::optional<std::size_t> column,
               std::size_t line,
               Readings& readings,
               bool& good) {
  const std::string text = field(rows, column);
  const auto value = read_temperature(text);
  if (!value) {
    good = false;
    report_fault(readings,
                 line,
                 rows.column(*column),
                 "'" + printable(text) + "' in column '" + printable(block.header.names[*column]) +
                     "'",
                 "a temperature",
                 "download it again");
    return missing_c;
  }
  return to_celsius(*value, block.header.columns[*column].unit.value_or(TemperatureUnit::celsius));
}

// Calls `take` with the clock and the line of each row of the place; it says whether the row was
// good.
template <class Take>
void for_rows(const Block& block, const Place& place, Readings& readings, const Take& take) {
  const auto id = named(block.header, "location_id");
  CsvReader rows{block.text, ',', readings.file};
  (void)rows.next(); // the names
  while (rows.next()) {
    if (id && field(rows, id) != place.id) {
      continue;
    }
    ++readings.rows_read;
    const std::size_t line = rows.line() + block.line - 1;
    const auto clock = clock_of(field(rows, block.header.date), place.offset);
    if (!clock) {
      ++readings.rows_faulty;
      report_fault(readings,
                   line,
                   1,
                   "'" + printable(field(rows, block.header.date)) + "' where the time should be",
                   "a time such as 2024-03-31T21:30",
                   "download it again");
      continue;
    }
    readings.rows_faulty += take(rows, *clock, line) ? 0U : 1U;
  }
}

void read_days(const Block& block, const Place& place, Readings& readings) {
  const TableHeader& header = block.header;
  for_rows(block,
           place,
           readings,
           [&](const CsvReader& rows, date::local_seconds clock, std::size_t line) {
             bool good = true;
             Reading row{
                 date::floor<Days>(clock), missing_c, missing_c, static_cast<std::uint32_t>(line)};
             if (header.night) {
               row.night_c = value_of(block, rows, header.night, line, readings, good);
             }
             if (header.day) {
               row.day_c = value_of(block, rows, header.day, line, readings, good);
             }
             if (!std::isnan(row.night_c) || !std::isnan(row.day_c)) {
               readings.rows.push_back(row);
             }
             return good;
           });
}

void read_hours(const Block& block,
                const Place& place,
                const ReadingChoices& choices,
                Readings& readings) {
  const auto column = block.header.column_of(ColumnMeaning::temperature_only);
  TimedSeries series;
  series.in_utc = true;
  if (place.offset != seconds{0}) {
    series.offset = place.offset;
    series.time_zone = place.zone;
  }
  for_rows(block,
           place,
           readings,
           [&](const CsvReader& rows, date::local_seconds clock, std::size_t line) {
             bool good = true;
             const float value = value_of(block, rows, column, line, readings, good);
             if (!std::isnan(value)) {
               series.readings.push_back(
                   {clock - place.offset, value, static_cast<std::uint32_t>(line)});
             }
             return good;
           });
  add_nights_and_days(std::move(series), choices, readings);
}

std::string unit_of(const Block& block, std::optional<std::size_t> column) {
  return std::string(
      unit_name(block.header.columns[*column].unit.value_or(TemperatureUnit::celsius)));
}

} // namespace

std::vector<std::string> recognise_open_meteo_csv(const Opening& opening) {
  for (const std::string_view line : opening.lines) {
    if (trimmed(line).empty()) {
      continue;
    }
    const TableHeader header = read_header(line, 1, ',');
    if (named(header, "latitude") && named(header, "longitude") &&
        named(header, "utc_offset_seconds")) {
      return {"the first lines name the place and its distance from UTC"};
    }
    break;
  }
  return {};
}

Readings read_open_meteo_csv(const Opening& opening,
                             std::string_view name,
                             const ReadingChoices& choices) {
  const std::vector<Block> blocks = blocks_of(opening.text);
  const Place place = chosen_place(places_of(blocks.front(), name), choices.station, name);
  Readings readings;
  readings.file = name;
  readings.station = place.station;
  readings.station.id = place.id;
  for (const Block& block : blocks) {
    const auto& element = block.header.night ? block.header.night : block.header.day;
    if (block.header.date && element) {
      readings.unit = unit_of(block, element);
      readings.because.push_back("the block from line " + std::to_string(block.line) +
                                 " holds days");
      read_days(block, place, readings);
      return readings;
    }
  }
  for (const Block& block : blocks) {
    const auto hours = block.header.column_of(ColumnMeaning::temperature_only);
    if (block.header.date && hours) {
      readings.unit = unit_of(block, hours);
      readings.because.push_back("the block from line " + std::to_string(block.line) +
                                 " holds hours");
      read_hours(block, place, choices, readings);
      return readings;
    }
  }
  refuse_file(name,
              0,
              "no block of the file holds air temperatures",
              "temperature_2m_min and temperature_2m_max, or temperature_2m",
              "ask for them in the download");
}

} // namespace nightsow::climate
