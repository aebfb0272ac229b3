#include "planner/garden/garden_file.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace nightsow::planner {
namespace {

using support::day;

constexpr std::string_view place = R"("latitude": -33.0, "longitude": 19.0)";
constexpr std::string_view readings = R"("readings": [{"file": "readings/station.csv"}])";

Garden read(std::string_view text) {
  return read_garden_file(text, "garden.json");
}

// A garden with one more key, on a line of its own.
std::string garden_with(std::string_view key) {
  return "{" + std::string(place) + ", " + std::string(readings) + ",\n  " + std::string(key) + "}";
}

Garden read_with(std::string_view key) {
  return read(garden_with(key));
}

std::string fault_of(std::string_view text) {
  return support::fault<InputError>([&] { return read(text); });
}

std::string fault_with(std::string_view key) {
  return fault_of(garden_with(key));
}

TEST(GardenFile, PlaceAndOneReadingSourceAreEnough) {
  const Garden garden = read(support::smallest_garden);
  EXPECT_DOUBLE_EQ(garden.latitude, -33.0);
  EXPECT_DOUBLE_EQ(garden.longitude, 19.0);
  ASSERT_EQ(garden.readings.size(), 1U);
  EXPECT_EQ(garden.readings[0].file, "readings/station.csv");
  EXPECT_EQ(garden.readings[0].kind, ReadingsEntry::Kind::readings);
}

TEST(GardenFile, AGardenWithoutBenchesHasOneOpenBench) {
  const Garden garden = read(support::smallest_garden);
  ASSERT_EQ(garden.benches.size(), 1U);
  EXPECT_EQ(garden.benches[0].name, "open bench");
  EXPECT_EQ(garden.benches[0].shelter, "open");
}

TEST(GardenFile, EveryKeyOfTheGardenIsRead) {
  const Garden garden = read_with(
      R"("schema": 1, "name": "Kop", "elevation_m": 200, "time_zone": "Africa/Johannesburg",
         "sowing_days": ["sat", "sun"], "pots_per_day": 40, "mix": {"mineral_share": 0.7},
         "away": [{"from": "2026-07-04", "to": "2026-07-18"}])");
  EXPECT_EQ(garden.name, "Kop");
  EXPECT_EQ(garden.elevation_m, 200.0);
  EXPECT_EQ(garden.time_zone, "Africa/Johannesburg");
  EXPECT_EQ(garden.sowing_days, (std::vector<std::string>{"sat", "sun"}));
  EXPECT_EQ(garden.pots_per_day, 40);
  EXPECT_EQ(garden.mix_mineral_share, 0.7);
  EXPECT_EQ(garden.away.at(0).to, day("2026-07-18"));
}

TEST(GardenFile, AirOfABenchIsRead) {
  const Bench bench = read_with(R"("benches": [{"name": "frame", "shelter": "cold frame",
      "night_offset_c": 2.0, "day_offset_c": -4.0, "floor_c": 3, "vent_above_c": 26,
      "fixed_night_c": 10, "fixed_day_c": 20, "sun": 0.7, "shade": 0.4}])")
                          .benches.at(0);
  EXPECT_EQ(bench.shelter, "cold frame");
  EXPECT_EQ(bench.night_offset, CelsiusDelta{2.0});
  EXPECT_EQ(bench.day_offset, CelsiusDelta{-4.0});
  EXPECT_EQ(bench.floor, Celsius{3.0});
  EXPECT_EQ(bench.vent_above, Celsius{26.0});
  EXPECT_EQ(bench.fixed_night, Celsius{10.0});
  EXPECT_EQ(bench.fixed_day, Celsius{20.0});
  EXPECT_EQ(bench.sun, 0.7);
  EXPECT_EQ(bench.shade, 0.4);
}

TEST(GardenFile, CareOfABenchIsRead) {
  const Bench bench = read_with(R"("benches": [{"name": "frame", "rain": true,
      "pot_colour": "dark", "frost_care": "fleece", "from": "2026-05-01", "to": "2026-09-01",
      "chilled": true, "pots": 240}])")
                          .benches.at(0);
  EXPECT_EQ(bench.rain, true);
  EXPECT_EQ(bench.pot_colour, "dark");
  EXPECT_EQ(bench.frost_care, "fleece");
  EXPECT_EQ(bench.from, day("2026-05-01"));
  EXPECT_EQ(bench.to, day("2026-09-01"));
  EXPECT_TRUE(bench.chilled);
  EXPECT_EQ(bench.pots, 240);
}

TEST(GardenFile, EveryShelterWordIsKnown) {
  for (const std::string shelter :
       {"open", "wall", "cold frame", "unheated glass", "plastic tunnel", "indoors"}) {
    const std::string key = R"("benches": [{"name": "b", "shelter": ")" + shelter + R"("}])";
    EXPECT_EQ(read_with(key).benches.at(0).shelter, shelter);
  }
}

TEST(GardenFile, NullMeansThatAKeyIsLeftOut) {
  const Garden garden =
      read_with(R"("elevation_m": null, "benches": [{"name": "b", "floor_c": null}])");
  EXPECT_FALSE(garden.elevation_m);
  EXPECT_FALSE(garden.benches.at(0).floor);
}

TEST(GardenFile, AMatIsReadWithItsBench) {
  const HeatMat mat = read_with(R"("benches": [{"name": "b"}], "mats": [{"name": "big mat",
      "bench": "b", "rise_c": 10, "thermostat_c": 28, "watts": 40, "pots": 24}])")
                          .mats.at(0);
  EXPECT_EQ(mat.name, "big mat");
  EXPECT_EQ(mat.bench, "b");
  EXPECT_EQ(mat.rise, CelsiusDelta{10.0});
  EXPECT_EQ(mat.thermostat, Celsius{28.0});
  EXPECT_EQ(mat.watts, 40.0);
  EXPECT_EQ(mat.pots, 24);
}

TEST(GardenFile, AMatWithoutBenchLiesOnTheFirst) {
  const Garden garden =
      read_with(R"("mats": [{"rise_c": 8}], "benches": [{"name": "a"}, {"name": "b"}])");
  EXPECT_EQ(garden.mats.at(0).bench, "a");
  EXPECT_EQ(garden.mats.at(0).name, "mat");
}

TEST(GardenFile, ReadingsMayBeOfABenchOrAForecast) {
  const Garden garden = read(R"({"latitude": 51, "longitude": 4, "benches": [{"name": "frame"}],
      "readings": [{"file": "l.csv", "bench": "frame"}, {"file": "f.json", "kind": "forecast"}]})");
  EXPECT_EQ(garden.readings.at(0).bench, "frame");
  EXPECT_EQ(garden.readings.at(1).kind, ReadingsEntry::Kind::forecast);
}

TEST(GardenFile, ReadingsMayNameTheirStationAndColumn) {
  const Garden garden = read(R"({"latitude": 51, "longitude": 4,
      "readings": [{"file": "a.csv", "station": "B2"}, {"file": "l.csv", "column": "Temp 2"}]})");
  EXPECT_EQ(garden.readings.at(0).station, "B2");
  EXPECT_EQ(garden.readings.at(1).station, "");
  EXPECT_EQ(garden.readings.at(1).column, "Temp 2");
}

TEST(GardenFile, MonthlyNormalsStandInForReadings) {
  const Garden garden = read(R"({"latitude": 51, "longitude": 4, "monthly_normals": {
      "night_c": [1,2,3,4,5,6,7,8,9,10,11,12], "day_c": [11,12,13,14,15,16,17,18,19,20,21,22]}})");
  ASSERT_TRUE(garden.monthly_normals);
  EXPECT_EQ(garden.monthly_normals->night_c.back(), 12.0);
  EXPECT_EQ(garden.monthly_normals->day_c.front(), 11.0);
}

TEST(GardenFile, CommentsArePassedOver) {
  EXPECT_EQ(read_with("// north is positive\n\"name\": \"Kop\"").name, "Kop");
}

TEST(GardenFile, AMistypedKeyGetsTheNearestNameAndItsPlace) {
  const std::string text = fault_with(R"("elevation": 200)");
  EXPECT_TRUE(
      text.starts_with("garden.json:2:3: unknown key \"elevation\"; expected one of: schema, "))
      << text;
  EXPECT_TRUE(text.ends_with("did you mean \"elevation_m\"?")) << text;
}

TEST(GardenFile, UnknownKeysAreRefusedInEveryObject) {
  const std::vector<std::pair<std::string, std::string>> cases{
      {R"("benches": [{"name": "b", "nigth_offset_c": 1}])", "did you mean \"night_offset_c\"?"},
      {R"("mats": [{"rise_c": 1, "wats": 1}])", "did you mean \"watts\"?"},
      {R"("mix": {"mineral_shar": 0.5}, "away": [])", "did you mean \"mineral_share\"?"},
      {R"("away": [{"from": "2026-01-01", "too": "2026-01-02"}])", "did you mean \"to\"?"},
      {R"("monthly_normals": {"nigth_c": []})", "did you mean \"night_c\"?"},
  };
  for (const auto& [key, remedy] : cases) {
    const std::string text = fault_with(key);
    EXPECT_TRUE(text.starts_with("garden.json:2:")) << text;
    EXPECT_NE(text.find("unknown key"), std::string::npos) << text;
    EXPECT_TRUE(text.ends_with(remedy)) << text;
  }
}

TEST(GardenFile, EveryFaultSaysWhatStandsThereAndWhatBelongsThere) {
  const std::vector<std::pair<std::string, std::string>> cases{
      {R"("schema": 2)", "\"schema\" is 2; expected 1; correct it"},
      {R"("name": 7)", "\"name\" is 7; expected a text in quotes; correct it"},
      {R"("pots_per_day": 2.5)",
       "\"pots_per_day\" is 2.5; expected a whole number from 1 to 1000000; correct it"},
      {R"("elevation_m": "high")",
       "\"elevation_m\" is \"high\"; expected a number from -450 to 9000; correct it"},
      {R"("benches": "frame")", "\"benches\" is \"frame\"; expected a list in [ ]; correct it"},
      {R"("mix": [1])", "\"mix\" is a list of 1; expected an object in { }; correct it"},
      {R"("mix": {"mineral_share": 70})",
       "\"mineral_share\" is 70; expected a number from 0 to 1; correct it"},
      {R"("benches": [{"name": "b", "rain": "yes"}])",
       "\"rain\" is \"yes\"; expected true or false; correct it"},
      {R"("benches": [{"name": "b", "from": "May"}])",
       "\"from\" is \"May\"; expected a date such as \"2026-03-01\"; correct it"},
      {R"("benches": [{"name": ""}])",
       "\"name\" is \"\"; expected a text that is not empty; correct it"},
      {R"("benches": [{"shelter": "open"}])", "the key \"name\" is missing; add it"},
      {R"("sowing_days": ["sat", "sum"])",
       "\"sowing_days[1]\" is \"sum\"; expected one of: mon, tue, wed, thu, "
       "fri, sat, sun; did you mean \"sun\"?"},
      {R"("monthly_normals": {"night_c": [1, 2], "day_c": []})",
       "\"night_c\" is a list of 2; expected a list of 12 values, January first; correct it"},
      {R"("monthly_normals": {"night_c": [9,9,9,9,9,9,9,9,9,9,9,9],
        "day_c": [19,19,19,19,19,19,19,19,19,19,19,8]})",
       "expected no night above the day of its month; are night_c and day_c exchanged?; correct "
       "it"},
  };
  for (const auto& [key, message] : cases) {
    const std::string text = fault_with(key);
    EXPECT_TRUE(text.starts_with("garden.json:2:")) << text;
    EXPECT_TRUE(text.ends_with(message)) << text << "\n" << message;
  }
}

TEST(GardenFile, AMissingLatitudeIsAskedFor) {
  EXPECT_EQ(fault_of("{\"longitude\": 19, \"readings\": []}"),
            "garden.json:1:1: the key \"latitude\" is missing; add it");
}

TEST(GardenFile, ALatitudeBeyondThePoleIsRefused) {
  EXPECT_EQ(fault_of(R"({"latitude": -330, "longitude": 19})"),
            "garden.json:1:2: \"latitude\" is -330; expected a number from -90 to 90; correct it");
}

TEST(GardenFile, AGardenWithoutReadingsIsToldWhatIsNeeded) {
  const std::string text = fault_of("{" + std::string(place) + "}");
  EXPECT_NE(text.find("the garden names no readings"), std::string::npos) << text;
  EXPECT_NE(text.find("daily minima and maxima of one whole season at least"), std::string::npos)
      << text;
  EXPECT_NE(text.find("\"monthly_normals\": {"), std::string::npos) << text;
  EXPECT_NE(text.find("{\"file\": \"readings/station.csv\"}"), std::string::npos) << text;
}

TEST(GardenFile, AMistypedShelterGetsTheNearestWord) {
  EXPECT_EQ(
      fault_with(R"("benches": [{"name": "b", "shelter": "cold fram"}])"),
      "garden.json:2:29: \"shelter\" is \"cold fram\"; expected one of: open, wall, cold frame, "
      "unheated glass, plastic tunnel, indoors; did you mean \"cold frame\"?");
}

TEST(GardenFile, AnUnknownTimeZoneGetsTheNearestOne) {
  EXPECT_EQ(
      fault_with(R"("time_zone": "Africa/Johanesburg")"),
      "garden.json:2:3: \"Africa/Johanesburg\" is no known time zone; expected a name of the tz "
      "database such as \"Africa/Johannesburg\"; did you mean \"Africa/Johannesburg\"?");
}

TEST(GardenFile, AMatOnABenchThatIsNotThereIsRefused) {
  EXPECT_EQ(
      fault_with(R"("mats": [{"bench": "fram", "rise_c": 1}], "benches": [{"name": "frame"}])"),
      "garden.json:2:13: the garden has no bench \"fram\"; expected one of: frame; did you mean "
      "\"frame\"?");
}

TEST(GardenFile, ReadingsOfABenchThatIsNotThereAreRefused) {
  EXPECT_EQ(
      fault_of("{\"latitude\": 1, \"longitude\": 1,\n \"readings\": [\n  {\"file\": \"a.csv\", "
               "\"bench\": \"glass\"}]}"),
      "garden.json:3:21: the garden has no bench \"glass\"; expected one of: open bench; correct "
      "it");
}

TEST(GardenFile, TwoBenchesOfOneNameAreRefused) {
  EXPECT_EQ(fault_with(R"("benches": [{"name": "a"}, {"name": "a"}])"),
            "garden.json:2:31: a second bench \"a\"; expected every bench with a name of its own; "
            "rename one of them");
}

TEST(GardenFile, APeriodMayBeOneDayButNotEndBeforeItBegins) {
  EXPECT_EQ(fault_with(R"("away": [{"from": "2026-07-04", "to": "2026-07-04"}])"), "");
  EXPECT_EQ(fault_with(R"("away": [{"from": "2026-07-04", "to": "2026-07-03"}])"),
            "garden.json:2:35: \"to\" lies before \"from\"; expected the last day of the period, "
            "included; correct it");
}

TEST(GardenFile, TextThatIsNoJsonIsRefusedWithItsPlace) {
  const std::string text = fault_of("{\n  \"latitude\": -33,5\n}");
  EXPECT_TRUE(text.starts_with("garden.json:2:")) << text;
}

} // namespace
} // namespace nightsow::planner
