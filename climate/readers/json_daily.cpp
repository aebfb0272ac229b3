#include "climate/readers/json_daily.hpp"

#include "climate/base/csv.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/json_kinds.hpp"

#include <nlohmann/json.hpp>

#include <utility>

namespace nightsow::climate {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t keys_shown = 8;

std::string keys_of(const Json& json) {
  const Json& object = json.is_array() && !json.empty() ? json.front() : json;
  if (!object.is_object()) {
    return "it holds no named values";
  }
  std::string keys;
  std::size_t shown = 0;
  for (const auto& [key, value] : object.items()) {
    keys += (keys.empty() ? "its keys are " : ", ") + printable(key, 30);
    if (++shown == keys_shown) {
      break;
    }
  }
  return keys.empty() ? "it holds nothing" : keys;
}

} // namespace

bool is_json(std::string_view text) {
  if (text.starts_with("\xEF\xBB\xBF")) {
    text.remove_prefix(3);
  }
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos || (text[first] != '{' && text[first] != '[')) {
    return false;
  }
  // "[section]" opens files of other kinds; a list of JSON goes on with a value.
  const std::size_t next = text.find_first_not_of(" \t\r\n", first + 1);
  return text[first] == '{' || next == std::string_view::npos || text[next] == '{' ||
         text[next] == ']';
}

std::vector<std::string> recognise_json(const Opening& opening) {
  if (!is_json(opening.text)) {
    return {};
  }
  return {"the text is JSON"};
}

Readings read_json(const Opening& opening, std::string_view name, const ReadingChoices& choices) {
  const LocatedJson file = LocatedJson::parse(opening.text, name);
  const Json& json = file.value();
  Readings readings;
  readings.file = name;
  if (is_open_meteo(json)) {
    read_open_meteo(file, choices, readings);
  } else if (is_power(json)) {
    read_power(file, readings);
  } else if (is_aemet(json)) {
    read_aemet(file, choices, readings);
  } else {
    refuse_json(file,
                "",
                "JSON of a kind that is not known: " + keys_of(json),
                "\"daily\" or \"hourly\" arrays with temperatures, NASA POWER or AEMET",
                "download the readings as CSV, or write date, minimum and maximum to a CSV file");
  }
  return readings;
}

const Json& member(const Json& json, std::string_view key) {
  static const Json none;
  if (!json.is_object()) {
    return none;
  }
  const auto found = json.find(std::string(key));
  return found == json.end() ? none : *found;
}

std::size_t line_of(const LocatedJson& file, std::string_view pointer) {
  return file.problem_at(pointer, "", "", "").line;
}

void refuse_json(const LocatedJson& file,
                 std::string_view pointer,
                 std::string found,
                 std::string expected,
                 std::string remedy) {
  throw InputError(
      file.problem_at(pointer, std::move(found), std::move(expected), std::move(remedy)));
}

} // namespace nightsow::climate
