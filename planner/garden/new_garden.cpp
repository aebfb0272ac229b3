#include "planner/garden/new_garden.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <string_view>

namespace nightsow::planner {

namespace {

std::string json_text(std::string_view text) {
  return nlohmann::json(text).dump();
}

std::string place_lines(const NewGarden& garden) {
  std::string text;
  if (garden.name.empty()) {
    text += "  // \"name\": \"my garden\",\n";
  } else {
    text += fmt::format("  \"name\": {},\n", json_text(garden.name));
  }
  text += "  // Degrees; south and west are negative.\n";
  text += fmt::format("  \"latitude\": {},\n", garden.latitude);
  text += fmt::format("  \"longitude\": {},\n", garden.longitude);
  if (garden.elevation_m) {
    text += fmt::format("  \"elevation_m\": {},\n", *garden.elevation_m);
  } else {
    text += "  // Metres above the sea:\n  // \"elevation_m\": 200,\n";
  }
  if (garden.time_zone.empty()) {
    text += "  // Without a time zone it is today where this machine thinks it is:\n"
            "  // \"time_zone\": \"Africa/Johannesburg\",\n";
  } else {
    text += fmt::format("  \"time_zone\": {},\n", json_text(garden.time_zone));
  }
  return text;
}

// Everything optional stands before the last key, so that a line can be switched on as it is, comma
// and all.
constexpr std::string_view example_lines = R"(
  // Days on which you can sow, how many pots a day, and when nobody is there (both days included):
  // "sowing_days": ["sat", "sun"],
  // "pots_per_day": 20,
  // "away": [ { "from": "2026-07-04", "to": "2026-07-18" } ],

  // Share of grit, sand and pumice in your seed mix (parts, recipes and pots: see the README):
  // "mix": { "mineral_share": 0.7 },

  // Heat mats, and the bench below that each lies on:
  // "mats": [ { "name": "mat", "bench": "open bench", "rise_c": 10, "thermostat_c": 28, "pots": 24 } ],

)";

constexpr std::string_view bench_lines = R"(
  // Where pots stand. A packet stands on the bench that packets.csv names, else on the first one here.
  // shelter: open, wall, cold frame, unheated glass, plastic tunnel or indoors; the offsets say how much
  // warmer than the station its nights and days are.
  "benches": [
    { "name": "open bench", "shelter": "open", "rain": true }
    // , { "name": "cold frame", "shelter": "cold frame", "night_offset_c": 1.5, "day_offset_c": 4, "pots": 90 }
  ]
}
)";

std::string readings_lines(const NewGarden& garden) {
  std::string entry = "\"file\": " + json_text(garden.readings_file);
  if (!garden.station.empty()) {
    entry += ", \"station\": " + json_text(garden.station);
  }
  if (!garden.column.empty()) {
    entry += ", \"column\": " + json_text(garden.column);
  }
  return fmt::format(
      "  // Weather files, station first. Add newer files below; the first one wins where "
      "two differ.\n"
      "  \"readings\": [\n"
      "    {{ {} }}\n"
      "    // , {{ \"file\": \"readings/another-file.csv\" }}\n"
      "  ],\n",
      entry);
}

} // namespace

std::string new_garden_text(const NewGarden& garden) {
  std::string text =
      "// A garden for nightsow. Lines behind // are comments: explanations, and examples to\n"
      "// switch on by taking the slashes away and putting your own values in.\n"
      "{\n";
  text += place_lines(garden);
  text += example_lines;
  text += readings_lines(garden);
  text += bench_lines;
  return text;
}

} // namespace nightsow::planner
