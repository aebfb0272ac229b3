#pragma once

#include "climate/base/located_json.hpp"
#include "climate/readers/reading_choices.hpp"
#include "climate/readers/readings.hpp"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <string_view>

namespace nightsow::climate {

// The kinds of JSON that read_json tells apart. Each reads into `readings`, whose file is named.

[[nodiscard]] bool is_open_meteo(const nlohmann::ordered_json& json);
void read_open_meteo(const LocatedJson& file, const ReadingChoices& choices, Readings& readings);

[[nodiscard]] bool is_power(const nlohmann::ordered_json& json);
void read_power(const LocatedJson& file, Readings& readings);

[[nodiscard]] bool is_aemet(const nlohmann::ordered_json& json);
void read_aemet(const LocatedJson& file, const ReadingChoices& choices, Readings& readings);

/// The member of an object; null when there is none, or when `json` is no object.
[[nodiscard]] const nlohmann::ordered_json& member(const nlohmann::ordered_json& json,
                                                   std::string_view key);

/// The line on which the value of a JSON pointer stands.
[[nodiscard]] std::size_t line_of(const LocatedJson& file, std::string_view pointer);

[[noreturn]] void refuse_json(const LocatedJson& file,
                              std::string_view pointer,
                              std::string found,
                              std::string expected,
                              std::string remedy);

} // namespace nightsow::climate
