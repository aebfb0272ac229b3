#include "planner/garden/store_stages.hpp"

#include "climate/base/csv.hpp"
#include "planner/garden/date_range.hpp"
#include "planner/garden/packet_values.hpp"
#include "planner/garden/plain_text.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::damp_humidity;
using species_rules::desiccated_humidity;
using species_rules::room_humidity;

constexpr std::array<std::pair<std::string_view, double>, 4> store_words{{
    {"shelf", 20.0},
    {"indoors", 20.0},
    {"fridge", 5.0},
    {"freezer", -18.0},
}};

// "sealed" keeps the air it was closed in; seed is mostly closed in dry from a room.
constexpr std::array<std::pair<std::string_view, double>, 10> air_words{{
    {"silica gel", desiccated_humidity},
    {"silica", desiccated_humidity},
    {"desiccated", desiccated_humidity},
    {"sealed", room_humidity},
    {"airtight", room_humidity},
    {"dry", room_humidity},
    {"barely moist", damp_humidity},
    {"damp", damp_humidity},
    {"humid", damp_humidity},
    {"moist", damp_humidity},
}};

constexpr std::string_view unknown_store = "unknown";
constexpr std::string_view first_of_a_number = "0123456789";
constexpr std::string_view digits = "0123456789.,";
constexpr double whole = 100.0;

template <std::size_t N>
std::optional<double> number_of(const std::array<std::pair<std::string_view, double>, N>& words,
                                std::string_view word) {
  const auto* known = std::find_if(
      words.begin(), words.end(), [&](const auto& entry) { return entry.first == word; });
  return known != words.end() ? std::optional(known->second) : std::nullopt;
}

std::string without(const std::string& text, std::size_t at, std::size_t length) {
  const std::string left{trimmed(std::string_view{text}.substr(0, at))};
  return std::string{trimmed(left + ' ' + text.substr(at + length))};
}

bool stands_alone(std::string_view text, std::size_t at, std::size_t length) {
  const std::size_t end = at + length;
  return (at == 0 || text[at - 1] == ' ') && (end == text.size() || text[end] == ' ');
}

// Takes the first word that names an air out of the text, which is in lower case.
std::optional<double> take_air_word(std::string& text) {
  for (const auto& [word, humidity] : air_words) {
    const std::size_t at = text.find(word);
    if (at != std::string::npos && stands_alone(text, at, word.size())) {
      text = without(text, at, word.size());
      return humidity;
    }
  }
  return std::nullopt;
}

// Takes "60 % RH" or "60%" out of the text. False when something other than 0 to 100 stands there.
bool take_humidity(std::string& text, std::optional<double>& humidity) {
  const std::size_t sign = text.find('%');
  if (sign == std::string::npos) {
    return true;
  }
  const std::size_t last = text.find_last_not_of(' ', sign - 1);
  if (sign == 0 || last == std::string::npos) {
    return false;
  }
  const std::size_t before = text.find_last_not_of(digits, last);
  const std::size_t at = before == std::string::npos ? 0 : before + 1;
  const auto number = parse_decimal(std::string_view{text}.substr(at, last + 1 - at));
  if (!number || *number < 0.0 || *number > whole) {
    return false;
  }
  humidity = *number / whole;
  std::size_t end = sign + 1;
  for (const std::string_view name : {" rh", "rh"}) {
    if (std::string_view{text}.substr(end).starts_with(name)) {
      end += name.size();
      break;
    }
  }
  text = without(text, at, end - at);
  return true;
}

// "shelf 22C": a word, and a temperature that begins with the first digit or its sign.
std::optional<double> store_of(std::string_view text) {
  std::size_t number = text.find_first_of(first_of_a_number);
  if (number == std::string_view::npos) {
    return number_of(store_words, text);
  }
  if (number > 0 && text[number - 1] == '-') {
    --number;
  }
  const bool named = !trimmed(text.substr(0, number)).empty();
  return named ? parse_temperature(text.substr(number)) : std::nullopt;
}

std::optional<StoreStage> parse_place(std::string_view text) {
  StoreStage stage;
  stage.place = trimmed(text.substr(0, text.find_first_of(first_of_a_number)));
  std::string rest = lower_case(text);
  if (rest == unknown_store) {
    stage.known = false;
    return stage;
  }
  std::optional<double> humidity = take_air_word(rest);
  if (!take_humidity(rest, humidity)) {
    return std::nullopt;
  }
  const auto store_c = store_of(rest);
  if (!store_c) {
    return std::nullopt;
  }
  stage.store_c = *store_c;
  stage.humidity = humidity.value_or(stage.humidity);
  return stage;
}

std::optional<StoreStage> parse_stage(std::string_view text) {
  for (const std::string_view until : {" to ", " until "}) {
    const std::size_t at = text.find(until);
    if (at == std::string_view::npos) {
      continue;
    }
    auto stage = parse_place(trimmed(text.substr(0, at)));
    const auto last_day = parse_date_range(text.substr(at + until.size()));
    if (!stage || !last_day) {
      return std::nullopt;
    }
    stage->until = last_day->last;
    return stage;
  }
  return parse_place(text);
}

} // namespace

std::optional<std::vector<StoreStage>> parse_store_stages(std::string_view cell) {
  std::string_view text = cell;
  std::vector<StoreStage> stages;
  while (true) {
    const std::size_t end = std::min(text.find(';'), text.size());
    const auto stage = parse_stage(trimmed(text.substr(0, end)));
    const bool follows =
        stage && (stages.empty() ||
                  (stages.back().until && (!stage->until || *stages.back().until < *stage->until)));
    if (!follows) {
      return std::nullopt;
    }
    stages.push_back(*stage);
    if (end == text.size()) {
      return stages;
    }
    text.remove_prefix(end + 1);
  }
}

} // namespace nightsow::planner
