#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/clock_stamp.hpp"
#include "climate/readers/column_name.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/json_kinds.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/sub_daily.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::climate {

namespace {

using Json = nlohmann::ordered_json;
using std::chrono::seconds;

// The daily or the hourly part of one place.
struct Block {
  const Json* place = nullptr;
  std::string pointer; ///< of the place
  std::string_view name;

  [[nodiscard]] const Json& values() const { return member(*place, name); }

  [[nodiscard]] std::string at(const std::string& key) const {
    return pointer + '/' + std::string(name) + '/' + key;
  }
};

bool is_place(const Json& json) {
  return member(json, "daily").is_object() || member(json, "hourly").is_object();
}

std::string id_of(const Json& place) {
  const Json& id = member(place, "location_id");
  return id.is_null() ? "" : id.is_string() ? id.get<std::string>() : id.dump();
}

// Places of a list that have no id are known by their number.
std::string label_of(const Json& place, std::size_t index) {
  const std::string id = id_of(place);
  return id.empty() ? std::to_string(index) : id;
}

std::string describe(const Json& place, std::size_t index) {
  return label_of(place, index) + " (" + member(place, "latitude").dump() + ", " +
         member(place, "longitude").dump() + ")";
}

// The index of the place meant, of a list of them.
std::size_t chosen_place(const LocatedJson& file, const std::string& station) {
  const Json& places = file.value();
  std::string list;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!station.empty() && label_of(places[i], i) == station) {
      return i;
    }
    list += (list.empty() ? "" : "; ") + describe(places[i], i);
  }
  if (places.size() == 1 && station.empty()) {
    return 0;
  }
  refuse_json(file,
              "",
              station.empty() ? "the file holds several places: " + list
                              : "the file has no place '" + printable(station) + "'",
              station.empty() ? "one place" : "one of: " + list,
              "which one is meant? Name it in garden.json beside the file: \"station\": \"" +
                  label_of(places[0], 0) + "\"");
}

// The key of the array that holds a meaning; empty when there is none.
std::string key_of(const Block& block, ColumnMeaning meaning) {
  for (const auto& [key, value] : block.values().items()) {
    if (value.is_array() && understand_column(key).meaning == meaning) {
      return key;
    }
  }
  return "";
}

TemperatureUnit unit_of(const Block& block, const std::string& key) {
  const Json& units = member(*block.place, std::string(block.name) + "_units");
  const Json& unit = member(units, key);
  const bool fahrenheit =
      unit.is_string() && unit.get<std::string>().find('F') != std::string::npos;
  return fahrenheit ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius;
}

const Json& array_of(const LocatedJson& file, const Block& block, const std::string& key) {
  const Json& array = member(block.values(), key);
  const Json& time = member(block.values(), "time");
  if (!time.is_array() || !array.is_array()) {
    refuse_json(file,
                block.at(time.is_array() ? key : "time"),
                "\"" + printable(time.is_array() ? key : "time") + "\" is no list",
                "a list of values",
                "download it again");
  }
  const std::size_t times = time.size();
  if (array.size() != times) {
    refuse_json(file,
                block.at(key),
                "\"" + printable(key) + "\" holds " + std::to_string(array.size()) +
                    " values for " + std::to_string(times) + " times",
                "one value a time",
                "download it again");
  }
  return array;
}

// NaN for null; a fault is reported, gives NaN, too, and makes the row a bad one.
float value_at(const LocatedJson& file,
               const Block& block,
               const std::string& key,
               std::size_t index,
               Readings& readings,
               bool& good) {
  if (key.empty()) {
    return missing_c;
  }
  const Json& value = member(block.values(), key)[index];
  if (value.is_number()) {
    return to_celsius(value.get<float>(), unit_of(block, key));
  }
  if (!value.is_null()) {
    good = false;
    const std::string pointer = block.at(key) + '/' + std::to_string(index);
    report_fault(readings,
                 line_of(file, pointer),
                 0,
                 "\"" + printable(key) + "\" holds " + printable(value.dump()),
                 "a number or null",
                 "download it again");
  }
  return missing_c;
}

constexpr std::string_view offset_key = "utc_offset_seconds";

// A place that tells none is in UTC.
void check_offset(const LocatedJson& file, const Block& block) {
  constexpr double most_seconds = std::chrono::duration<double>(farthest_from_utc).count();
  const Json& offset = member(*block.place, offset_key);
  if (offset.is_null() || (offset.is_number() && std::abs(offset.get<double>()) <= most_seconds)) {
    return;
  }
  refuse_json(file,
              block.pointer + '/' + std::string(offset_key),
              "\"utc_offset_seconds\" is " + printable(offset.dump()) +
                  ", which is no place's distance from UTC",
              "seconds, 18 hours (64800) at most east or west",
              "download it again");
}

// Requires: it was checked.
seconds offset_of(const Json& place) {
  const Json& offset = member(place, offset_key);
  return seconds{offset.is_number() ? static_cast<std::int64_t>(offset.get<double>()) : 0};
}

// Of a text the clock as it stands there; seconds since 1970 are moved to the place's clock (the
// daily ones stand for local midnights; from memory, not confirmed).
std::optional<date::local_seconds> clock_at(const Block& block, std::size_t index) {
  const Json& time = member(block.values(), "time")[index];
  if (time.is_string()) {
    const auto stamp = read_stamp(time.get<std::string>());
    return stamp && stamp->year_leads ? clock_time(*stamp, StampOrder::year_first) : std::nullopt;
  }
  if (!time.is_number_integer()) {
    return std::nullopt;
  }
  const auto instant = read_unix_time(time.dump());
  if (!instant) {
    return std::nullopt;
  }
  return date::local_seconds{instant->time_since_epoch() + offset_of(*block.place)};
}

void report_time(const LocatedJson& file, const Block& block, std::size_t i, Readings& readings) {
  ++readings.rows_faulty;
  const Json& time = member(block.values(), "time")[i];
  report_fault(readings,
               line_of(file, block.at("time") + '/' + std::to_string(i)),
               0,
               printable(time.dump()) + " where the time should be",
               "a time such as 2024-03-31T21:30, or seconds since 1970",
               "download it again");
}

void read_daily(const LocatedJson& file, const Block& block, Readings& readings) {
  const std::string night = key_of(block, ColumnMeaning::night);
  const std::string day = key_of(block, ColumnMeaning::day);
  for (const std::string& key : {night, day}) {
    if (!key.empty()) {
      static_cast<void>(array_of(file, block, key));
      readings.because.push_back("\"" + key + "\" is " +
                                 std::string(meaning_name(understand_column(key).meaning)));
      readings.unit = unit_name(unit_of(block, key));
    }
  }
  const std::size_t count = member(block.values(), "time").size();
  for (std::size_t i = 0; i < count; ++i) {
    ++readings.rows_read;
    const auto clock = clock_at(block, i);
    if (!clock) {
      report_time(file, block, i, readings);
      continue;
    }
    Reading row{date::floor<Days>(*clock), missing_c, missing_c, 0};
    bool good = true;
    row.night_c = value_at(file, block, night, i, readings, good);
    row.day_c = value_at(file, block, day, i, readings, good);
    readings.rows_faulty += good ? 0U : 1U;
    if (!std::isnan(row.night_c) || !std::isnan(row.day_c)) {
      row.line =
          static_cast<std::uint32_t>(line_of(file, block.at("time") + '/' + std::to_string(i)));
      readings.rows.push_back(row);
    }
  }
}

void read_hourly(const LocatedJson& file,
                 const Block& block,
                 const ReadingChoices& choices,
                 Readings& readings) {
  const std::string key = key_of(block, ColumnMeaning::temperature_only);
  static_cast<void>(array_of(file, block, key));
  readings.because.push_back("\"" + key + "\" holds temperatures within the day");
  readings.unit = unit_name(unit_of(block, key));
  const seconds offset = offset_of(*block.place);
  TimedSeries series;
  series.in_utc = true;
  const Json& zone = member(*block.place, "timezone");
  if (offset != seconds{0}) {
    series.offset = offset;
    series.time_zone = zone.is_string() ? zone.get<std::string>() : "";
  }
  const std::size_t count = member(block.values(), "time").size();
  for (std::size_t i = 0; i < count; ++i) {
    ++readings.rows_read;
    const auto clock = clock_at(block, i);
    if (!clock) {
      report_time(file, block, i, readings);
      continue;
    }
    bool good = true;
    const float value = value_at(file, block, key, i, readings, good);
    readings.rows_faulty += good ? 0U : 1U;
    if (!std::isnan(value)) {
      const auto line = line_of(file, block.at("time") + '/' + std::to_string(i));
      series.readings.push_back({*clock - offset, value, static_cast<std::uint32_t>(line)});
    }
  }
  add_nights_and_days(std::move(series), choices, readings);
}

std::optional<double> number(const Json& place, std::string_view key) {
  const Json& value = member(place, key);
  return value.is_number() ? std::optional(value.get<double>()) : std::nullopt;
}

} // namespace

bool is_open_meteo(const Json& json) {
  return json.is_array() ? !json.empty() && is_place(json.front()) : is_place(json);
}

void read_open_meteo(const LocatedJson& file, const ReadingChoices& choices, Readings& readings) {
  Block block{&file.value(), "", "daily"};
  readings.station.id = id_of(file.value());
  if (file.value().is_array()) {
    const std::size_t index = chosen_place(file, choices.station);
    block.place = &file.value()[index];
    block.pointer = '/' + std::to_string(index);
    readings.station.id = label_of(*block.place, index);
    readings.because.push_back("the place is " + describe(*block.place, index));
  }
  check_offset(file, block);
  readings.station.latitude = number(*block.place, "latitude");
  readings.station.longitude = number(*block.place, "longitude");
  readings.station.elevation_m = number(*block.place, "elevation");
  if (!key_of(block, ColumnMeaning::night).empty() || !key_of(block, ColumnMeaning::day).empty()) {
    read_daily(file, block, readings);
    return;
  }
  block.name = "hourly";
  if (!key_of(block, ColumnMeaning::temperature_only).empty()) {
    read_hourly(file, block, choices, readings);
    return;
  }
  refuse_json(file,
              block.pointer,
              "neither \"daily\" nor \"hourly\" holds air temperatures",
              "temperature_2m_min and temperature_2m_max, or temperature_2m",
              "ask for them in the download");
}

} // namespace nightsow::climate
