#include "planner/cli/typed_whatif.hpp"

#include "planner/cli/typed_values.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

namespace {

using MaybeText = TypedWords::MaybeText;

// Bounds that no garden reaches: they catch slips, not odd places.
constexpr NumberRange warmings{-10.0, 10.0, "kelvin"};
constexpr NumberRange steps{0.1, 10.0, "kelvin"};
constexpr NumberRange latitudes{-90.0, 90.0, "degrees"};
constexpr NumberRange longitudes{-180.0, 180.0, "degrees"};
constexpr NumberRange elevations{-450.0, 9000.0, "metres"};
constexpr std::size_t most_values = 41;

std::optional<double> maybe_number(std::string_view option,
                                   const MaybeText& text,
                                   const NumberRange& range) {
  return text ? std::optional(typed_number(option, *text, range)) : std::nullopt;
}

OneRuleValue typed_rule_value(std::string_view text) {
  const std::size_t equals = text.find('=');
  const std::size_t point = text.substr(0, equals).rfind('.');
  if (equals == std::string_view::npos || point == std::string_view::npos || point == 0) {
    wrong_use("--rule",
              shown(text) + " is no value of a rule",
              "TAXON.FIELD=VALUE, such as Bulbine.night_limit_c=11",
              "`nightsow rules export TAXON` shows the fields");
  }
  return {std::string(text.substr(0, point)),
          std::string(text.substr(point + 1, equals - point - 1)),
          typed_text("--rule", text.substr(equals + 1))};
}

// "warmer=-2..4" or "warmer=-2..4:0.5", both ends included.
std::vector<double> typed_sweep(std::string_view text) {
  constexpr std::string_view lead = "warmer=";
  const std::size_t dots = text.find("..");
  if (!text.starts_with(lead) || dots == std::string_view::npos) {
    wrong_use("--sweep",
              shown(text) + " is no sweep",
              "warmer=A..B or warmer=A..B:STEP, in kelvin, such as warmer=-2..4");
  }
  const std::size_t colon = text.find(':', dots);
  const double from =
      typed_number("--sweep", text.substr(lead.size(), dots - lead.size()), warmings);
  const double to = typed_number("--sweep", text.substr(dots + 2, colon - dots - 2), warmings);
  const double step = colon == std::string_view::npos
                          ? 1.0
                          : typed_number("--sweep", text.substr(colon + 1), steps);
  if (to < from) {
    wrong_use("--sweep", shown(text) + " runs downwards", "the smaller value first");
  }
  // A hair more, as steps of a tenth do not add up to whole kelvins.
  const auto values = static_cast<std::size_t>(std::floor((to - from) / step + 1e-9)) + 1;
  if (values > most_values) {
    wrong_use("--sweep",
              fmt::format("{} are {} values", shown(text), values),
              fmt::format("at most {}", most_values),
              "take a longer step");
  }
  std::vector<double> sweep;
  for (std::size_t i = 0; i < values; ++i) {
    sweep.push_back(std::round((from + static_cast<double>(i) * step) * 1000.0) / 1000.0);
  }
  return sweep;
}

std::vector<Change> typed_changes(const TypedWords& typed) {
  std::vector<Change> changes;
  for (const std::string& rule : typed.rules) {
    changes.emplace_back(typed_rule_value(rule));
  }
  if (typed.bench) {
    changes.emplace_back(OnBench{typed_text("--bench", *typed.bench)});
  }
  if (typed.mirror) {
    changes.emplace_back(Mirror{});
  }
  if (const auto kelvin = maybe_number("--warmer", typed.warmer, warmings)) {
    changes.emplace_back(Warmer{CelsiusDelta{*kelvin}});
  }
  return changes;
}

TypedPlace typed_place(const TypedWords& typed) {
  if (!typed.place && (typed.latitude || typed.longitude || typed.elevation)) {
    wrong_use("nightsow whatif", "a place is typed without its readings", "", "add --place FILE");
  }
  return {maybe_number("--latitude", typed.latitude, latitudes),
          maybe_number("--longitude", typed.longitude, longitudes),
          maybe_number("--elevation", typed.elevation, elevations)};
}

} // namespace

WhatIfCommand typed_whatif(const TypedWords& typed, std::optional<int> season) {
  WhatIfCommand command{{typed_changes(typed), {season}}};
  command.where = typed_place(typed);
  if (typed.place) {
    command.place = typed_text("--place", *typed.place);
  }
  if (typed.packets) {
    command.packets = typed_text("--packets", *typed.packets);
  }
  if (typed.sweep) {
    command.sweep_k = typed_sweep(*typed.sweep);
  }
  if (typed.csv) {
    command.csv = typed_text("--csv", *typed.csv);
  }
  if (command.request.changes.empty() && command.place.empty() && command.packets.empty() &&
      command.sweep_k.empty()) {
    wrong_use("nightsow whatif",
              "no change is given",
              "--mirror, --warmer K, --bench NAME, --packets FILE, --place GARDEN, --rule "
              "TAXON.FIELD=VALUE or --sweep warmer=A..B",
              "add one or several");
  }
  return command;
}

} // namespace nightsow::planner
