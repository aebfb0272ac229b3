#include "climate/bench.hpp"

#include "climate/sun.hpp"
#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace nightsow::climate {
namespace {

/// Forty nights at 8 °C, days at 18.
DailySeries steady() {
  DailySeries series{support::day("2025-05-01"), 40};
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_night(i, 8.0F);
    series.set_day(i, 18.0F);
  }
  return series;
}

DailySeries raised(double night_k, double day_k, std::size_t count) {
  DailySeries series{steady().first(), count};
  for (std::size_t i = 0; i < count; ++i) {
    series.set_night(i, static_cast<float>(8.0 + night_k));
    series.set_day(i, static_cast<float>(18.0 + day_k));
  }
  return series;
}

BenchFacts frame() {
  BenchFacts facts;
  facts.name = "frame";
  facts.shelter = "cold frame";
  facts.latitude = -34.0;
  return facts;
}

double last_night_of(const BenchAir& bench) {
  return static_cast<double>(bench.air.night_c().back());
}

double last_day_of(const BenchAir& bench) {
  return static_cast<double>(bench.air.day_c().back());
}

TEST(Bench, TakesTheOffsetWrittenBeforeTheLoggerBeforeTheShelterBeforeTheStation) {
  const DailySeries logger = raised(3.0, 5.0, 20);
  BenchFacts facts = frame();
  facts.night_offset = CelsiusDelta{2.5};
  const BenchAir written = to_bench(steady(), facts, &logger);
  EXPECT_EQ(written.offset.source, BenchSource::written_offset);
  EXPECT_NEAR(last_night_of(written), 10.5, 1e-5);
  EXPECT_EQ(written.next.value().source, BenchSource::fitted_transfer);
  EXPECT_NEAR(written.next->night.kelvin(), 3.0, 1e-5);

  const BenchAir fitted = to_bench(steady(), frame(), &logger);
  EXPECT_EQ(fitted.offset.source, BenchSource::fitted_transfer);
  EXPECT_NEAR(last_night_of(fitted), 11.0, 1e-5);
  EXPECT_EQ(fitted.next.value().source, BenchSource::shelter_default);

  const BenchAir sheltered = to_bench(steady(), frame(), nullptr);
  EXPECT_EQ(sheltered.offset.source, BenchSource::shelter_default);
  EXPECT_EQ(sheltered.next.value().source, BenchSource::station_as_is);
  EXPECT_GT(sheltered.night_doubt.kelvin(), 0.0);

  const BenchAir open = to_bench(steady(), BenchFacts{}, nullptr);
  EXPECT_EQ(open.offset.source, BenchSource::station_as_is);
  EXPECT_FALSE(open.next);
  EXPECT_EQ(open.night_doubt.kelvin(), 0.0);
}

TEST(Bench, IsWhatItsLoggerReadOnTheDaysItDid) {
  DailySeries logger = raised(3.0, 5.0, 20);
  logger.set_night(4, 1.5F);
  const BenchAir bench = to_bench(steady(), frame(), &logger);
  EXPECT_EQ(bench.air.night_c()[4], 1.5F);
  EXPECT_EQ(bench.logger_nights, 20);
}

TEST(Bench, GoesOnToTheLoggersLastDay) {
  const DailySeries logger = raised(3.0, 5.0, 45);
  const BenchAir bench = to_bench(steady(), frame(), &logger);
  EXPECT_EQ(bench.air.last(), logger.last());
  EXPECT_EQ(last_night_of(bench), 11.0);
}

TEST(Bench, BeginsWithTheLoggersFirstDay) {
  DailySeries station{steady().first() + Days{10}, 30};
  for (std::size_t i = 0; i < station.size(); ++i) {
    station.set_night(i, 8.0F);
    station.set_day(i, 18.0F);
  }
  const DailySeries logger = raised(3.0, 5.0, 25);
  const BenchAir bench = to_bench(station, frame(), &logger);
  EXPECT_EQ(bench.air.first(), logger.first());
  EXPECT_EQ(bench.air.last(), station.last());
  EXPECT_EQ(bench.air.night_c()[0], 11.0F);
  EXPECT_NEAR(last_night_of(bench), 11.0, 1e-5); // by the transfer
  EXPECT_EQ(bench.logger_nights, 25);
}

TEST(Bench, KeepsTheDaysOfALoggerThatEndedBeforeTheStationBegan) {
  const DailySeries logger = raised(3.0, 5.0, 5);
  DailySeries station{steady().first() + Days{8}, 1};
  station.set_night(0, 8.0F);
  const BenchAir bench = to_bench(station, BenchFacts{}, &logger);
  EXPECT_EQ(bench.air.size(), 9U);
  EXPECT_EQ(bench.air.night_c()[4], 11.0F);
  EXPECT_TRUE(std::isnan(bench.air.night_c()[5]));
  EXPECT_EQ(bench.air.night_c()[8], 8.0F);
}

// Nothing beside tells whether the sun was on it; the other days do.
TEST(Bench, TakesAMaximumWithoutTheStationsOnlyFromALoggerInTheShade) {
  const DailySeries shaded = raised(3.0, 5.0, 45);
  EXPECT_EQ(last_day_of(to_bench(steady(), frame(), &shaded)), 23.0);
  const DailySeries in_the_sun = raised(3.0, 12.0, 45);
  EXPECT_TRUE(std::isnan(last_day_of(to_bench(steady(), frame(), &in_the_sun))));
  DailySeries too_few = raised(3.0, 5.0, 45); // 14 paired days, then 13
  for (std::size_t i = 0; i < 26; ++i) {
    too_few.set_day(i, missing_c);
  }
  EXPECT_EQ(last_day_of(to_bench(steady(), frame(), &too_few)), 18.0 + 5.0);
  too_few.set_day(26, missing_c);
  EXPECT_TRUE(std::isnan(last_day_of(to_bench(steady(), frame(), &too_few))));
}

TEST(Bench, DoesNotTakeAMaximumReadInTheSun) {
  const DailySeries logger = raised(3.0, 12.0, 20);
  EXPECT_NE(to_bench(steady(), frame(), &logger).air.day_c()[3], 30.0F);
}

TEST(Bench, UnderClosedGlassFollowsTheSunUpToTheVent) {
  BenchFacts facts = frame();
  facts.vent_above = Celsius{40.0};
  // The last day is 9 June, day 160.
  const double above = extraterrestrial_radiation_mj(-34.0, 160);
  const double sun_mj = radiation_from_range_mj(10.0, above, 0.75 * above, 0.16);
  EXPECT_NEAR(last_day_of(to_bench(steady(), facts, nullptr)), 18.0 + 0.5 * sun_mj, 1e-4);
  facts.vent_above = Celsius{20.0};
  EXPECT_NEAR(last_day_of(to_bench(steady(), facts, nullptr)), 20.0, 1e-5);
  facts.vent_above = Celsius{10.0};
  EXPECT_NEAR(last_day_of(to_bench(steady(), facts, nullptr)), 18.0, 1e-5);
}

TEST(Bench, HasItsHeatersFloorNightAndDay) {
  BenchFacts facts;
  facts.floor = Celsius{19.0};
  const BenchAir bench = to_bench(steady(), facts, nullptr);
  EXPECT_NEAR(last_night_of(bench), 19.0, 1e-5);
  EXPECT_NEAR(last_day_of(bench), 19.0, 1e-5);
  EXPECT_FALSE(bench.plain);
}

TEST(Bench, IsKeptWhereItsGrowerKeepsIt) {
  BenchFacts facts;
  facts.fixed_night = Celsius{12.0};
  facts.fixed_day = Celsius{15.0};
  const BenchAir bench = to_bench(steady(), facts, nullptr);
  EXPECT_EQ(bench.offset.source, BenchSource::fixed_temperature);
  EXPECT_NEAR(last_night_of(bench), 12.0, 1e-5);
  EXPECT_NEAR(last_day_of(bench), 15.0, 1e-5);
  BenchFacts chilled;
  chilled.chilled = true;
  EXPECT_NEAR(last_night_of(to_bench(steady(), chilled, nullptr)), 5.0, 1e-5);
}

TEST(Bench, IsMissingWhereTheStationIs) {
  DailySeries station = steady();
  station.set_night(5, missing_c);
  BenchFacts facts = frame();
  facts.floor = Celsius{5.0};
  const BenchAir bench = to_bench(station, facts, nullptr);
  EXPECT_TRUE(std::isnan(bench.air.night_c()[5]));
  EXPECT_TRUE(std::isnan(bench.air.day_c()[5]));
}

TEST(Bench, CountsTheHeightOnlyWhereNobodyMeasured) {
  BenchFacts facts;
  facts.height = CelsiusDelta{-1.3};
  EXPECT_NEAR(last_night_of(to_bench(steady(), facts, nullptr)), 6.7, 1e-5);
  facts.night_offset = CelsiusDelta{2.0};
  EXPECT_NEAR(last_night_of(to_bench(steady(), facts, nullptr)), 10.0, 1e-5);
}

TEST(HeightOffset, IsColdWhereTheGardenLiesAboveTheStation) {
  EXPECT_NEAR(height_offset(0.0, 200.0).kelvin(), -1.3, 1e-9);
  EXPECT_NEAR(height_offset(200.0, 0.0).kelvin(), 1.3, 1e-9);
  EXPECT_EQ(height_offset(100.0, 140.0).kelvin(), 0.0);
}

TEST(Shelter, HasAnEntryOfItsOwnForEveryNameAndTheOpenForAnyOther) {
  for (const Shelter& shelter : shelters()) {
    EXPECT_EQ(&shelter_named(shelter.name), &shelter);
    EXPECT_FALSE(shelter.source.empty());
  }
  EXPECT_EQ(shelter_named("").name, "open");
}

} // namespace
} // namespace nightsow::climate
