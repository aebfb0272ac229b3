#include "planner/render/json_parts.hpp"

#include "planner/render/words.hpp"
#include "planner/version.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdint>
#include <stdexcept>

namespace nightsow::planner {

namespace {

// From here on a double does not hold every whole number.
constexpr double largest_whole = 9.0e15;

constexpr int schema_version = 1;

struct ValueJson {
  Json operator()(int number) const { return number; }

  Json operator()(double number) const { return json_number(number); }

  Json operator()(Share share) const { return json_number(share.value); }

  Json operator()(Celsius point) const { return json_number(point.degrees()); }

  Json operator()(CelsiusDelta difference) const { return json_number(difference.kelvin()); }

  Json operator()(Date day) const { return format_iso_date(day); }

  Json operator()(const std::string& text) const { return text; }
};

Json reason_json(const Reason& reason) {
  Json values = Json::object();
  for (const auto& value : reason.values) {
    values[value.name] = std::visit(ValueJson{}, value.value);
  }
  Json json;
  json["code"] = name_of(reason.code);
  json["values"] = std::move(values);
  json["text"] = sentence(reason, TextStyle{});
  return json;
}

} // namespace

Json json_number(double number) {
  if (!std::isfinite(number)) {
    throw std::logic_error("an answer holds a figure that is not a number");
  }
  if (number == std::trunc(number) && std::abs(number) < largest_whole) {
    return static_cast<std::int64_t>(number);
  }
  return number;
}

Json json_number(const std::optional<double>& number) {
  return number ? json_number(*number) : Json{};
}

Json json_number(const std::optional<int>& number) {
  return number ? Json(*number) : Json{};
}

Json json_date(const std::optional<Date>& day) {
  return day ? Json(format_iso_date(*day)) : Json{};
}

Json json_flag(const std::optional<bool>& flag) {
  return flag ? Json(*flag) : Json{};
}

Json json_text(const std::string& text) {
  return text.empty() ? Json{} : Json(text);
}

Json json_text(const std::optional<std::string>& text) {
  return text ? json_text(*text) : Json{};
}

Json json_spread(const Spread& spread) {
  Json json;
  json["p10"] = json_date(spread.p10);
  json["p50"] = json_date(spread.p50);
  json["p90"] = json_date(spread.p90);
  json["never"] = json_number(spread.never);
  return json;
}

Json json_number_spread(const std::optional<NumberSpread>& spread) {
  if (!spread) {
    return {};
  }
  Json json;
  json["mean"] = json_number(spread->mean);
  json["p10"] = json_number(spread->p10);
  json["p90"] = json_number(spread->p90);
  return json;
}

Json json_reasons(const std::vector<Reason>& reasons) {
  Json json = Json::array();
  for (const auto& reason : reasons) {
    json.push_back(reason_json(reason));
  }
  return json;
}

Json json_readings(const ReadingsHead& readings) {
  Json json;
  json["from"] = json_date(readings.from);
  json["to"] = json_date(readings.to);
  json["seasons"] = readings.seasons;
  json["complete"] = json_number(readings.complete);
  json["findings"] = readings.findings;
  return json;
}

Json json_top() {
  Json json;
  json["schema"] = schema_version;
  json["nightsow"] = version;
  return json;
}

Json json_top(const GardenHead& garden, Date today) {
  Json json = json_top();
  json["garden"]["name"] = json_text(garden.name);
  json["garden"]["latitude"] = json_number(garden.latitude);
  json["garden"]["longitude"] = json_number(garden.longitude);
  json["today"] = format_iso_date(today);
  return json;
}

std::string json_dump(const Json& json) {
  // Names and notes come out of files; a byte that is no UTF-8 shows as U+FFFD and stops nobody.
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

} // namespace nightsow::planner
