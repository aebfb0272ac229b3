#include "planner/garden/change.hpp"

#include "climate/base/nearest_name.hpp"
#include "climate/base/problem.hpp"
#include "species-rules/overrides.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr Days half_a_year{mirror_days};

void shift(Date& day) {
  day += half_a_year;
}

void shift(std::optional<Date>& day) {
  if (day) {
    shift(*day);
  }
}

void shift(std::optional<DateRange>& range) {
  if (range) {
    shift(range->first);
    shift(range->last);
  }
}

void shift(Packet& packet) {
  shift(packet.harvested);
  shift(packet.received);
  for (StoreStage& stage : packet.stored) {
    shift(stage.until);
  }
  if (packet.tested) {
    shift(packet.tested->on);
  }
}

void shift(climate::DailySeries& series) {
  climate::DailySeries shifted{series.first() + half_a_year, series.size()};
  for (std::size_t i = 0; i < series.size(); ++i) {
    shifted.set_night(i, series.night_c()[i], series.night_mark()[i]);
    shifted.set_day(i, series.day_c()[i]);
  }
  series = shifted;
}

void shift(std::vector<climate::Finding>& findings) {
  for (climate::Finding& finding : findings) {
    shift(finding.date);
  }
}

// Six months, since a value for a month cannot move by 183 days.
void shift(MonthlyNormals& normals) {
  for (std::vector<double>* months : {&normals.night_c, &normals.day_c}) {
    std::rotate(months->begin(),
                months->begin() + static_cast<std::ptrdiff_t>(months->size() / 2),
                months->end());
  }
}

void shift(Garden& garden) {
  garden.latitude = -garden.latitude;
  for (AwayPeriod& away : garden.away) {
    shift(away.from);
    shift(away.to);
  }
  for (Bench& bench : garden.benches) {
    shift(bench.from);
    shift(bench.to);
  }
  if (garden.monthly_normals) {
    shift(*garden.monthly_normals);
  }
}

void make(const Mirror& /*mirror*/, LoadedGarden& garden) {
  shift(garden.garden);
  shift(garden.today);
  shift(garden.station);
  shift(garden.forecast);
  for (auto& [bench, logger] : garden.bench_loggers) {
    shift(logger);
  }
  shift(garden.findings);
  for (auto& [bench, doubts] : garden.logger_doubts) {
    shift(doubts.findings);
  }
  for (Packet& packet : garden.packets) {
    shift(packet);
  }
}

float warmer_by(float reading_c, CelsiusDelta by) {
  return static_cast<float>(static_cast<double>(reading_c) + by.kelvin());
}

void warm(climate::DailySeries& series, CelsiusDelta by) {
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_night(i, warmer_by(series.night_c()[i], by), series.night_mark()[i]);
    series.set_day(i, warmer_by(series.day_c()[i], by));
  }
}

// Benches grow warmer with their station. Findings stay: they tell what the files hold.
void make(const Warmer& warmer, LoadedGarden& garden) {
  warm(garden.station, warmer.by);
  warm(garden.forecast, warmer.by);
  for (auto& [bench, logger] : garden.bench_loggers) {
    warm(logger, warmer.by);
  }
  if (garden.garden.monthly_normals) {
    MonthlyNormals& normals = *garden.garden.monthly_normals;
    for (std::vector<double>* months : {&normals.night_c, &normals.day_c}) {
      for (double& month_c : *months) {
        month_c += warmer.by.kelvin();
      }
    }
  }
}

[[noreturn]] void refuse(std::string option,
                         std::string found,
                         std::string expected,
                         std::string remedy) {
  throw UsageError({Severity::error,
                    std::move(option),
                    0,
                    0,
                    std::move(found),
                    std::move(expected),
                    std::move(remedy)});
}

void make(const OnBench& bench, LoadedGarden& garden) {
  std::vector<std::string> names;
  for (const Bench& known : garden.garden.benches) {
    names.push_back(known.name);
  }
  if (std::find(names.begin(), names.end(), bench.name) == names.end()) {
    const auto nearest = nearest_name(bench.name, names);
    refuse("--bench",
           fmt::format("the garden has no bench \"{}\"", bench.name),
           fmt::format("one of {}", fmt::join(names, ", ")),
           nearest ? fmt::format("did you mean {}?", nearest->name) : "");
  }
  for (Packet& packet : garden.packets) {
    packet.bench = bench.name;
  }
}

void make(const OtherPackets& other, LoadedGarden& garden) {
  garden.packets = other.packets;
}

// A number where it reads as one, else a word.
nlohmann::json value_of(const std::string& written) {
  nlohmann::json value = nlohmann::json::parse(written, nullptr, false);
  return value.is_number() ? value : nlohmann::json(written);
}

// A grower's file of rules that gives this value and nothing else.
species_rules::RuleText file_with(const OneRuleValue& rule, const LoadedGarden& garden) {
  const species_rules::Lookup lookup = garden.catalogue->rule_for(rule.taxon);
  if (!lookup.found || !lookup.read_as.empty()) {
    const std::string& nearest = lookup.found ? lookup.read_as : lookup.suggestion;
    refuse("--rule",
           fmt::format("no rule for \"{}\"", rule.taxon),
           "a genus or species of the catalogue",
           nearest.empty() ? "see `nightsow rules list`"
                           : fmt::format("did you mean {}?", nearest));
  }
  const species_rules::RuleFor& known = *lookup.found;
  const bool of_species = rule.taxon.find(' ') != std::string::npos;
  const std::string& name = of_species ? known.accepted : known.rule_name;
  const std::size_t blank = name.find(' ');
  nlohmann::json given{{"value", value_of(rule.value)}, {"evidence", "grower"}};
  if (given["value"].is_number()) {
    // Asked for as it stands, so without doubt.
    given["low"] = given["value"];
    given["high"] = given["value"];
  }
  const nlohmann::json values{{rule.field, given}};
  nlohmann::json genus{{"genus", name.substr(0, blank)}};
  if (blank == std::string::npos) {
    genus["rule"] = values;
  } else {
    genus["species"] = nlohmann::json::array(
        {nlohmann::json{{"species", name.substr(blank + 1)}, {"rule", values}}});
  }
  const nlohmann::json file{
      {"schema", 1}, {"family", known.family}, {"genera", nlohmann::json::array({genus})}};
  return {"--rule", file.dump()};
}

void make(const OneRuleValue& rule, LoadedGarden& garden) {
  const std::vector<species_rules::RuleText> files{file_with(rule, garden)};
  species_rules::Overlaid over = species_rules::overlaid(garden.catalogue, files, std::nullopt);
  if (!over.faults.empty()) {
    const Problem& fault = over.faults.front();
    refuse(fmt::format("--rule {}.{}={}", rule.taxon, rule.field, rule.value),
           fault.found,
           fault.expected,
           fault.remedy);
  }
  garden.catalogue = std::move(over.catalogue);
}

void make(const OtherPlace& other, LoadedGarden& garden) {
  const LoadedGarden& place = *other.place;
  garden.garden.latitude = place.garden.latitude;
  garden.garden.longitude = place.garden.longitude;
  garden.garden.elevation_m = place.garden.elevation_m;
  garden.garden.time_zone = place.garden.time_zone;
  garden.garden.readings = place.garden.readings;
  garden.garden.monthly_normals = place.garden.monthly_normals;
  garden.station = place.station;
  garden.forecast = place.forecast;
  garden.station_elevation_m = place.station_elevation_m;
  garden.findings = place.findings;
  garden.suspicions = place.suspicions;
  garden.files = place.files;
  garden.bench_loggers.clear();
  garden.logger_doubts.clear();
}

} // namespace

LoadedGarden apply(Change change, LoadedGarden garden) {
  std::visit([&](const auto& kind) { make(kind, garden); }, change);
  return garden;
}

} // namespace nightsow::planner
