#include "planner/answers/make_heads.hpp"

#include "climate/lean_on_normals.hpp"
#include "climate/sun.hpp"
#include "planner/answers/figures.hpp"
#include "planner/garden/drawn_station.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

// In the temperate and warm belts nights are hottest while days are long. Where they are short
// then, the latitude most likely lacks its sign.
void add_latitude_warning(const LoadedGarden& garden,
                          const StationClimate& station,
                          std::vector<Reason>& warnings) {
  constexpr double tropic_deg = 23.5;
  constexpr double half_day_hours = 12.0;
  const Date hottest = in_year(station.turning.hottest, year_of(garden.today));
  const double latitude = garden.garden.latitude;
  if (station.turning.phases && std::abs(latitude) > tropic_deg &&
      climate::day_length_hours(latitude, hottest) < half_day_hours) {
    warnings.push_back({ReasonCode::latitude_doubtful,
                        {{"latitude", rounded_tenth(latitude)}, {"hottest", hottest}}});
  }
}

// Once for all benches that have no logger of their own, and once for each that has.
void add_guard_warnings(const LoadedGarden& garden, std::vector<Reason>& warnings) {
  std::vector<ReadingsGuard> guards;
  std::vector<Reason> suspect;
  bool by_station = false;
  for (const Bench& bench : garden.garden.benches) {
    const bool logged = logger_on(garden, bench.name) != nullptr;
    if (!logged && by_station) {
      continue;
    }
    by_station = by_station || !logged;
    guards.push_back(readings_guard(garden, bench.name));
    if (guards.back().suspect > 0) {
      suspect.push_back(readings_suspect_reason(guards.back()));
      if (logged) {
        suspect.back().values.push_back({"bench", bench.name});
      }
    }
  }
  const auto oldest = std::max_element(
      guards.begin(), guards.end(), [](const ReadingsGuard& a, const ReadingsGuard& b) {
        return a.days_old < b.days_old;
      });
  if (oldest->stale && oldest->last) {
    warnings.push_back(readings_stale_reason(*oldest));
  }
  warnings.insert(warnings.end(), suspect.begin(), suspect.end());
}

// Of the last two weeks up to the last night known.
void add_highs_warning(const LoadedGarden& garden, std::vector<Reason>& warnings) {
  const std::optional<Date> last = climate::last_night(garden.station);
  if (!last) {
    return;
  }
  const std::vector<float> highs_c =
      garden.station.days_from(*last - Days{climate::holds_of - 1}, climate::holds_of);
  if (!climate::mean_of_those_there(highs_c, climate::holds_least_maxima)) {
    warnings.push_back({ReasonCode::highs_missing,
                        {{"of", climate::holds_of}, {"least", climate::holds_least_maxima}}});
  }
}

void add_height_warning(const LoadedGarden& garden, std::vector<Reason>& warnings) {
  constexpr double metres_a_km = 1000.0;
  const CelsiusDelta height = from_station_height(garden);
  if (height != CelsiusDelta{}) {
    warnings.push_back(
        {ReasonCode::station_height,
         {{"station_m", std::round(*garden.station_elevation_m)},
          {"garden_m", std::round(*garden.garden.elevation_m)},
          {"height_k", CelsiusDelta{rounded_tenth(height.kelvin())}},
          {"km_k", CelsiusDelta{rounded_tenth(metres_a_km * climate::lapse_k_per_m)}}}});
  }
}

void add_bench_warnings(const LoadedGarden& garden,
                        const StationClimate& station,
                        std::vector<Reason>& warnings) {
  bool told = false;
  for (const Bench& bench : garden.garden.benches) {
    const climate::BenchAir air = bench_air(garden, station, bench);
    if (air.offset.source == climate::BenchSource::shelter_default) {
      warnings.push_back(*bench_reason(air, bench));
      told = true;
    }
    if (air.transfer.days_in_sun > 0) {
      warnings.push_back({ReasonCode::logger_in_sun,
                          {{"bench", bench.name},
                           {"days", air.transfer.days_in_sun},
                           {"rise_k", CelsiusDelta{climate::most_day_rise_k}}}});
    }
  }
  if (told) {
    warnings.push_back({ReasonCode::one_kelvin_matters, {}});
  }
}

} // namespace

Reason readings_stale_reason(const ReadingsGuard& guard) {
  return {ReasonCode::readings_stale, {{"last", *guard.last}, {"days", guard.days_old}}};
}

Reason readings_suspect_reason(const ReadingsGuard& guard) {
  Reason reason{ReasonCode::readings_suspect,
                {{"findings", guard.suspect}, {"nights", suspect_nights}}};
  if (guard.of_logger > 0) {
    reason.values.push_back({"logger", guard.of_logger});
  }
  return reason;
}

std::optional<Reason> bench_reason(const climate::BenchAir& air, const Bench& bench) {
  const CelsiusDelta night{rounded_tenth(air.offset.night.kelvin())};
  const CelsiusDelta doubt{rounded_tenth(air.night_doubt.kelvin())};
  switch (air.offset.source) {
  case climate::BenchSource::fixed_temperature:
    return Reason{
        ReasonCode::bench_fixed,
        {{"bench", bench.name}, {"night_c", bench.fixed_night.value_or(climate::chilled_place)}}};
  case climate::BenchSource::written_offset:
    return Reason{ReasonCode::bench_by_offset,
                  {{"bench", bench.name},
                   {"night_k", air.offset.night},
                   {"day_k", CelsiusDelta{rounded_tenth(air.offset.day.kelvin())}}}};
  case climate::BenchSource::fitted_transfer:
    return Reason{ReasonCode::bench_by_logger,
                  {{"bench", bench.name},
                   {"pairs", air.transfer.paired_nights},
                   {"night_k", night},
                   {"stray_k", doubt}}};
  case climate::BenchSource::shelter_default:
    return Reason{ReasonCode::bench_by_shelter,
                  {{"bench", bench.name},
                   {"shelter", bench.shelter},
                   {"night_k", night},
                   {"doubt_k", doubt}}};
  case climate::BenchSource::station_as_is:
    break;
  }
  return std::nullopt;
}

GardenHead garden_head(const Garden& garden) {
  return {garden.name, garden.latitude, garden.longitude};
}

PhasesHead phases_head(const StationClimate& station, const climate::Season& season) {
  return {season.hottest,
          season.coldest,
          season.limb_begins,
          rounded_tenth(station.turning.swing.kelvin())};
}

ReadingsHead readings_head(const LoadedGarden& garden, int seasons) {
  ReadingsHead head;
  if (knows_normals_only(garden.garden)) {
    return head;
  }
  head.seasons = seasons;
  head.findings = static_cast<int>(garden.findings.size());
  if (garden.station.empty()) {
    return head;
  }
  const std::span<const float> nights = garden.station.night_c();
  const auto there =
      std::count_if(nights.begin(), nights.end(), [](float c) { return !std::isnan(c); });
  head.from = garden.station.first();
  head.to = climate::last_night(garden.station);
  head.complete = rounded_share(static_cast<double>(there) / static_cast<double>(nights.size()));
  return head;
}

int usable_seasons(const StationClimate& station, const std::optional<climate::Season>& before) {
  if (!station.turning.phases) {
    return 0;
  }
  const std::vector<climate::SearchedSeason> seasons =
      climate::searched_seasons({"", {}, station.air}, *station.turning.phases);
  return static_cast<int>(
      std::count_if(seasons.begin(), seasons.end(), [&](const climate::SearchedSeason& searched) {
        const bool past = !before || searched.season.hottest < before->hottest;
        return past && searched.few_missing();
      }));
}

void require_past_season(const LoadedGarden& garden, const climate::Season& season, int usable) {
  if (usable > 0) {
    return;
  }
  throw InputError(
      {Severity::error,
       "readings",
       0,
       0,
       fmt::format("not one whole season before that of {} among the readings ({} to {})",
                   season.name,
                   format_iso_date(garden.station.first()),
                   format_iso_date(garden.station.last())),
       fmt::format("at least {} nights in a row from the hottest night of a year on",
                   climate::nights_searched),
       "add earlier readings of your place or of the nearest station; five seasons or "
       "more make the dates worth planning by"});
}

void require_season_told(const LoadedGarden& garden, const climate::Season& season) {
  constexpr Days year{366};
  const Date last = std::max(garden.station.last(), garden.today);
  const Date first = garden.station.first();
  if (season.planning_begins <= last + year && season.next_planning_begins > first) {
    return;
  }
  throw UsageError({Severity::error,
                    "--season",
                    0,
                    0,
                    fmt::format("season {} lies outside of what the readings tell, {} to {}",
                                season.name,
                                format_iso_date(first),
                                format_iso_date(garden.station.last())),
                    fmt::format("a season from {} to {}", year_of(first) + 1, year_of(last) + 1),
                    "leave --season out for the one of today"});
}

std::vector<Reason> warnings_of(const LoadedGarden& garden,
                                const StationClimate& station,
                                int seasons) {
  std::vector<Reason> warnings;
  add_guard_warnings(garden, warnings);
  if (!station.turning.phases) {
    warnings.push_back(no_cooling_limb_reason(station));
  } else if (knows_normals_only(garden.garden)) {
    warnings.push_back({ReasonCode::few_seasons, {{"seasons", 0}}});
  } else if (seasons < climate::few_seasons) {
    warnings.push_back({ReasonCode::few_seasons, {{"seasons", seasons}}});
  }
  if (station.leans) {
    warnings.push_back({ReasonCode::leans_on_normals,
                        {{"years", rounded_tenth(climate::years_of(station.fitted.night))}}});
  }
  add_highs_warning(garden, warnings);
  add_latitude_warning(garden, station, warnings);
  add_height_warning(garden, warnings);
  add_bench_warnings(garden, station, warnings);
  for (const Problem& problem : garden.problems) {
    warnings.push_back({ReasonCode::file_problem, {{"text", to_text(problem)}}});
  }
  return warnings;
}

std::optional<climate::Season> chosen_season(const StationClimate& station,
                                             Date today,
                                             std::optional<int> asked) {
  if (!station.turning.phases) {
    return std::nullopt;
  }
  const climate::Phases& phases = *station.turning.phases;
  return asked ? climate::season_named(phases, *asked) : climate::season_planned_on(phases, today);
}

Reason no_cooling_limb_reason(const StationClimate& station) {
  const bool peaks = station.turning.reason == climate::NoPhases::several_peaks;
  return {ReasonCode::no_cooling_limb,
          {{"swing_k", station.turning.swing},
           {"why", std::string(peaks ? "several_peaks" : "swing_too_small")}}};
}

} // namespace nightsow::planner
