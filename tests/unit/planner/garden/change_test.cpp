#include "planner/garden/change.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace nightsow::planner {
namespace {

using support::day;

LoadedGarden small_garden() {
  LoadedGarden garden;
  garden.garden.latitude = -33.0;
  garden.today = day("2026-01-20");
  garden.station = climate::DailySeries{day("2026-01-01"), 3};
  garden.station.set_night(0, 10.0F);
  garden.station.set_day(0, 20.0F);
  garden.station.set_night(2, 12.0F, climate::Mark::filled);
  garden.findings.push_back({climate::FindingKind::impossible,
                             climate::Verdict::ignored,
                             day("2026-01-02"),
                             "station.csv",
                             3,
                             99.0,
                             0.0});
  Packet packet;
  packet.harvested = DateRange{day("2025-11-01"), day("2025-11-30")};
  packet.received = DateRange{day("2026-01-10"), day("2026-01-10")};
  packet.stored = {{"shelf", 20.0, day("2026-01-15")}, {"fridge", 5.0, {}}};
  packet.tested = GerminationTest{14, 20, day("2026-01-18"), {}};
  garden.packets.push_back(packet);
  garden.garden.away.push_back({day("2026-07-04"), day("2026-07-18")});
  Bench bench;
  bench.from = day("2026-05-01");
  garden.garden.benches.push_back(bench);
  return garden;
}

TEST(Mirror, ReadingsAndTodayMoveByHalfAYearAndLatitudeChangesItsSign) {
  const LoadedGarden mirrored = apply(Mirror{}, small_garden());
  EXPECT_EQ(mirrored.garden.latitude, 33.0);
  EXPECT_EQ(mirrored.today, day("2026-07-22"));
  EXPECT_EQ(mirrored.station.first(), day("2026-07-03"));
  EXPECT_EQ(mirrored.findings.at(0).date, day("2026-07-04"));
  EXPECT_EQ(mirrored.garden.away.at(0).from, day("2027-01-03"));
  EXPECT_EQ(mirrored.garden.benches.at(0).from, day("2026-10-31"));
  EXPECT_FALSE(mirrored.garden.benches.at(0).to);
}

TEST(Mirror, PacketsKeepTheirDistanceToToday) {
  const LoadedGarden before = small_garden();
  const LoadedGarden after = apply(Mirror{}, before);
  const auto ago = [](const LoadedGarden& garden) {
    const Packet& packet = garden.packets.at(0);
    return std::vector<int>{days_between(packet.harvested->first, garden.today),
                            days_between(packet.harvested->last, garden.today),
                            days_between(packet.received->first, garden.today),
                            days_between(*packet.stored.at(0).until, garden.today),
                            days_between(*packet.tested->on, garden.today)};
  };
  EXPECT_EQ(ago(before), ago(after));
  EXPECT_FALSE(after.packets.at(0).stored.at(1).until);
}

TEST(Mirror, TwiceIsTheSameSeriesAYearLater) {
  const LoadedGarden before = small_garden();
  const LoadedGarden after = apply(Mirror{}, apply(Mirror{}, before));
  EXPECT_EQ(days_between(before.station.first(), after.station.first()), 366);
  EXPECT_EQ(after.garden.latitude, before.garden.latitude);
  for (std::size_t i = 0; i < before.station.size(); ++i) {
    const float was = before.station.night_c()[i];
    const float is = after.station.night_c()[i];
    EXPECT_TRUE(was == is || (std::isnan(was) && std::isnan(is))) << i;
    EXPECT_EQ(before.station.night_mark()[i], after.station.night_mark()[i]);
  }
}

TEST(Mirror, MonthlyNormalsMoveBySixMonths) {
  LoadedGarden garden = small_garden();
  garden.garden.monthly_normals = MonthlyNormals{{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12},
                                                 {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}};
  const LoadedGarden mirrored = apply(Mirror{}, garden);
  EXPECT_EQ(mirrored.garden.monthly_normals->night_c.front(), 7.0);
  EXPECT_EQ(mirrored.garden.monthly_normals->day_c.back(), 6.0);
}

TEST(Warmer, AddsToNightsAndDays) {
  const LoadedGarden warm = apply(Warmer{CelsiusDelta{2.0}}, small_garden());
  EXPECT_EQ(warm.station.night_c()[0], 12.0F);
  EXPECT_EQ(warm.station.day_c()[0], 22.0F);
  EXPECT_EQ(warm.station.night_c()[2], 14.0F);
  EXPECT_EQ(warm.station.night_mark()[2], climate::Mark::filled);
}

TEST(Warmer, WhatIsMissingStaysMissing) {
  const LoadedGarden warm = apply(Warmer{CelsiusDelta{2.0}}, small_garden());
  EXPECT_TRUE(std::isnan(warm.station.night_c()[1]));
  EXPECT_TRUE(std::isnan(warm.station.day_c()[2]));
}

TEST(Warmer, ChangesNoDateAndNoPlace) {
  const LoadedGarden warm = apply(Warmer{CelsiusDelta{-1.5}}, small_garden());
  EXPECT_EQ(warm.today, small_garden().today);
  EXPECT_EQ(warm.station.first(), small_garden().station.first());
  EXPECT_EQ(warm.garden.latitude, -33.0);
}

LoadedGarden garden_with_forecast_and_logger() {
  LoadedGarden garden = small_garden();
  garden.forecast = climate::DailySeries{garden.station.last() + Days{1}, 1};
  garden.forecast.set_night(0, 7.0F, climate::Mark::forecast);
  garden.bench_loggers["frame"] = garden.forecast;
  return garden;
}

TEST(Mirror, ForecastsAndLoggersMoveWithTheReadings) {
  const LoadedGarden before = garden_with_forecast_and_logger();
  const LoadedGarden after = apply(Mirror{}, before);
  EXPECT_EQ(days_between(before.forecast.first(), after.forecast.first()), mirror_days);
  EXPECT_EQ(after.forecast.night_mark()[0], climate::Mark::forecast);
  EXPECT_EQ(after.bench_loggers.at("frame").first(), after.forecast.first());
}

TEST(Mirror, WhatIsInDoubtAboutALoggerMovesWithIt) {
  LoadedGarden before = small_garden();
  climate::Finding finding;
  finding.date = before.today;
  before.logger_doubts["frame"].findings = {finding};
  const LoadedGarden after = apply(Mirror{}, before);
  EXPECT_EQ(after.logger_doubts.at("frame").findings.at(0).date, after.today);
}

TEST(Warmer, ForecastsAndLoggersGrowWarmerWithTheReadings) {
  const LoadedGarden warm = apply(Warmer{CelsiusDelta{2.0}}, garden_with_forecast_and_logger());
  EXPECT_EQ(warm.forecast.night_c()[0], 9.0F);
  EXPECT_EQ(warm.bench_loggers.at("frame").night_c()[0], 9.0F);
}

TEST(Change, AVariantIsAppliedByItsKind) {
  const Change change = Warmer{CelsiusDelta{1.0}};
  EXPECT_EQ(apply(change, small_garden()).station.night_c()[0], 11.0F);
}

} // namespace
} // namespace nightsow::planner
