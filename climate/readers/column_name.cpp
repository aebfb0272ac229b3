#include "climate/readers/column_name.hpp"

namespace nightsow::climate {

namespace {

constexpr std::string_view night_words =
    "tmin tmn tn tnk mint mintemp tempmin min minimum minima minimo minimal minimale low lowest";
constexpr std::string_view day_words =
    "tmax tmx tx txk maxt maxtemp tempmax max maximum maxima maximo maximal maximale high highest";
constexpr std::string_view temperature_words =
    "t temp temps temperature temperatures temperatur temperatura t2m";
// "a" is what a degree sign leaves behind when it was read in the wrong encoding.
constexpr std::string_view neutral_words = "air daily 2m at of degree deg degrees o a";
constexpr std::string_view celsius_words = "c celsius degc centigrade";
constexpr std::string_view fahrenheit_words = "f fahrenheit degf";
constexpr std::string_view tenths_words = "tenths tenth zehntel";

constexpr std::string_view date_words = "date dates datum fecha data ymd day yyyymmdd aaaammjj";
constexpr std::string_view time_words = "time timestamp zeit";
// What may stand beside them: "Date (YYYY-MM-DD)", "obs date", "local date".
constexpr std::string_view beside_date_words = "yyyy mm dd obs local of the mess observation";
constexpr std::string_view year_words = "year yr yyyy jahr ano anno annee jaar";
constexpr std::string_view month_words = "month mon mm monat mes mese mois maand";
constexpr std::string_view day_number_words = "day dy dd tag dia giorno jour dag";

// Whole names, words joined.
constexpr std::string_view station_id_names =
    "station stationid stationnumber stn stnid staid climateid location locationid stationsid "
    "siteid site stationno";
constexpr std::string_view station_name_names = "stationname sitename city place localita locality";
constexpr std::string_view latitude_names = "latitude lat latitudey";
constexpr std::string_view longitude_names = "longitude lon long lng longitudex";
constexpr std::string_view elevation_names =
    "elevation elev altitude alt elevationm elevm altitudem heightm";

// Whether the word is one of a list whose words are parted by blanks.
bool holds(std::string_view list, std::string_view word) {
  for (std::size_t at = list.find(word); at != std::string_view::npos;
       at = list.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at == 0 || list[at - 1] == ' ') && (end == list.size() || list[end] == ' ')) {
      return true;
    }
  }
  return false;
}

// The letters of Latin-1 from 0xC0 on without their accents; '*' is no letter.
constexpr std::string_view unaccented = "aaaaaaaceeeeiiiidnooooo*ouuuuyts"
                                        "aaaaaaaceeeeiiiidnooooo*ouuuuyty";

// A letter or digit in lower case, or '*' for everything that parts words. Latin-1 and the same
// letters in UTF-8 (lead byte C3) count as letters.
char plain_letter(std::string_view text, std::size_t& i) {
  const auto byte = static_cast<unsigned char>(text[i]);
  if (byte >= 'A' && byte <= 'Z') {
    return static_cast<char>(byte - 'A' + 'a');
  }
  if ((byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9')) {
    return text[i];
  }
  if (byte < 0xC0) {
    return '*';
  }
  if (i + 1 < text.size()) {
    const auto next = static_cast<unsigned char>(text[i + 1]);
    if (next >= 0x80 && next < 0xC0) {
      ++i;
      return byte == 0xC3 ? unaccented[next - 0x80U] : '*';
    }
  }
  return unaccented[byte - 0xC0U];
}

bool is_lower(char c) {
  return c >= 'a' && c <= 'z';
}

bool is_upper(char c) {
  return c >= 'A' && c <= 'Z';
}

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) {
    all += word;
  }
  return all;
}

// How many words of each kind a name has.
struct Counts {
  int night = 0;
  int day = 0;
  int temperature = 0;
  int celsius = 0;
  int fahrenheit = 0;
  int tenths = 0;
  int unknown = 0;
};

Counts count_words(const std::vector<std::string>& words) {
  Counts counts;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i];
    if (word == "0" && i + 1 < words.size() && words[i + 1] == "1") {
      ++counts.tenths; // "(0.1 °C)"
      ++i;
    } else if (holds(night_words, word)) {
      ++counts.night;
    } else if (holds(day_words, word)) {
      ++counts.day;
    } else if (holds(temperature_words, word)) {
      ++counts.temperature;
    } else if (holds(celsius_words, word)) {
      ++counts.celsius;
    } else if (holds(fahrenheit_words, word)) {
      ++counts.fahrenheit;
    } else if (holds(tenths_words, word)) {
      ++counts.tenths;
    } else if (!holds(neutral_words, word)) {
      ++counts.unknown;
    }
  }
  return counts;
}

std::optional<TemperatureUnit> unit_of(const Counts& counts) {
  if (counts.fahrenheit > 0) {
    return TemperatureUnit::fahrenheit;
  }
  if (counts.tenths > 0) {
    return TemperatureUnit::tenths_of_celsius;
  }
  return counts.celsius > 0 ? std::optional(TemperatureUnit::celsius) : std::nullopt;
}

ColumnName temperature_column(const std::vector<std::string>& words) {
  const Counts counts = count_words(words);
  if (counts.unknown > 0 || (counts.night > 0 && counts.day > 0)) {
    return {};
  }
  if (counts.night > 0) {
    return {ColumnMeaning::night, unit_of(counts)};
  }
  if (counts.day > 0) {
    return {ColumnMeaning::day, unit_of(counts)};
  }
  return counts.temperature > 0 ? ColumnName{ColumnMeaning::temperature_only, unit_of(counts)}
                                : ColumnName{};
}

ColumnMeaning calendar_column(const std::vector<std::string>& words) {
  if (words.size() == 1) {
    if (holds(year_words, words[0])) {
      return ColumnMeaning::year;
    }
    if (holds(month_words, words[0])) {
      return ColumnMeaning::month;
    }
    if (holds(day_number_words, words[0])) {
      return ColumnMeaning::day_number;
    }
  }
  bool date = false;
  bool time = false;
  for (const std::string& word : words) {
    date = date || holds(date_words, word);
    time = time || holds(time_words, word);
    if (!holds(date_words, word) && !holds(time_words, word) && !holds(beside_date_words, word)) {
      return ColumnMeaning::other;
    }
  }
  if (date) {
    return ColumnMeaning::date;
  }
  return time ? ColumnMeaning::time : ColumnMeaning::other;
}

ColumnMeaning station_column(const std::string& name) {
  if (holds(station_id_names, name) || name.ends_with("stationnumber")) {
    return ColumnMeaning::station_id;
  }
  if (holds(station_name_names, name)) {
    return ColumnMeaning::station_name;
  }
  if (holds(latitude_names, name)) {
    return ColumnMeaning::latitude;
  }
  if (holds(longitude_names, name)) {
    return ColumnMeaning::longitude;
  }
  return holds(elevation_names, name) ? ColumnMeaning::elevation : ColumnMeaning::other;
}

} // namespace

std::vector<std::string> words_of(std::string_view name) {
  std::vector<std::string> words;
  bool inside = false;
  for (std::size_t i = 0; i < name.size(); ++i) {
    const bool hump = i > 0 && is_upper(name[i]) && is_lower(name[i - 1]);
    const char letter = plain_letter(name, i);
    if (letter == '*') {
      inside = false;
      continue;
    }
    if (!inside || hump) {
      words.emplace_back();
    }
    words.back() += letter;
    inside = true;
  }
  return words;
}

ColumnName understand_column(std::string_view name) {
  const std::vector<std::string> words = words_of(name);
  if (words.empty()) {
    return {};
  }
  if (const auto meaning = station_column(joined(words)); meaning != ColumnMeaning::other) {
    return {meaning, std::nullopt};
  }
  if (const auto meaning = calendar_column(words); meaning != ColumnMeaning::other) {
    return {meaning, std::nullopt};
  }
  return temperature_column(words);
}

std::string_view meaning_name(ColumnMeaning meaning) {
  switch (meaning) {
  case ColumnMeaning::date:
  case ColumnMeaning::time:
    return "the date";
  case ColumnMeaning::year:
    return "the year";
  case ColumnMeaning::month:
    return "the month";
  case ColumnMeaning::day_number:
    return "the day";
  case ColumnMeaning::night:
    return "daily minima";
  case ColumnMeaning::day:
    return "daily maxima";
  case ColumnMeaning::temperature_only:
    return "a temperature, neither minima nor maxima";
  case ColumnMeaning::station_id:
  case ColumnMeaning::station_name:
    return "the station";
  case ColumnMeaning::latitude:
  case ColumnMeaning::longitude:
  case ColumnMeaning::elevation:
    return "the place";
  case ColumnMeaning::other:
    break;
  }
  return "not understood";
}

} // namespace nightsow::climate
