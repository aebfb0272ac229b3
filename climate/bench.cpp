#include "climate/bench.hpp"

#include "climate/sun.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace nightsow::climate {

namespace {

constexpr double least_height_m = 50.0;
constexpr double glass_k_per_mj = 0.5; // eye estimate of the model: sun on closed glass

using Sources = std::vector<BenchSource>;

/// The station's air of one date.
struct Outside {
  Date date{};
  double night_c = 0.0;
  double day_c = 0.0;
};

std::optional<Celsius> kept_at(const BenchFacts& facts, const std::optional<Celsius>& fixed) {
  const bool neither = !facts.fixed_night && !facts.fixed_day;
  return facts.chilled && neither ? std::optional{chilled_place} : fixed;
}

/// A bench by any of its ranks, date by date.
class Reckoning {
public:
  Reckoning(const BenchFacts& facts, const Transfer& transfer)
      : facts_(facts), transfer_(transfer), shelter_(shelter_named(facts.shelter)),
        fixed_night_(kept_at(facts, facts.fixed_night)),
        fixed_day_(kept_at(facts, facts.fixed_day)),
        shelter_floor_(facts.floor ? facts.floor : shelter_.floor),
        shelter_vent_(facts.vent_above ? facts.vent_above : shelter_.vent_above) {}

  [[nodiscard]] Sources night_sources() const {
    return sources(
        fixed_night_.has_value(), facts_.night_offset.has_value(), transfer_.night.has_value());
  }

  [[nodiscard]] Sources day_sources() const {
    return sources(
        fixed_day_.has_value(), facts_.day_offset.has_value(), transfer_.day.has_value());
  }

  [[nodiscard]] double night_c(BenchSource source, const Outside& outside) const {
    switch (source) {
    case BenchSource::fixed_temperature:
      return std::isnan(outside.night_c) ? outside.night_c : fixed_night_->degrees();
    case BenchSource::written_offset:
      return warmed(outside.night_c + facts_.night_offset->kelvin(), facts_.floor);
    case BenchSource::fitted_transfer:
      return warmed(transfer_.night->at(outside.night_c), facts_.floor);
    case BenchSource::shelter_default:
      return warmed(outside.night_c + facts_.height.kelvin() + shelter_.night.kelvin(),
                    shelter_floor_);
    case BenchSource::station_as_is:
      break;
    }
    return warmed(outside.night_c + facts_.height.kelvin(), facts_.floor);
  }

  [[nodiscard]] double day_c(BenchSource source, const Outside& outside) const {
    const double raised = outside.day_c + facts_.height.kelvin();
    switch (source) {
    case BenchSource::fixed_temperature:
      return std::isnan(outside.day_c) ? outside.day_c : fixed_day_->degrees();
    case BenchSource::written_offset:
      return warmed(
          vented(outside.day_c + facts_.day_offset->kelvin(), outside.day_c, facts_.vent_above),
          facts_.floor);
    case BenchSource::fitted_transfer:
      return warmed(vented(transfer_.day->at(outside.day_c), outside.day_c, facts_.vent_above),
                    facts_.floor);
    case BenchSource::shelter_default:
      return warmed(vented(shelter_.closed_glass ? raised + glass_k_per_mj * sun_mj(outside)
                                                 : raised + shelter_.day.kelvin(),
                           raised,
                           shelter_vent_),
                    shelter_floor_);
    case BenchSource::station_as_is:
      break;
    }
    return warmed(raised, facts_.floor);
  }

  [[nodiscard]] CelsiusDelta night_doubt(BenchSource source) const {
    if (source == BenchSource::fitted_transfer) {
      return CelsiusDelta{transfer_.night->spread};
    }
    return source == BenchSource::shelter_default ? shelter_.night_doubt : CelsiusDelta{};
  }

  /// Whether nights and days are the station's plus an offset that is always the same.
  [[nodiscard]] bool plain(BenchSource night, BenchSource day) const {
    const auto same_every_day = [](BenchSource source) {
      return source == BenchSource::written_offset || source == BenchSource::station_as_is;
    };
    return same_every_day(night) && same_every_day(day) && !facts_.floor && !facts_.vent_above;
  }

private:
  [[nodiscard]] Sources sources(bool fixed, bool written, bool fitted) const {
    Sources list;
    if (fixed) {
      list.push_back(BenchSource::fixed_temperature);
    }
    if (written) {
      list.push_back(BenchSource::written_offset);
    }
    if (fitted) {
      list.push_back(BenchSource::fitted_transfer);
    }
    if (!facts_.shelter.empty() && facts_.shelter != shelters().front().name) {
      list.push_back(BenchSource::shelter_default);
    }
    list.push_back(BenchSource::station_as_is);
    return list;
  }

  // std::max and std::min in this order let a missing value through.
  [[nodiscard]] static double warmed(double air_c, const std::optional<Celsius>& floor) {
    return floor ? std::max(air_c, floor->degrees()) : air_c;
  }

  [[nodiscard]] static double vented(double air_c,
                                     double outside_c,
                                     const std::optional<Celsius>& vent) {
    return vent ? std::max(std::min(air_c, vent->degrees()), outside_c) : air_c;
  }

  [[nodiscard]] double sun_mj(const Outside& outside) const {
    const int day = day_of_year(outside.date);
    const double above = extraterrestrial_radiation_mj(facts_.latitude, day);
    return radiation_from_range_mj(outside.day_c - outside.night_c,
                                   above,
                                   clear_sky_radiation_mj(above, facts_.elevation_m),
                                   range_factor_inland);
  }

  const BenchFacts& facts_;
  const Transfer& transfer_;
  const Shelter& shelter_;
  std::optional<Celsius> fixed_night_;
  std::optional<Celsius> fixed_day_;
  std::optional<Celsius> shelter_floor_;
  std::optional<Celsius> shelter_vent_;
};

DailySeries reckoned(const DailySeries& station,
                     const Reckoning& by,
                     BenchSource night,
                     BenchSource day) {
  DailySeries air{station.first(), station.size()};
  for (std::size_t i = 0; i < station.size(); ++i) {
    const Outside outside{station.date_of(i),
                          static_cast<double>(station.night_c()[i]),
                          static_cast<double>(station.day_c()[i])};
    air.set_night(i, static_cast<float>(by.night_c(night, outside)), station.night_mark()[i]);
    air.set_day(i, static_cast<float>(by.day_c(day, outside)));
  }
  return air;
}

double mean_rise_k(std::span<const float> air, std::span<const float> station) {
  double sum = 0.0;
  int count = 0;
  for (std::size_t i = 0; i < air.size(); ++i) {
    const double rise = static_cast<double>(air[i]) - static_cast<double>(station[i]);
    if (!std::isnan(rise)) {
      sum += rise;
      ++count;
    }
  }
  return count > 0 ? sum / count : 0.0;
}

BenchOffset mean_offset(const DailySeries& air, const DailySeries& station, BenchSource source) {
  return {CelsiusDelta{mean_rise_k(air.night_c(), station.night_c())},
          CelsiusDelta{mean_rise_k(air.day_c(), station.day_c())},
          source};
}

// The same from the earlier first day to the later last day of two.
DailySeries spanning(const DailySeries& series, const DailySeries& other) {
  const Date first = std::min(series.first(), other.first());
  const Date last = std::max(series.last(), other.last());
  return series.part(first, days_between(first, last) + 1);
}

// A maximum read in the sun is none of the air's. Where no maximum of the station tells it from the
// sun, those it has beside others of its readings do: a logger that they find in the shade is
// believed, any other is not.
bool is_sound_day(double logger_day_c, double station_day_c, bool shaded) {
  return std::isnan(station_day_c)
             ? shaded && !std::isnan(logger_day_c)
             : !std::isnan(logger_day_c) && !in_the_sun(logger_day_c, station_day_c);
}

// The logger's sound readings in place of what was reckoned. Returns how many nights.
int overlay(const DailySeries& logger,
            const DailySeries& station,
            const Transfer& transfer,
            DailySeries& air) {
  if (logger.empty() || air.empty()) {
    return 0;
  }
  if (logger.first() < air.first() || logger.last() > air.last()) {
    air = spanning(air, logger);
  }
  int nights = 0;
  for (std::size_t i = 0; i < logger.size(); ++i) {
    const Date date = logger.date_of(i);
    const std::size_t at = *air.index_of(date);
    if (!std::isnan(logger.night_c()[i])) {
      air.set_night(at, logger.night_c()[i], logger.night_mark()[i]);
      ++nights;
    }
    const std::optional<std::size_t> outside = station.index_of(date);
    const float outside_day = outside ? station.day_c()[*outside] : missing_c;
    if (is_sound_day(static_cast<double>(logger.day_c()[i]),
                     static_cast<double>(outside_day),
                     transfer.day.has_value())) {
      air.set_day(at, logger.day_c()[i]);
    }
  }
  return nights;
}

// The rank behind the first, or the last where there is no other.
BenchSource second_of(const Sources& sources) {
  return sources.size() > 1 ? sources[1] : sources.back();
}

} // namespace

BenchAir to_bench(const DailySeries& station, std::string bench, BenchOffset offset) {
  BenchAir result{std::move(bench), offset, station};
  const auto night = static_cast<float>(offset.night.kelvin());
  const auto day = static_cast<float>(offset.day.kelvin());
  for (std::size_t i = 0; i < station.size(); ++i) {
    result.air.set_night(i, station.night_c()[i] + night, station.night_mark()[i]);
    result.air.set_day(i, station.day_c()[i] + day);
  }
  return result;
}

BenchAir to_bench(const DailySeries& station,
                  const BenchFacts& facts,
                  const DailySeries* logger,
                  const DailySeries* forecast) {
  const Transfer transfer = logger != nullptr ? fit_transfer(station, *logger) : Transfer{};
  const Reckoning by{facts, transfer};
  const Sources nights = by.night_sources();
  const Sources days = by.day_sources();
  const BenchSource night = nights.front();
  const BenchSource day = days.front();

  BenchAir result;
  if (by.plain(night, day)) {
    const CelsiusDelta from_height = facts.height;
    result = to_bench(station,
                      facts.name,
                      {night == BenchSource::written_offset ? *facts.night_offset : from_height,
                       day == BenchSource::written_offset ? *facts.day_offset : from_height,
                       night});
  } else {
    result.bench = facts.name;
    result.air = reckoned(station, by, night, day);
    result.offset = mean_offset(result.air, station, night);
    result.plain = false;
  }
  result.night_doubt = by.night_doubt(night);
  if (nights.size() > 1 || days.size() > 1) {
    const BenchSource next_night = second_of(nights);
    result.next =
        mean_offset(reckoned(station, by, next_night, second_of(days)), station, next_night);
  }
  if (forecast != nullptr) {
    result.forecast = reckoned(*forecast, by, night, day);
  }
  if (logger != nullptr) {
    result.transfer = transfer;
    result.logger_nights = overlay(*logger, station, transfer, result.air);
    result.plain = result.plain && result.logger_nights == 0;
  }
  return result;
}

CelsiusDelta height_offset(double station_m, double garden_m) {
  const double below_m = station_m - garden_m;
  return std::abs(below_m) > least_height_m ? CelsiusDelta{lapse_k_per_m * below_m}
                                            : CelsiusDelta{};
}

} // namespace nightsow::climate
