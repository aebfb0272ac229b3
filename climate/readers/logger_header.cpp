#include "climate/readers/logger_header.hpp"

#include "climate/base/problem.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/clock_stamp.hpp"
#include "climate/readers/column_name.hpp"
#include "climate/readers/table_header.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace nightsow::climate {

namespace {

using Words = std::vector<std::string>;

constexpr auto date_words = std::to_array<std::string_view>(
    {"date", "datum", "fecha", "data", "day", "dato", "datetime", "timestamp"});
constexpr auto time_words = std::to_array<std::string_view>({"time",
                                                             "zeit",
                                                             "uhrzeit",
                                                             "tiempo",
                                                             "hora",
                                                             "ora",
                                                             "heure",
                                                             "hour",
                                                             "hours",
                                                             "unixtime",
                                                             "epoch",
                                                             "stunde",
                                                             "uur",
                                                             "hr",
                                                             "heures",
                                                             "hh",
                                                             "tid"});
// What may stand beside them: "Date (yyyy-mm-dd)", "Fecha y hora", "local time".
constexpr auto beside_words = std::to_array<std::string_view>(
    {"yyyy",  "yy",  "mm",          "dd",       "hh",       "ss",   "m",  "d",  "h",
     "local", "obs", "observation", "of",       "the",      "and",  "y",  "et", "und",
     "e",     "o",   "logged",      "measured", "standard", "unix", "am", "pm", "s"});
constexpr auto temperature_words = std::to_array<std::string_view>({"temp",
                                                                    "temps",
                                                                    "temperature",
                                                                    "temperatures",
                                                                    "temperatur",
                                                                    "temperatura",
                                                                    "t2m",
                                                                    "celsius",
                                                                    "fahrenheit",
                                                                    "t",
                                                                    "lufttemperatur",
                                                                    "temperatuur"});
constexpr auto value_words = std::to_array<std::string_view>(
    {"value", "wert", "messwert", "valor", "valeur", "reading", "waarde"});
// A temperature beside one of these is no air temperature at one moment.
constexpr auto other_words = std::to_array<std::string_view>(
    {"dew",   "dewpoint", "point", "tau",      "taupunkt",  "wet",      "bulb",    "heat",
     "index", "chill",    "feels", "apparent", "min",       "max",      "minimum", "maximum",
     "mini",  "maxi",     "low",   "high",     "hi",        "lo",       "minima",  "maxima",
     "alarm", "set",      "flag",  "quality",  "humidity",  "rh",       "minimo",  "maximo",
     "rocio", "mean",     "avg",   "average",  "battery",   "setpoint", "range",   "virtual",
     "daily", "status",   "alert", "wind",     "windchill", "hum",      "diff"});
constexpr auto unit_words =
    std::to_array<std::string_view>({"unit", "units", "einheit", "unidad", "unite", "eenheid"});
constexpr auto celsius_words =
    std::to_array<std::string_view>({"c", "celsius", "degc", "centigrade"});
constexpr auto fahrenheit_words = std::to_array<std::string_view>({"f", "fahrenheit", "degf"});

template <std::size_t Count>
bool is_one_of(const std::array<std::string_view, Count>& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

template <std::size_t Count>
bool any_of(const std::array<std::string_view, Count>& list, const Words& words) {
  return std::any_of(
      words.begin(), words.end(), [&](const std::string& word) { return is_one_of(list, word); });
}

std::optional<TemperatureUnit> unit_in(const Words& words) {
  for (const std::string& word : words) {
    if (is_one_of(celsius_words, word)) {
      return TemperatureUnit::celsius;
    }
    if (is_one_of(fahrenheit_words, word)) {
      return TemperatureUnit::fahrenheit;
    }
  }
  return std::nullopt;
}

// Whether the words are of a date or a time and nothing else.
struct ClockWords {
  bool date = false;
  bool time = false;
};

ClockWords clock_words(const Words& words) {
  ClockWords found;
  for (const std::string& word : words) {
    if (is_one_of(date_words, word)) {
      found.date = true;
    } else if (is_one_of(time_words, word)) {
      found.time = true;
    } else if (!is_one_of(beside_words, word)) {
      return {};
    }
  }
  return found;
}

void take_clock_column(LoggerHeader& header, std::size_t column, const std::string& name) {
  const Words words = words_of(without_offset(name));
  const ColumnMeaning meaning = understand_column(without_offset(name)).meaning;
  if (meaning == ColumnMeaning::year) {
    header.year = header.year.value_or(column);
  } else if (meaning == ColumnMeaning::month) {
    header.month = header.month.value_or(column);
  } else if (words.size() == 1 && (words[0] == "minute" || words[0] == "min")) {
    header.minute = header.minute.value_or(column);
  } else if (meaning == ColumnMeaning::day_number && header.year && header.month) {
    header.day = header.day.value_or(column);
  } else if (const ClockWords clock = clock_words(words); clock.date && !header.stamp) {
    header.stamp = column;
  } else if (clock.time && !header.time) {
    header.time = column;
  } else {
    return;
  }
  if (const auto offset = offset_in(name)) {
    header.offset = offset;
  }
}

bool is_channel(const Words& words) {
  return any_of(temperature_words, words) && !any_of(other_words, words);
}

bool same_name(std::string_view a, std::string_view b) {
  return words_of(a) == words_of(b) || a == b;
}

LoggerHeader read_logger_header(std::string_view line,
                                std::size_t number,
                                char separator,
                                std::string_view chosen) {
  LoggerHeader header;
  header.line = number;
  header.separator = separator;
  header.names = fields_of(line, separator);
  std::optional<LoggerChannel> value;
  for (std::size_t i = 0; i < header.names.size(); ++i) {
    const std::string& name = header.names[i];
    const Words words = words_of(name);
    take_clock_column(header, i, name);
    if (words.size() == 1 && is_one_of(unit_words, words[0])) {
      header.unit = i;
    } else if (understand_column(name).meaning == ColumnMeaning::station_id) {
      header.station = i;
    } else if (is_channel(words) || (!chosen.empty() && same_name(name, chosen))) {
      header.channels.push_back({i, name, unit_in(words)});
    } else if (!value && any_of(value_words, words) && !any_of(other_words, words)) {
      value = LoggerChannel{i, name, unit_in(words)};
    }
  }
  if (header.channels.empty() && value) {
    header.channels.push_back(*value);
  }
  if (!header.stamp && !header.year) {
    header.stamp = std::exchange(header.time, std::nullopt); // "Time" alone holds both
  }
  return header;
}

// "Time zone: UTC+02:00" in the lines above the header.
std::optional<std::chrono::seconds> offset_above(const Opening& opening, std::size_t header_line) {
  for (std::size_t i = 0; i + 1 < header_line; ++i) {
    const Words words = words_of(opening.lines[i]);
    const bool about_zone = std::any_of(words.begin(), words.end(), [](const std::string& word) {
      return word == "zone" || word == "timezone" || word == "zeitzone" || word == "offset";
    });
    if (about_zone && offset_in(opening.lines[i])) {
      return offset_in(opening.lines[i]);
    }
  }
  return std::nullopt;
}

std::string list_of(const std::vector<LoggerChannel>& channels) {
  std::string list;
  for (const LoggerChannel& channel : channels) {
    list += (list.empty() ? "'" : ", '") + printable(channel.name) + "'";
  }
  return list;
}

Words without_unit(const std::string& name) {
  Words words = words_of(name);
  std::erase_if(words, [](const std::string& word) {
    return is_one_of(celsius_words, word) || is_one_of(fahrenheit_words, word);
  });
  return words;
}

} // namespace

std::optional<LoggerHeader> find_logger_header(const Opening& opening, std::string_view chosen) {
  for (std::size_t i = 0; i < opening.lines.size(); ++i) {
    for (const char separator : {',', ';', '\t'}) {
      LoggerHeader header = read_logger_header(opening.lines[i], i + 1, separator, chosen);
      if (header.complete()) {
        if (!header.offset) {
          header.offset = offset_above(opening, header.line);
        }
        return header;
      }
    }
  }
  return std::nullopt;
}

bool is_header_row(std::span<const std::string_view> fields) {
  bool clock = false;
  bool channel = false;
  for (const std::string_view field : fields) {
    const Words words = words_of(without_offset(field));
    const ClockWords of_clock = clock_words(words);
    clock = clock || of_clock.date || of_clock.time;
    channel = channel || is_channel(words) || any_of(value_words, words);
  }
  return clock && channel;
}

LoggerChannel choose_channel(const LoggerHeader& header,
                             std::string_view chosen,
                             std::string_view file) {
  const auto named = [&](const LoggerChannel& channel) { return same_name(channel.name, chosen); };
  const auto& channels = header.channels;
  if (!chosen.empty()) {
    const auto found = std::find_if(channels.begin(), channels.end(), named);
    if (found != channels.end()) {
      return *found;
    }
    throw InputError({Severity::error,
                      std::string(file),
                      header.line,
                      0,
                      "there is no column '" + printable(chosen) + "'",
                      "one of: " + list_of(channels),
                      "name one of them as \"column\" in garden.json"});
  }
  const bool one = std::all_of(channels.begin(), channels.end(), [&](const LoggerChannel& channel) {
    return without_unit(channel.name) == without_unit(channels.front().name);
  });
  if (!one) {
    throw InputError({Severity::error,
                      std::string(file),
                      header.line,
                      0,
                      "several columns hold temperatures: " + list_of(channels),
                      "one column",
                      "which of them is meant? Name it in garden.json beside the file: "
                      "\"column\": \"" +
                          printable(channels.front().name) + "\""});
  }
  const auto celsius =
      std::find_if(channels.begin(), channels.end(), [](const LoggerChannel& channel) {
        return channel.unit == TemperatureUnit::celsius;
      });
  return celsius == channels.end() ? channels.front() : *celsius;
}

} // namespace nightsow::climate
