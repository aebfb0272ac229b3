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
