#include "planner/garden/garden_file.hpp"

#include "climate/base/json_node.hpp"
#include "climate/base/located_json.hpp"
#include "climate/base/nearest_name.hpp"
#include "planner/garden/mix_file.hpp"
#include "planner/garden/object_keys.hpp"
#include "planner/garden/time_zone.hpp"
#include "planner/garden/weekday.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

// Bounds that no garden reaches: they catch slips (a lost decimal point, °F), not odd places.
constexpr double coldest_c = -60.0;
constexpr double hottest_c = 70.0;
constexpr double widest_offset_c = 30.0;
constexpr double lowest_land_m = -450.0;
constexpr double highest_land_m = 9000.0;
constexpr double most_watts = 100'000.0;
constexpr int most_pots = 1'000'000;
constexpr double most_money = 1e9;

std::string text(const JsonNode& node) {
  return node.text();
}

std::string some_text(const JsonNode& node) {
  return node.some_text();
}

bool yes_or_no(const JsonNode& node) {
  return node.yes_or_no();
}

Date date_of(const JsonNode& node) {
  return node.date();
}

Celsius temperature(const JsonNode& node) {
  return Celsius{node.number(coldest_c, hottest_c)};
}

CelsiusDelta difference(const JsonNode& node) {
  return CelsiusDelta{node.number(-widest_offset_c, widest_offset_c)};
}

CelsiusDelta rise(const JsonNode& node) {
  return CelsiusDelta{node.number(0.0, widest_offset_c)};
}

template <int Most> double degrees(const JsonNode& node) {
  return node.number(-Most, Most);
}

double elevation(const JsonNode& node) {
  return node.number(lowest_land_m, highest_land_m);
}

double share(const JsonNode& node) {
  return node.number(0.0, 1.0);
}

double watts(const JsonNode& node) {
  return node.number(0.0, most_watts);
}

double price(const JsonNode& node) {
  return node.number(0.0, most_money);
}

int pots(const JsonNode& node) {
  return node.whole_number(1, most_pots);
}

constexpr std::array<std::string_view, 2> kinds{"readings", "forecast"};
constexpr std::array<std::string_view, 6> shelters{
    "open", "wall", "cold frame", "unheated glass", "plastic tunnel", "indoors"};
constexpr std::array<std::string_view, 2> pot_colours{"pale", "dark"};
constexpr std::array<std::string_view, 3> frost_cares{"none", "fleece", "in"};

ReadingsEntry::Kind kind(const JsonNode& node) {
  return node.one_of(kinds) == "forecast" ? ReadingsEntry::Kind::forecast
                                          : ReadingsEntry::Kind::readings;
}

template <const auto& Words> std::string word(const JsonNode& node) {
  return node.one_of(Words);
}

std::string time_zone(const JsonNode& node) {
  std::string zone = node.text();
  if (!is_time_zone(zone)) {
    node.fail(fmt::format("\"{}\" is no known time zone", zone),
              "a name of the tz database such as \"Africa/Johannesburg\"",
              did_you_mean(zone, time_zone_names()));
  }
  return zone;
}

std::vector<double> twelve_months(const JsonNode& node) {
  std::vector<double> values;
  for (const JsonNode& month : node.elements()) {
    values.push_back(month.number(coldest_c, hottest_c));
  }
  if (values.size() != 12) {
    node.fail_as("a list of 12 values, January first");
  }
  return values;
}

std::vector<std::string> days_of_week(const JsonNode& node) {
  std::vector<std::string> days;
  for (const JsonNode& day : node.elements()) {
    days.push_back(day.one_of(weekday_words));
  }
  return days;
}

constexpr auto readings_keys = std::to_array<Key<ReadingsEntry>>({
    {"file", set<&ReadingsEntry::file, some_text>, required},
    {"bench", set<&ReadingsEntry::bench, text>},
    {"kind", set<&ReadingsEntry::kind, kind>},
    {"station", set<&ReadingsEntry::station, some_text>},
    {"column", set<&ReadingsEntry::column, some_text>},
});

constexpr auto normals_keys = std::to_array<Key<MonthlyNormals>>({
    {"night_c", set<&MonthlyNormals::night_c, twelve_months>, required},
    {"day_c", set<&MonthlyNormals::day_c, twelve_months>, required},
});

constexpr auto bench_keys = std::to_array<Key<Bench>>({
    {"name", set<&Bench::name, some_text>, required},
    {"shelter", set<&Bench::shelter, word<shelters>>},
    {"night_offset_c", set<&Bench::night_offset, difference>},
    {"day_offset_c", set<&Bench::day_offset, difference>},
    {"floor_c", set<&Bench::floor, temperature>},
    {"vent_above_c", set<&Bench::vent_above, temperature>},
    {"fixed_night_c", set<&Bench::fixed_night, temperature>},
    {"fixed_day_c", set<&Bench::fixed_day, temperature>},
    {"sun", set<&Bench::sun, share>},
    {"shade", set<&Bench::shade, share>},
    {"rain", set<&Bench::rain, yes_or_no>},
    {"pot_colour", set<&Bench::pot_colour, word<pot_colours>>},
    {"frost_care", set<&Bench::frost_care, word<frost_cares>>},
    {"from", set<&Bench::from, date_of>},
    {"to", set<&Bench::to, date_of>},
    {"chilled", set<&Bench::chilled, yes_or_no>},
    {"pots", set<&Bench::pots, pots>},
});

constexpr auto mat_keys = std::to_array<Key<HeatMat>>({
    {"name", set<&HeatMat::name, some_text>},
    {"bench", set<&HeatMat::bench, some_text>},
    {"rise_c", set<&HeatMat::rise, rise>, required},
    {"thermostat_c", set<&HeatMat::thermostat, temperature>},
    {"watts", set<&HeatMat::watts, watts>},
    {"pots", set<&HeatMat::pots, pots>},
});

constexpr auto away_keys = std::to_array<Key<AwayPeriod>>({
    {"from", set<&AwayPeriod::from, date_of>, required},
    {"to", set<&AwayPeriod::to, date_of>, required},
});

MonthlyNormals normals(const JsonNode& node) {
  MonthlyNormals read = read_object(node, normals_keys);
  for (std::size_t month = 0; month < read.night_c.size(); ++month) {
    if (read.night_c[month] > read.day_c[month]) {
      node.fail_as("no night above the day of its month; are night_c and day_c exchanged?");
    }
  }
  return read;
}

std::vector<ReadingsEntry> read_entries(const JsonNode& list) {
  return read_list(list, readings_keys);
}

std::vector<HeatMat> read_mats(const JsonNode& list) {
  return read_list(list, mat_keys);
}

void check_order(const JsonNode& period) {
  const auto from = period.member("from");
  const auto to = period.member("to");
  if (from && to && to->date() < from->date()) {
    to->fail(R"("to" lies before "from")", "the last day of the period, included", "correct it");
  }
}

std::vector<AwayPeriod> read_away(const JsonNode& list) {
  std::vector<AwayPeriod> periods = read_list(list, away_keys);
  for (const JsonNode& period : list.elements()) {
    check_order(period);
  }
  return periods;
}

std::vector<Bench> read_benches(const JsonNode& list) {
  std::vector<Bench> benches;
  for (const JsonNode& element : list.elements()) {
    Bench bench = read_object(element, bench_keys);
    check_order(element);
    if (std::any_of(benches.begin(), benches.end(), [&](const Bench& other) {
          return other.name == bench.name;
        })) {
      element.member("name")->fail(fmt::format("a second bench \"{}\"", bench.name),
                                   "every bench with a name of its own",
                                   "rename one of them");
    }
    benches.push_back(std::move(bench));
  }
  return benches;
}

// The schema's number is there so that a later version can tell what it reads.
void check_schema(Garden& /*garden*/, const JsonNode& node) {
  static_cast<void>(node.whole_number(1, 1));
}

constexpr auto garden_keys = std::to_array<Key<Garden>>({
    {"schema", check_schema},
    {"name", set<&Garden::name, text>},
    {"latitude", set<&Garden::latitude, degrees<90>>, required},
    {"longitude", set<&Garden::longitude, degrees<180>>, required},
    {"elevation_m", set<&Garden::elevation_m, elevation>},
    {"time_zone", set<&Garden::time_zone, time_zone>},
    {"readings", set<&Garden::readings, read_entries>},
    {"monthly_normals", set<&Garden::monthly_normals, normals>},
    {"benches", set<&Garden::benches, read_benches>},
    {"mats", set<&Garden::mats, read_mats>},
    {"sowing_days", set<&Garden::sowing_days, days_of_week>},
    {"pots_per_day", set<&Garden::pots_per_day, pots>},
    {"away", set<&Garden::away, read_away>},
    {"mix", read_mix},
    {"price_per_kwh", set<&Garden::price_per_kwh, price>},
    {"pots", set<&Garden::pot_sizes, read_pot_sizes>},
});

Bench open_bench() {
  Bench bench;
  bench.name = "open bench";
  bench.shelter = "open";
  return bench;
}

// Readings and mats may stand before the benches that they name, so this comes last.
void check_named_benches(const JsonNode& root, std::string_view list, const Garden& garden) {
  const auto entries = root.member(list);
  if (!entries) {
    return;
  }
  std::vector<std::string> names;
  for (const Bench& bench : garden.benches) {
    names.push_back(bench.name);
  }
  for (const JsonNode& entry : entries->elements()) {
    const auto bench = entry.member("bench");
    if (!bench || bench->text().empty() ||
        std::find(names.begin(), names.end(), bench->text()) != names.end()) {
      continue;
    }
    bench->fail(fmt::format("the garden has no bench \"{}\"", bench->text()),
                fmt::format("one of: {}", fmt::join(names, ", ")),
                did_you_mean(bench->text(), names));
  }
}

// A garden with one mat need not name it, nor the bench under it.
void name_mats(Garden& garden) {
  for (HeatMat& mat : garden.mats) {
    if (mat.name.empty()) {
      mat.name = "mat";
    }
    if (mat.bench.empty()) {
      mat.bench = garden.benches.front().name;
    }
  }
}

} // namespace

Garden read_garden_file(std::string_view text, std::string_view where) {
  const LocatedJson file = LocatedJson::parse(text, where);
  const JsonNode root{file};
  Garden garden = read_object(root, garden_keys);
  if (garden.readings.empty() && !garden.monthly_normals) {
    root.fail("the garden names no readings",
              std::string(needed_readings),
              std::string(how_to_name_readings));
  }
  if (garden.benches.empty()) {
    garden.benches.push_back(open_bench());
  }
  check_named_benches(root, "readings", garden);
  check_named_benches(root, "mats", garden);
  name_mats(garden);
  return garden;
}

} // namespace nightsow::planner
