#include "planner/model/bench_climate.hpp"

#include "climate/base/problem.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/support/invented_bench.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <utility>

namespace nightsow::planner {
namespace {

using nightsow::support::fault;
using support::bench_of;
using support::bench_with;
using support::InventedBench;

InventedBench frame_and_open() {
  return bench_of({.benches = {bench_with("frame", 2.0, 4.0), support::open_bench()}});
}

BenchClimate open_of(const InventedBench& place) {
  return bench_climate(place.garden, place.station, "open bench");
}

TEST(BenchClimate, CarriesItsOffsetsInTheAirAndInTheSmoothYear) {
  const InventedBench frame = frame_and_open();
  const BenchClimate open = open_of(frame);
  const auto of = [](const BenchClimate& climate) {
    return std::pair{static_cast<double>(climate.bench.air.night_c()[100]),
                     static_cast<double>(climate.bench.air.day_c()[100])};
  };
  EXPECT_NEAR(of(frame.climate).first - of(open).first, 2.0, 1e-5);
  EXPECT_NEAR(of(frame.climate).second - of(open).second, 4.0, 1e-5);
  EXPECT_NEAR(smooth_mean_c(frame.climate, frame.garden.today) -
                  smooth_mean_c(open, frame.garden.today),
              3.0,
              1e-9);
}

TEST(BenchClimate, SaysHowItWasReached) {
  const InventedBench frame = frame_and_open();
  EXPECT_EQ(frame.climate.bench.offset.source, climate::BenchSource::written_offset);
  EXPECT_EQ(open_of(frame).bench.offset.source, climate::BenchSource::station_as_is);
}

TEST(BenchClimate, HasThePhasesOfTheStationWhateverTheBench) {
  const InventedBench frame = frame_and_open();
  EXPECT_EQ(frame.climate.turning.hottest, open_of(frame).turning.hottest);
  EXPECT_EQ(frame.climate.turning.swing, frame.station.turning.swing);
}

TEST(BenchClimate, IsTheFirstBenchWhereTheNameIsEmptyOrUnknown) {
  const Garden garden = frame_and_open().garden.garden;
  EXPECT_EQ(bench_named(garden, "open bench").name, "open bench");
  EXPECT_EQ(bench_named(garden, "").name, "frame");
  EXPECT_EQ(bench_named(garden, "greenhouse").name, "frame");
}

TEST(BenchClimate, IsMissingWhereTheStationIs) {
  LoadedGarden garden = frame_and_open().garden;
  for (std::size_t i = 200; i < 204; ++i) {
    garden.station.set_night(i, climate::missing_c);
  }
  EXPECT_TRUE(std::isnan(bench_of(garden).climate.bench.air.night_c()[201]));
}

TEST(BenchClimate, HasItsShortHolesFilledForNightWords) {
  LoadedGarden garden = frame_and_open().garden;
  garden.station.set_night(200, climate::missing_c);
  const InventedBench place = bench_of(garden);
  EXPECT_FALSE(std::isnan(place.climate.bench.air.night_c()[200]));
  EXPECT_EQ(place.climate.bench.air.night_mark()[200], climate::Mark::filled);
}

TEST(BenchClimate, TakesDaysNineKelvinAboveNightsWhereNoneWereRead) {
  LoadedGarden garden = support::garden_of({});
  for (std::size_t i = 0; i < garden.station.size(); ++i) {
    garden.station.set_day(i, climate::missing_c);
  }
  const BenchClimate climate = bench_of(garden).climate;
  EXPECT_NEAR(
      smooth_mean_c(climate, garden.today), climate.smooth.night.value_c(garden.today) + 4.5, 1e-9);
}

/// The last 40 nights and days of the station, raised.
climate::DailySeries logger_beside(const LoadedGarden& garden, float night_k, float day_k) {
  const std::size_t skipped = garden.station.size() - 40;
  climate::DailySeries logger{garden.station.date_of(skipped), 40};
  for (std::size_t i = 0; i < logger.size(); ++i) {
    logger.set_night(i, garden.station.night_c()[skipped + i] + night_k);
    logger.set_day(i, garden.station.day_c()[skipped + i] + day_k);
  }
  return logger;
}

TEST(BenchClimate, IsReckonedByItsLoggerBothInTheAirAndInTheSmoothYear) {
  LoadedGarden garden = support::garden_of({});
  const std::string bench = garden.garden.benches.front().name;
  garden.bench_loggers[bench] = logger_beside(garden, 3.0F, 1.0F);
  const InventedBench place = bench_of(garden);
  EXPECT_EQ(place.climate.bench.offset.source, climate::BenchSource::fitted_transfer);
  EXPECT_NEAR(static_cast<double>(place.climate.bench.air.night_c()[100]) -
                  static_cast<double>(place.station.air.night_c()[100]),
              3.0,
              1e-4);
  EXPECT_NEAR(place.climate.smooth.night.value_c(garden.today) -
                  place.station.smooth.night.value_c(garden.today),
              3.0,
              1e-3);
}

TEST(BenchClimate, IsColderWhereTheGardenLiesAboveTheStation) {
  LoadedGarden garden = support::garden_of({});
  garden.station_elevation_m = 100.0;
  EXPECT_EQ(from_station_height(garden).kelvin(), 0.0);
  garden.garden.elevation_m = 500.0;
  const InventedBench place = bench_of(garden);
  EXPECT_NEAR(place.climate.smooth.night.value_c(garden.today),
              place.station.smooth.night.value_c(garden.today) - 2.6,
              1e-9);
}

TEST(BenchClimate, HasWiderDatesWhereItsShelterIsAllThatIsKnown) {
  Bench bench = support::open_bench();
  bench.shelter = "cold frame";
  const InventedBench frame = bench_of({.benches = {bench}});
  const InventedBench open = bench_of(support::InventedGarden{});
  EXPECT_EQ(frame.bench_season().outlook.members, 3 * open.bench_season().outlook.members);
}

// Readings of three years up to today, and monthly normals that are colder by so much each month
// than the place ever was.
LoadedGarden short_record_beside_normals(double colder_k, std::vector<Bench> benches = {}) {
  LoadedGarden garden = support::garden_of({.benches = std::move(benches)});
  MonthlyNormals normals{std::vector<double>(12), std::vector<double>(12)};
  const climate::SmoothYear place = *climate::fit_smooth_year(garden.station);
  for (unsigned month = 0; month < 12; ++month) {
    const Date middle = *make_date(year_of(garden.today), month + 1, 15);
    normals.night_c[month] = place.night.value_c(middle) - colder_k;
    normals.day_c[month] = place.day->value_c(middle) - colder_k;
  }
  garden.garden.monthly_normals = normals;
  constexpr std::size_t days = 3 * 365 + 1;
  climate::DailySeries part{garden.today - Days{days - 1}, days};
  const std::vector<float> night_c = garden.station.nights_from(part.first(), days);
  const std::vector<float> day_c = garden.station.days_from(part.first(), days);
  for (std::size_t i = 0; i < days; ++i) {
    part.set_night(i, night_c[i]);
    part.set_day(i, day_c[i]);
  }
  garden.station = part;
  return garden;
}

TEST(StationClimate, OfAShortRecordLeansOnTheNormals) {
  LoadedGarden garden = short_record_beside_normals(6.0);
  const StationClimate leans = station_climate(garden);
  EXPECT_TRUE(leans.leans);
  garden.garden.monthly_normals.reset();
  const StationClimate alone = station_climate(garden);
  EXPECT_FALSE(alone.leans);
  EXPECT_EQ(leans.fitted.night.constant_c, alone.smooth.night.constant_c);
  // Half of about six kelvin, after three years; the three had weather of their own.
  EXPECT_NEAR(alone.smooth.night.constant_c - leans.smooth.night.constant_c, 3.0, 0.5);
  EXPECT_NEAR(alone.smooth.day->constant_c - leans.smooth.day->constant_c, 3.0, 0.5);
  EXPECT_NEAR((alone.turning.phases->hottest_night - leans.turning.phases->hottest_night).kelvin(),
              3.0,
              1.0);
}

TEST(StationClimate, OfALongRecordDoesNotLeanOnTheNormals) {
  LoadedGarden garden = support::garden_of({});
  garden.garden.monthly_normals = short_record_beside_normals(6.0).garden.monthly_normals;
  const StationClimate station = station_climate(garden);
  EXPECT_FALSE(station.leans);
  EXPECT_EQ(station.smooth.night.constant_c, station.fitted.night.constant_c);
}

/// How much colder the usual year of the first bench is than its readings, night and day.
std::pair<double, double> leans_by_k(const LoadedGarden& garden) {
  const BenchClimate climate = bench_of(garden).climate;
  return {climate.fitted.night.constant_c - climate.smooth.night.constant_c,
          climate.fitted.day->constant_c - climate.smooth.day->constant_c};
}

TEST(BenchClimate, LeansAsTheStationDoesWhereItIsTheStationRaisedOrHasALogger) {
  const auto station = leans_by_k(short_record_beside_normals(6.0));
  EXPECT_NEAR(station.first, 3.0, 0.5);
  const auto raised = leans_by_k(short_record_beside_normals(6.0, {bench_with("frame", 2.0, 4.0)}));
  EXPECT_NEAR(raised.first, station.first, 1e-9);
  EXPECT_NEAR(raised.second, station.second, 1e-9);

  LoadedGarden logged = short_record_beside_normals(6.0);
  logged.bench_loggers[logged.garden.benches.front().name] = logger_beside(logged, 3.0F, 1.0F);
  const auto by_logger = leans_by_k(logged);
  EXPECT_NEAR(by_logger.first, station.first, 1e-3);
  EXPECT_NEAR(by_logger.second, station.second, 1e-3);
}

TEST(BenchClimate, KeptAtATemperatureLeansOnNothing) {
  Bench room = support::open_bench();
  room.fixed_night = Celsius{18.0};
  room.fixed_day = Celsius{22.0};
  const auto leans = leans_by_k(short_record_beside_normals(6.0, {room}));
  EXPECT_NEAR(leans.first, 0.0, 1e-9);
  EXPECT_NEAR(leans.second, 0.0, 1e-9);
}

TEST(BenchClimate, WithAFloorLeansOnlyAsFarAsTheHeaterLetsIt) {
  Bench heated = support::open_bench();
  heated.floor = Celsius{12.0};
  const BenchClimate climate = bench_of(short_record_beside_normals(6.0, {heated})).climate;
  EXPECT_GT(climate.fitted.night.constant_c, climate.smooth.night.constant_c);
  const Date coldest = in_year(climate.turning.phases->coldest, 2025);
  EXPECT_GT(climate.smooth.night.value_c(coldest), 11.0);
}

TEST(StationClimate, IsRefusedWhenTheNightsShowNoWholeYear) {
  LoadedGarden garden = support::garden_of({});
  garden.station = climate::DailySeries{garden.today - Days{99}, 100};
  for (std::size_t i = 0; i < 100; ++i) {
    garden.station.set_night(i, 12.0F);
  }
  const std::string said = fault<InputError>([&] { return station_climate(garden); });
  EXPECT_NE(said.find("100 usable nights"), std::string::npos) << said;
  EXPECT_NE(said.find("at least 300"), std::string::npos) << said;
}

} // namespace
} // namespace nightsow::planner
