#include "climate/daily_series.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/date_field.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/json_kinds.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/temperature_unit.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace nightsow::climate {

namespace {

using Json = nlohmann::ordered_json;

// ---- NASA POWER -----------------------------------------------------------------------------

constexpr std::string_view parameters_at = "/properties/parameter/";
constexpr double usual_fill_value = -999.0;

/// The dates met as keys, whatever they hold: each is a row of the file.
struct PowerKeys {
  std::set<std::string> all;
  std::set<std::string> faulty;
};

// One parameter's values into the rows, by date.
void take_parameter(const LocatedJson& file,
                    std::string_view parameter,
                    float Reading::*element,
                    std::map<Date, Reading>& rows,
                    PowerKeys& keys,
                    Readings& readings) {
  const Json& json = file.value();
  const Json& fill = member(member(json, "header"), "fill_value");
  const double missing = fill.is_number() ? fill.get<double>() : usual_fill_value;
  const Json& values = member(member(member(json, "properties"), "parameter"), parameter);
  for (const auto& [key, value] : values.items()) {
    const std::string pointer = std::string(parameters_at) + std::string(parameter) + '/' + key;
    keys.all.insert(key);
    const auto date = key.size() == 8 ? read_date(key, std::nullopt) : std::nullopt;
    if (!date || !(value.is_number() || value.is_null())) {
      keys.faulty.insert(key);
      report_fault(readings,
                   line_of(file, pointer),
                   0,
                   printable(key) + ": " + printable(value.dump()),
                   "a date such as 20240331 and a number",
                   "download it again");
      continue;
    }
    if (value.is_null() || value.get<double>() == missing) {
      continue;
    }
    const auto line = static_cast<std::uint32_t>(line_of(file, pointer));
    Reading& row =
        rows.try_emplace(date->date, Reading{date->date, missing_c, missing_c, line}).first->second;
    row.*element = value.get<float>();
  }
}

void take_place(const Json& json, Readings& readings) {
  const Json& place = member(member(json, "geometry"), "coordinates");
  const auto number = [&](std::size_t i) -> std::optional<double> {
    return place.is_array() && i < place.size() && place[i].is_number()
               ? std::optional(place[i].get<double>())
               : std::nullopt;
  };
  readings.station.longitude = number(0);
  readings.station.latitude = number(1);
  readings.station.elevation_m = number(2);
}

// ---- AEMET ----------------------------------------------------------------------------------

std::string text_of(const Json& day, std::string_view key) {
  const Json& value = member(day, key);
  return value.is_string() ? value.get<std::string>() : value.is_null() ? "" : value.dump();
}

float element_of(const LocatedJson& file,
                 const Json& day,
                 std::size_t index,
                 std::string_view key,
                 Readings& readings,
                 bool& good) {
  const std::string text = text_of(day, key);
  const auto value = read_temperature(text);
  if (!value) {
    good = false;
    report_fault(readings,
                 line_of(file, '/' + std::to_string(index) + '/' + std::string(key)),
                 0,
                 "\"" + std::string(key) + "\" is '" + printable(text) + "'",
                 "a temperature such as \"0,8\"",
                 "correct it, or leave the key out when nothing was read");
  }
  return value.value_or(missing_c);
}

bool is_meant(const Json& day, const std::string& station) {
  return text_of(day, "indicativo") == station || text_of(day, "nombre") == station;
}

// Several stations, or not the one meant.
[[noreturn]] void refuse_stations(const LocatedJson& file, const std::string& station) {
  constexpr std::size_t most_listed = 10;
  std::set<std::string> ids;
  for (const Json& day : file.value()) {
    ids.insert(text_of(day, "indicativo"));
  }
  std::string list;
  std::size_t listed = 0;
  for (const std::string& id : ids) {
    if (listed++ == most_listed) {
      list += ", ...";
      break;
    }
    list += (list.empty() ? "" : ", ") + printable(id);
  }
  refuse_json(file,
              "",
              station.empty() ? "the file holds several stations: " + list
                              : "the file has no one station '" + printable(station) + "'",
              station.empty() ? "one station" : "one of: " + list,
              "which one is meant? Name it in garden.json beside the file: \"station\": \"" +
                  printable(*ids.begin()) + "\"");
}

void take_day(const LocatedJson& file, std::size_t index, Readings& readings) {
  const Json& day = file.value()[index];
  const std::string pointer = '/' + std::to_string(index);
  ++readings.rows_read;
  const auto date = read_date(text_of(day, "fecha"), std::nullopt);
  if (!date) {
    ++readings.rows_faulty;
    report_fault(readings,
                 line_of(file, pointer + "/fecha"),
                 0,
                 "\"fecha\" is '" + printable(text_of(day, "fecha")) + "'",
                 "a date such as 2024-03-31",
                 "correct it or remove the day");
    return;
  }
  Reading row{date->date, missing_c, missing_c, 0};
  bool good = true;
  row.night_c = element_of(file, day, index, "tmin", readings, good);
  row.day_c = element_of(file, day, index, "tmax", readings, good);
  readings.rows_faulty += good ? 0U : 1U;
  if (!std::isnan(row.night_c) || !std::isnan(row.day_c)) {
    row.line = static_cast<std::uint32_t>(line_of(file, pointer + "/fecha"));
    readings.rows.push_back(row);
  }
}

} // namespace

bool is_power(const Json& json) {
  return member(member(json, "properties"), "parameter").is_object();
}

void read_power(const LocatedJson& file, Readings& readings) {
  const Json& parameters = member(member(file.value(), "properties"), "parameter");
  if (!member(parameters, "T2M_MIN").is_object() && !member(parameters, "T2M_MAX").is_object()) {
    refuse_json(file,
                "/properties/parameter",
                "the file has neither T2M_MIN nor T2M_MAX",
                "daily minima and maxima at 2 m",
                "ask for T2M_MIN and T2M_MAX in the download");
  }
  std::map<Date, Reading> rows;
  PowerKeys keys;
  take_parameter(file, "T2M_MIN", &Reading::night_c, rows, keys, readings);
  take_parameter(file, "T2M_MAX", &Reading::day_c, rows, keys, readings);
  readings.rows_read = keys.all.size();
  readings.rows_faulty = keys.faulty.size();
  for (const auto& [date, row] : rows) {
    readings.rows.push_back(row);
  }
  take_place(file.value(), readings);
  readings.unit = unit_name(TemperatureUnit::celsius);
  readings.because.emplace_back("it names T2M_MIN or T2M_MAX as NASA POWER does, in °C");
  const Json& clock = member(member(file.value(), "header"), "time_standard");
  if (clock.is_string()) {
    readings.because.push_back("days are those of " + printable(clock.get<std::string>()));
  }
}

bool is_aemet(const Json& json) {
  return json.is_array() && !json.empty() && !member(json.front(), "fecha").is_null();
}

void read_aemet(const LocatedJson& file, const ReadingChoices& choices, Readings& readings) {
  std::set<std::string> stations;
  const Json& days = file.value();
  for (std::size_t i = 0; i < days.size(); ++i) {
    if (choices.station.empty() || is_meant(days[i], choices.station)) {
      stations.insert(text_of(days[i], "indicativo"));
      readings.station.id = text_of(days[i], "indicativo");
      readings.station.name = text_of(days[i], "nombre");
      readings.station.elevation_m = read_decimal(text_of(days[i], "altitud"));
      take_day(file, i, readings);
    }
  }
  if (stations.size() != 1) {
    refuse_stations(file, choices.station);
  }
  readings.unit = unit_name(TemperatureUnit::celsius);
  readings.because.emplace_back(
      "each day has \"fecha\", \"tmin\" and \"tmax\" as AEMET writes them");
}

} // namespace nightsow::climate
