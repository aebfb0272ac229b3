#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/heads.hpp"
#include "planner/answers/reason.hpp"
#include "planner/answers/spread.hpp"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

// Parts of JSON that several answers share. What has no meaning is null.

using Json = nlohmann::ordered_json;

/// Whole numbers without ".0". Throws std::logic_error on NaN and infinity, which JSON cannot hold.
[[nodiscard]] Json json_number(double number);
[[nodiscard]] Json json_number(const std::optional<double>& number);
[[nodiscard]] Json json_number(const std::optional<int>& number);
[[nodiscard]] Json json_date(const std::optional<Date>& day);
[[nodiscard]] Json json_flag(const std::optional<bool>& flag);

/// Null when the text is empty.
[[nodiscard]] Json json_text(const std::string& text);
[[nodiscard]] Json json_text(const std::optional<std::string>& text);

[[nodiscard]] Json json_spread(const Spread& spread);
[[nodiscard]] Json json_number_spread(const std::optional<NumberSpread>& spread);

/// Code, values, and the sentence in °C.
[[nodiscard]] Json json_reasons(const std::vector<Reason>& reasons);

[[nodiscard]] Json json_readings(const ReadingsHead& readings);

/// "schema" and "nightsow", with which every answer begins.
[[nodiscard]] Json json_top();

/// The same, and the garden and the day.
[[nodiscard]] Json json_top(const GardenHead& garden, Date today);

/// The text that goes out: indented by two, with a line end.
[[nodiscard]] std::string json_dump(const Json& json);

} // namespace nightsow::planner
