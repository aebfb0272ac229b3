#include "tests/support/invented_garden.hpp"

#include "planner/garden/packet_values.hpp"
#include "planner/garden/plain_text.hpp"
#include "planner/garden/settle_packets.hpp"
#include "planner/garden/store_stages.hpp"

#include <algorithm>
#include <charconv>
#include <optional>
#include <stdexcept>
#include <utility>

namespace nightsow::support {

namespace {

using planner::DateRange;
using planner::Packet;

constexpr int garden_year = 2026;
constexpr int first_year = 1998;
constexpr int years_of_readings = 29;

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  const std::size_t last = text.find_last_not_of(' ');
  return first == std::string_view::npos ? "" : text.substr(first, last - first + 1);
}

// What stands behind a word and a blank, when the text begins so.
std::optional<std::string_view> after_word(std::string_view text, std::string_view word) {
  if (!text.starts_with(word) || text.size() <= word.size() || text[word.size()] != ' ') {
    return std::nullopt;
  }
  return trimmed(text.substr(word.size()));
}

std::optional<DateRange> range_from(std::string_view text, Date today) {
  constexpr std::string_view ago = " days ago";
  if (!text.ends_with(ago)) {
    return planner::parse_date_range(text);
  }
  int days = 0;
  const std::string_view number = text.substr(0, text.size() - ago.size());
  if (std::from_chars(number.data(), number.data() + number.size(), days).ec != std::errc{}) {
    return std::nullopt;
  }
  return DateRange{today - Days{days}, today - Days{days}};
}

// Whether the part was understood.
bool set_part(std::string_view part, Date today, Packet& packet) {
  if (const auto harvested = after_word(part, "harvested")) {
    packet.harvested = range_from(*harvested, today);
    return packet.harvested.has_value();
  }
  if (const auto received = after_word(part, "received")) {
    packet.received = range_from(*received, today);
    return packet.received.has_value();
  }
  if (const auto store = after_word(part, "stored")) {
    const auto stages = planner::parse_store_stages(*store);
    packet.stored = stages.value_or(packet.stored);
    return stages.has_value();
  }
  if (const auto bench = after_word(part, "on")) {
    packet.bench = *bench;
    return true;
  }
  if (const auto id = after_word(part, "as")) {
    packet.id = *id;
    return true;
  }
  const auto count = planner::parse_seed_count(part);
  packet.seeds = count.value_or(packet.seeds);
  return count.has_value();
}

planner::Garden plain_garden(const InventedGarden& invented) {
  planner::Garden garden;
  garden.name = "Invented";
  const bool north = invented.climate.hottest_day_of_year > 100;
  garden.latitude = north ? invented.degrees_from_equator : -invented.degrees_from_equator;
  garden.longitude = 20.0;
  garden.readings.push_back({"readings/invented.csv", "", {}, "", ""});
  garden.benches = invented.benches;
  if (garden.benches.empty()) {
    garden.benches.push_back(open_bench());
  }
  garden.mats = invented.mats;
  garden.sowing_days = invented.sowing_days;
  garden.away = invented.away;
  return garden;
}

} // namespace

InventedClimate mild_coast() {
  return {
      .night_mean_c = 14.0, .night_half_swing_k = 6.0, .day_above_night_k = 6.5, .night_sd_k = 1.2};
}

InventedClimate cool_summers() {
  return {
      .night_mean_c = 8.3, .night_half_swing_k = 3.7, .day_above_night_k = 8.0, .night_sd_k = 2.4};
}

InventedClimate warm_summers() {
  return {.night_mean_c = 11.8,
          .night_half_swing_k = 4.9,
          .day_above_night_k = 11.5,
          .night_sd_k = 3.4};
}

InventedClimate tropics() {
  return {
      .night_mean_c = 24.0, .night_half_swing_k = 1.2, .day_above_night_k = 7.0, .night_sd_k = 1.0};
}

Date hottest_night_of(const InventedGarden& garden) {
  return *make_date(garden_year, 1, 1) + Days{garden.climate.hottest_day_of_year - 1};
}

Date today_of(const InventedGarden& garden) {
  return hottest_night_of(garden) + Days{garden.days_after_hottest};
}

climate::MergedReadings merged(const climate::DailySeries& series) {
  climate::MergedReadings readings;
  readings.series = series;
  readings.files = {"readings/invented.csv"};
  readings.night_place.resize(series.size());
  readings.day_place.resize(series.size());
  for (std::size_t i = 0; i < series.size(); ++i) {
    readings.night_place[i].line = static_cast<std::uint32_t>(i + 2);
    readings.day_place[i].line = static_cast<std::uint32_t>(i + 2);
  }
  return readings;
}

Packet packet_from(std::string_view text, Date today) {
  Packet packet;
  const std::size_t taxon_end = std::min(text.find(','), text.size());
  packet.taxon = trimmed(text.substr(0, taxon_end));
  packet.id = planner::slug(packet.taxon);
  text.remove_prefix(taxon_end);
  while (!text.empty()) {
    text.remove_prefix(1);
    const std::size_t end = std::min(text.find(','), text.size());
    const std::string_view part = trimmed(text.substr(0, end));
    if (!set_part(part, today, packet)) {
      throw std::invalid_argument("not a part of a packet: \"" + std::string(part) + '"');
    }
    text.remove_prefix(end);
  }
  return packet;
}

planner::GardenFolder folder_of(const InventedGarden& invented,
                                climate::MergedReadings station,
                                Date today) {
  planner::GardenFolder folder;
  folder.garden = plain_garden(invented);
  folder.station = std::move(station);
  folder.files.push_back({"readings/invented.csv", "daily table", {}, "°C", "", false});
  for (const std::string& text : invented.packets) {
    folder.packets.push_back(packet_from(text, today));
  }
  planner::give_ids(folder.packets, "packets.csv", folder.problems);
  planner::settle_harvests(folder.packets, "packets.csv", folder.problems);
  folder.catalogue = embedded_catalogue();
  return folder;
}

planner::GardenFolder folder_of(const InventedGarden& invented) {
  InventedClimate climate = invented.climate;
  climate.first =
      *make_date(first_year, 1, 1) + Days{climate.hottest_day_of_year - hottest_in_the_south};
  climate.years = years_of_readings;
  const Date today = today_of(invented);
  const climate::DailySeries whole = invented_series(climate);
  const Date last = invented.readings_end_before_today > 0
                        ? today - Days{invented.readings_end_before_today}
                        : whole.last();
  climate::DailySeries known{whole.first(),
                             static_cast<std::size_t>(days_between(whole.first(), last) + 1)};
  for (std::size_t i = 0; i < known.size(); ++i) {
    known.set_night(i, whole.night_c()[i]);
    known.set_day(i, whole.day_c()[i]);
  }
  return folder_of(invented, merged(known), today);
}

planner::LoadedGarden garden_of(const InventedGarden& invented) {
  return planner::as_of(folder_of(invented), today_of(invented));
}

std::shared_ptr<const species_rules::Catalogue> embedded_catalogue() {
  static const auto catalogue =
      std::make_shared<const species_rules::Catalogue>(species_rules::Catalogue::embedded());
  return catalogue;
}

planner::Bench open_bench() {
  planner::Bench bench;
  bench.name = "open bench";
  bench.shelter = "open";
  return bench;
}

planner::Bench bench_with(std::string name, double night_k, double day_k) {
  planner::Bench bench;
  bench.name = std::move(name);
  bench.night_offset = CelsiusDelta{night_k};
  bench.day_offset = CelsiusDelta{day_k};
  return bench;
}

planner::HeatMat mat_with(double rise_k, double thermostat_c) {
  planner::HeatMat mat;
  mat.name = "mat";
  mat.rise = CelsiusDelta{rise_k};
  mat.thermostat = Celsius{thermostat_c};
  return mat;
}

} // namespace nightsow::support
