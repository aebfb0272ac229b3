#include "planner/cli/command_line.hpp"

#include "climate/base/problem.hpp"
#include "planner/cli/typed_learn.hpp"
#include "planner/cli/typed_record.hpp"
#include "planner/cli/typed_rules.hpp"
#include "planner/cli/typed_seed.hpp"
#include "planner/cli/typed_values.hpp"
#include "planner/cli/typed_whatif.hpp"
#include "planner/cli/typed_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <string_view>
#include <utility>
#include <vector>

namespace nightsow::planner {

namespace {

using Words = std::vector<std::string>;
using MaybeText = TypedWords::MaybeText;

// What each number may be. Bounds that no garden reaches: they catch slips, not odd places.
constexpr NumberRange latitudes{-90.0, 90.0, "degrees"};
constexpr NumberRange longitudes{-180.0, 180.0, "degrees"};
constexpr NumberRange elevations{-450.0, 9000.0, "metres"};
constexpr NumberRange limits{-20.0, 50.0, "°C"};
constexpr NumberRange timeouts{1.0, 3600.0, "seconds"};

std::optional<double> maybe_number(std::string_view option,
                                   const MaybeText& text,
                                   const NumberRange& range) {
  return text ? std::optional(typed_number(option, *text, range)) : std::nullopt;
}

CommonOptions common_options(const TypedWords& typed) {
  CommonOptions common;
  if (typed.garden) {
    common.garden = typed_folder("--garden", *typed.garden);
  }
  if (typed.today) {
    common.today = typed_date("--today", *typed.today);
  }
  if (typed.season) {
    common.season = typed_year("--season", *typed.season);
  }
  common.json = typed.json;
  common.quiet = typed.quiet;
  common.strict = typed.strict;
  common.fahrenheit = typed.fahrenheit;
  return common;
}

PlanCommand plan_command(const TypedWords& typed, std::optional<int> season) {
  PlanCommand command;
  command.request.season = season;
  command.why = typed.why;
  command.work = typed.work;
  command.packets = typed.asked_packets;
  command.save = typed.save;
  if (typed.save && (typed.only || !typed.asked_packets.empty())) {
    wrong_use("--save", "is of the whole plan", "", "leave out --only and names");
  }
  const auto file = [](const char* option, const MaybeText& text) {
    return text ? std::filesystem::path{typed_text(option, *text)} : std::filesystem::path{};
  };
  command.calendar = file("--calendar", typed.calendar);
  command.csv = file("--csv", typed.csv);
  command.sheet = file("--sheet", typed.sheet);
  command.labels = file("--labels", typed.labels);
  if (typed.only) {
    const std::size_t word = typed_word("--only", *typed.only, Words{"cool", "hot"});
    command.request.only = word == 0 ? PlanRequest::Only::cool : PlanRequest::Only::hot;
  }
  return command;
}

Command nights_command(const TypedWords& typed, std::optional<int> season) {
  const auto refuse = [](const char* option, const char* found, const char* remedy) {
    wrong_use(option, found, "", remedy);
  };
  if (typed.limit && !typed.past) {
    refuse("--limit", "is for past seasons only", "add --past");
  }
  if (typed.day_limit && !typed.limit) {
    refuse("--day-limit", "goes with a night limit", "add --limit");
  }
  if (typed.limit && !typed.genera.empty()) {
    refuse("--limit", "stands in place of genera", "leave out one or the other");
  }
  if (typed.past && typed.exit_code) {
    refuse("--exit-code", "is about nights now, not --past", "leave out one or the other");
  }
  if (!typed.past) {
    return NightsCommand{{typed.genera, season}, typed.exit_code};
  }
  return PastNightsCommand{{typed.genera,
                            maybe_number("--limit", typed.limit, limits),
                            maybe_number("--day-limit", typed.day_limit, limits)}};
}

climate::Archive typed_archive(const TypedWords& typed) {
  const std::array chosen{std::pair{typed.nearest, climate::Archive::station},
                          std::pair{typed.station.has_value(), climate::Archive::station},
                          std::pair{typed.archive, climate::Archive::reanalysis},
                          std::pair{typed.forecast, climate::Archive::forecast},
                          std::pair{typed.power, climate::Archive::power}};
  const auto is_chosen = [](const auto& choice) { return choice.first; };
  if (std::count_if(chosen.begin(), chosen.end(), is_chosen) > 1) {
    wrong_use("nightsow fetch",
              "more than one source is named",
              "one of --nearest, --station, --archive, --forecast, --power",
              "fetch one after the other");
  }
  for (const auto& [is_named, archive] : chosen) {
    if (is_named) {
      return archive;
    }
  }
  return climate::Archive::station;
}

FetchCommand fetch_command(const TypedWords& typed) {
  if (typed.latitude.has_value() != typed.longitude.has_value()) {
    wrong_use("nightsow fetch", "a place has latitude and longitude", "both or neither", "add one");
  }
  FetchCommand command;
  command.archive = typed_archive(typed);
  command.station = typed.station ? typed_text("--station", *typed.station) : "";
  if (typed.from) {
    command.from = typed_date("--from", *typed.from);
  }
  if (typed.base_url) {
    command.base_url = typed_text("--base-url", *typed.base_url);
  }
  command.dry_run = typed.dry_run;
  if (const auto seconds = maybe_number("--timeout", typed.timeout, timeouts)) {
    command.timeout_s = static_cast<int>(*seconds);
  }
  command.latitude = maybe_number("--latitude", typed.latitude, latitudes);
  command.longitude = maybe_number("--longitude", typed.longitude, longitudes);
  command.elevation_m = maybe_number("--elevation", typed.elevation, elevations);
  return command;
}

SeedOutlookCommand seed_outlook_command(const TypedWords& typed, std::string taxon) {
  SeedOutlookRequest request;
  request.taxon = std::move(taxon);
  request.age = typed_age("--age", *typed.age);
  if (typed.stored) {
    request.stored = typed_store("--stored", *typed.stored);
    request.stored_as_written = typed_text("--stored", *typed.stored);
  }
  if (typed.tested) {
    request.tested = typed_test("--tested", *typed.tested);
  }
  return {std::move(request), typed.why};
}

Command show_rule_command(const TypedWords& typed) {
  RulesShowCommand show = typed_rules_show(typed);
  if (typed.age) {
    return seed_outlook_command(typed, std::move(show.taxon));
  }
  if (typed.stored || typed.tested) {
    wrong_use(typed.stored ? "--stored" : "--tested", "goes with the age of seed", "", "add --age");
  }
  return show;
}

void refuse_missing_start_options(const TypedWords& typed) {
  Words missing;
  const std::array needed{std::pair{"--latitude DEG", &typed.latitude},
                          std::pair{"--longitude DEG", &typed.longitude},
                          std::pair{"--readings FILE", &typed.readings}};
  for (const auto& [name, text] : needed) {
    if (!*text) {
      missing.emplace_back(name);
    }
  }
  if (!missing.empty()) {
    wrong_use("nightsow start",
              fmt::format("a garden needs {}", fmt::join(missing, ", ")),
              "",
              "nightsow start --help shows an example");
  }
}

StartCommand start_command(const TypedWords& typed) {
  refuse_missing_start_options(typed);
  if (typed.folder && typed.garden) {
    wrong_use("nightsow start", "two folders are given", "DIR or --garden DIR", "leave out one");
  }
  StartCommand command;
  if (typed.folder || typed.garden) {
    command.folder =
        typed_folder("DIR", typed_text("DIR", typed.folder ? *typed.folder : *typed.garden));
  }
  command.readings = typed_text("--readings", *typed.readings);
  command.garden.latitude = typed_number("--latitude", *typed.latitude, latitudes);
  command.garden.longitude = typed_number("--longitude", *typed.longitude, longitudes);
  command.garden.elevation_m = maybe_number("--elevation", typed.elevation, elevations);
  if (typed.name) {
    command.garden.name = typed_text("--name", *typed.name);
  }
  if (typed.time_zone) {
    command.garden.time_zone = typed_text("--time-zone", *typed.time_zone);
  }
  if (typed.station) {
    command.garden.station = typed_text("--station", *typed.station);
  }
  if (typed.column) {
    command.garden.column = typed_text("--column", *typed.column);
  }
  return command;
}

Command command_of(const TypedWords& typed, std::optional<int> season) {
  if (!typed.show.empty()) {
    return ShowText{typed.show};
  }
  if (typed.command == "plan") {
    return plan_command(typed, season);
  }
  if (typed.command == "today") {
    return TodayCommand{};
  }
  if (typed.command == "nights") {
    return nights_command(typed, season);
  }
  if (typed.command == "whatif") {
    return typed_whatif(typed, season);
  }
  if (typed.command == "climate") {
    return ClimateCommand{{typed.all, season}};
  }
  if (typed.command == "backtest") {
    return BacktestCommand{};
  }
  if (typed.command == "fetch") {
    return fetch_command(typed);
  }
  if (typed.command == "rules list") {
    return typed_rules_list(typed);
  }
  if (typed.command == "rules show") {
    return show_rule_command(typed);
  }
  if (typed.command == "rules check") {
    return typed_rules_check(typed);
  }
  if (typed.command == "rules export") {
    return typed_rules_export(typed);
  }
  if (typed.command == "rules gaps") {
    return typed_rules_gaps(typed);
  }
  if (typed.command == "rules schema") {
    return RulesSchemaCommand{};
  }
  if (typed.command == "learn") {
    return typed_learn(typed);
  }
  if (typed.command == "review") {
    return ReviewCommand{{season}};
  }
  if (auto record = typed_record(typed)) {
    return *std::move(record);
  }
  assert(typed.command == "start");
  return start_command(typed);
}

} // namespace

CommandLine read_command_line(std::span<const std::string> words) {
  const TypedWords typed = sort_words(words);
  const CommonOptions common = common_options(typed);
  return {common, command_of(typed, common.season)};
}

} // namespace nightsow::planner
