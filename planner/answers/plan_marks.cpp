#include "planner/answers/plan_marks.hpp"

#include "species-rules/write_rule.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <map>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

// FNV-1a, 64 bits: http://www.isthe.com/chongo/tech/comp/fnv/ (from memory).
class Mark {
public:
  void add(std::string_view text) {
    for (const char c : text) {
      take(static_cast<unsigned char>(c));
    }
    take(0); // "ab", "c" is not "a", "bc"
  }

  void add(double number) { add(fmt::format("{:.6g}", number)); }

  void add(int number) { add(fmt::format("{}", number)); }

  void add(bool flag) { take(flag ? 1 : 2); }

  void add(Date day) { add(format_iso_date(day)); }

  void add(Celsius point) { add(point.degrees()); }

  void add(CelsiusDelta difference) { add(difference.kelvin()); }

  template <class Value> void add(const std::optional<Value>& value) {
    add(value.has_value());
    if (value) {
      add(*value);
    }
  }

  [[nodiscard]] std::string text() const { return fmt::format("{:016x}", state_); }

private:
  void take(unsigned char byte) {
    constexpr std::uint64_t prime = 0x100000001b3;
    state_ = (state_ ^ byte) * prime;
  }

  std::uint64_t state_ = 0xcbf29ce484222325;
};

std::optional<double> with_sown(const std::optional<double>& left, double sown) {
  return left ? std::optional{*left + sown} : std::nullopt;
}

// Harvests that lie in the future are cut at today, so only where they begin.
std::string row_mark(const Packet& packet, double sown) {
  Mark mark;
  mark.add(packet.taxon);
  mark.add(packet.bench);
  mark.add(with_sown(packet.seeds.low, sown));
  mark.add(with_sown(packet.seeds.high, sown));
  mark.add(packet.seeds.grams);
  mark.add(packet.harvested ? std::optional{packet.harvested->first} : std::nullopt);
  mark.add(packet.received ? std::optional{packet.received->first} : std::nullopt);
  for (const StoreStage& stage : packet.stored) {
    mark.add(stage.store_c);
    mark.add(stage.humidity);
    mark.add(stage.known);
    mark.add(stage.until);
  }
  if (packet.tested) {
    mark.add(packet.tested->sprouted);
    mark.add(packet.tested->of);
    mark.add(packet.tested->on);
    mark.add(packet.tested->at_c);
  }
  mark.add(packet.wanted_plants);
  mark.add(packet.irreplaceable);
  return mark.text();
}

std::string rule_mark(const species_rules::Lookup& lookup) {
  if (!lookup.found) {
    return {};
  }
  Mark mark;
  mark.add(species_rules::override_text(*lookup.found));
  return mark.text();
}

void add_bench(const Bench& bench, Mark& mark) {
  mark.add(bench.name);
  mark.add(bench.shelter);
  mark.add(bench.night_offset);
  mark.add(bench.day_offset);
  mark.add(bench.floor);
  mark.add(bench.vent_above);
  mark.add(bench.fixed_night);
  mark.add(bench.fixed_day);
  mark.add(bench.sun);
  mark.add(bench.shade);
  mark.add(bench.rain);
  mark.add(bench.pot_colour);
  mark.add(bench.frost_care);
  mark.add(bench.from);
  mark.add(bench.to);
  mark.add(bench.chilled);
  mark.add(bench.pots);
}

std::string garden_mark(const Garden& garden) {
  Mark mark;
  mark.add(garden.latitude);
  mark.add(garden.elevation_m);
  for (const Bench& bench : garden.benches) {
    add_bench(bench, mark);
  }
  for (const HeatMat& mat : garden.mats) {
    mark.add(mat.bench);
    mark.add(mat.rise);
    mark.add(mat.thermostat);
    mark.add(mat.pots);
  }
  for (const std::string& day : garden.sowing_days) {
    mark.add(day);
  }
  mark.add(garden.pots_per_day);
  for (const AwayPeriod& away : garden.away) {
    mark.add(away.from);
    mark.add(away.to);
  }
  return mark.text();
}

} // namespace

PlanMarks plan_marks(const LoadedGarden& garden) {
  std::map<std::string, double, std::less<>> sown;
  for (const RecordedSowing& sowing : garden.records.sowings) {
    sown[sowing.packet_id] += sowing.seeds;
  }
  std::map<std::string, std::string, std::less<>> rules; // packets of one taxon share it
  PlanMarks marks{garden_mark(garden.garden), {}};
  for (const Packet& packet : garden.packets) {
    const auto used = sown.find(packet.id);
    const double seeds = used == sown.end() ? 0.0 : used->second;
    auto rule = rules.find(packet.taxon);
    if (rule == rules.end()) {
      rule = rules.emplace(packet.taxon, rule_mark(garden.catalogue->rule_for(packet.taxon))).first;
    }
    marks.packets.push_back({packet.id, row_mark(packet, seeds), rule->second, seeds});
  }
  return marks;
}

} // namespace nightsow::planner
