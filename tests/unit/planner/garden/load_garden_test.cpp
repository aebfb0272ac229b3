#include "planner/garden/load_garden.hpp"

#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

using support::TemporaryFolder;
using support::write_garden;

std::string fault_of(const TemporaryFolder& folder) {
  return support::fault<ProblemError>([&] { return load_garden(folder.path()); });
}

std::vector<std::string> problems_of(const TemporaryFolder& folder) {
  return support::texts(load_garden(folder.path()).problems);
}

bool has_problem(const TemporaryFolder& folder, const std::string& beginning) {
  for (const std::string& text : problems_of(folder)) {
    if (text.starts_with(beginning)) {
      return true;
    }
  }
  return false;
}

TEST(LoadGarden, AFolderBecomesAGarden) {
  const TemporaryFolder folder;
  write_garden(folder);
  const GardenFolder garden = load_garden(folder.path());
  EXPECT_EQ(garden.station.series.size(), 90U);
  EXPECT_EQ(garden.packets.at(0).id, "b1");
  EXPECT_EQ(garden.files.at(0).file, "readings/station.csv");
  EXPECT_FALSE(garden.files.at(0).forecast);
  EXPECT_TRUE(garden.catalogue->rule_for("Bulbine annua").found);
}

TEST(LoadGarden, OneStationOfAFileOfSeveralIsRead) {
  const TemporaryFolder folder;
  write_garden(folder, R"({"latitude": -33, "longitude": 19, "readings": [
      {"file": "readings/two.csv", "station": "B2"}]})");
  folder.write("readings/two.csv",
               "station,date,tmin_c,tmax_c\nA1,2026-01-01,5,15\nB2,2026-01-01,7,17\n");
  const GardenFolder garden = load_garden(folder.path());
  ASSERT_EQ(garden.station.series.size(), 1U);
  EXPECT_EQ(garden.station.series.night_c()[0], 7.0F);
}

TEST(LoadGarden, AFolderWithoutGardenIsWrongUse) {
  const TemporaryFolder folder;
  EXPECT_THROW(static_cast<void>(load_garden(folder.path())), UsageError);
  EXPECT_EQ(fault_of(folder),
            folder.path().string() +
                ": there is no garden.json here; expected the folder of a garden; "
                "make one with `nightsow start DIR`, or name another with --garden");
}

TEST(LoadGarden, ReadingsThatAreNotThereAreBadInput) {
  const TemporaryFolder folder;
  folder.write("garden.json", support::smallest_garden);
  EXPECT_THROW(static_cast<void>(load_garden(folder.path())), InputError);
  EXPECT_NE(fault_of(folder).find("the file that garden.json names"), std::string::npos);
}

TEST(LoadGarden, AGardenWithoutPacketsIsANote) {
  const TemporaryFolder folder;
  write_garden(folder);
  std::filesystem::remove(folder.path() / "packets.csv");
  EXPECT_TRUE(load_garden(folder.path()).packets.empty());
  EXPECT_TRUE(has_problem(folder, "packets.csv: the garden has no packets.csv"));
}

TEST(LoadGarden, BenchesOfPacketsAreThoseOfTheGarden) {
  const TemporaryFolder folder;
  write_garden(folder);
  folder.write("packets.csv", "packet,taxon,seeds,received,bench\nb1,Bulbine annua,40,2025,shed\n");
  EXPECT_TRUE(has_problem(folder, "packets.csv:2:26: the garden has no bench \"shed\""));
}

TEST(LoadGarden, FilesAreJoinedInTheOrderOfTheGarden) {
  const TemporaryFolder folder;
  write_garden(folder, R"({"latitude": -33, "longitude": 19, "readings": [
      {"file": "readings/b.csv"}, {"file": "readings/a.csv"}]})");
  folder.write("readings/a.csv", "date,tmin_c,tmax_c\n2026-01-01,5,15\n2026-01-02,6,16\n");
  folder.write("readings/b.csv", "date,tmin_c,tmax_c\n2026-01-01,7,17\n");
  const auto station = load_garden(folder.path()).station;
  EXPECT_EQ(station.series.night_c()[0], 7.0F);
  EXPECT_EQ(station.series.night_c()[1], 6.0F);
}

TEST(LoadGarden, FiveFaultyRowsOfAFileAreShownAndTheRestCounted) {
  const TemporaryFolder folder;
  std::string text = support::station_text("2025-12-01", 90);
  for (int i = 1; i <= 7; ++i) {
    text += "2026-03-0" + std::to_string(i) + ",cold,20\n";
  }
  write_garden(folder, support::smallest_garden, text);
  const auto problems = problems_of(folder);
  ASSERT_EQ(problems.size(), 6U);
  EXPECT_TRUE(problems[4].starts_with("readings/station.csv:96:")) << problems[4];
  EXPECT_EQ(problems[5],
            "readings/station.csv: 7 of 97 rows are faulty; the first 5 faults are listed");
}

TEST(LoadGarden, AStationOfTheOtherHemisphereIsAWarning) {
  const TemporaryFolder folder;
  write_garden(folder,
               support::smallest_garden,
               "STATION,DATE,LATITUDE,LONGITUDE,ELEVATION,NAME,TMIN,TMAX\n"
               "XX000000001,2026-01-01,33.0,19.0,20.0,INVENTED,100,200\n");
  EXPECT_TRUE(
      has_problem(folder,
                  "readings/station.csv: this station lies at latitude 33, the garden at -33; "
                  "expected a station within 2 degrees"));
}

constexpr std::string_view garden_with_logger_and_forecast =
    R"({"latitude": -33, "longitude": 19, "time_zone": "Africa/Johannesburg", "readings": [
      {"file": "readings/station.csv"}, {"file": "logger.csv", "bench": "open bench"},
      {"file": "forecast.json", "kind": "forecast"}]})";

TEST(LoadGarden, LoggersAreHeldForTheirBenchAndForecastsApart) {
  const TemporaryFolder folder;
  write_garden(folder, garden_with_logger_and_forecast);
  folder.write("logger.csv", "date,tmin_c,tmax_c\n2027-01-01,1,2\n");
  folder.write("forecast.json",
               R"({"daily": {"time": ["2026-03-01"], "temperature_2m_min": [9]}})");
  const GardenFolder garden = load_garden(folder.path());
  EXPECT_EQ(garden.station.series.size(), 90U);
  EXPECT_FALSE(garden.files.at(1).forecast);
  EXPECT_TRUE(garden.files.at(2).forecast);
  EXPECT_EQ(garden.files.at(2).format, "JSON");
  EXPECT_EQ(garden.bench_loggers.at("open bench").series.night_c()[0], 1.0F);
  EXPECT_EQ(garden.forecast.series.night_c()[0], 9.0F);
  EXPECT_TRUE(garden.problems.empty());
}

TEST(LoadGarden, LoggersAndForecastsThatCannotBeReadAreWarningsWithTheQuestion) {
  const TemporaryFolder folder;
  write_garden(folder, garden_with_logger_and_forecast);
  folder.write("logger.csv", "Time,Temp A,Temp B\n2026-01-01 0:00,1,2\n2026-01-01 1:00,1,2\n");
  folder.write("forecast.json", "{}");
  const GardenFolder garden = load_garden(folder.path());
  EXPECT_TRUE(garden.bench_loggers.empty());
  EXPECT_TRUE(garden.forecast.series.empty());
  EXPECT_EQ(garden.problems.at(0).severity, Severity::warning);
  const auto problems = support::texts(garden.problems);
  ASSERT_EQ(problems.size(), 2U);
  EXPECT_EQ(problems[0],
            "logger.csv:1: the logger cannot be read: several columns hold temperatures: 'Temp A', "
            "'Temp B'; expected one column; which of them is meant? Name it in garden.json beside "
            "the file: \"column\": \"Temp A\"");
  EXPECT_TRUE(problems[1].starts_with("forecast.json:1:1: the forecast cannot be read: JSON of a "
                                      "kind that is not known"))
      << problems[1];
}

// Three days by the hour under two names, and a garden that says which is meant.
TEST(LoadGarden, AnEntryNamesItsColumnAndTheGardenItsZone) {
  const TemporaryFolder folder;
  write_garden(folder, R"({"latitude": -33, "longitude": 19, "time_zone": "Africa/Johannesburg",
      "readings": [{"file": "readings/station.csv"},
                   {"file": "logger.csv", "bench": "open bench", "column": "Temp B"}]})");
  std::string text = "Time,Temp A,Temp B\n";
  for (int hour = 0; hour < 72; ++hour) {
    text += "2026-02-0" + std::to_string(1 + hour / 24) + ' ' + std::to_string(hour % 24) +
            ":00,40," + std::to_string(10 + hour % 24) + '\n';
  }
  folder.write("logger.csv", text);
  const climate::DailySeries logger =
      load_garden(folder.path()).bench_loggers.at("open bench").series;
  EXPECT_EQ(logger.first(), support::day("2026-02-01"));
  EXPECT_EQ(logger.night_c()[1], 10.0F);
  EXPECT_EQ(logger.day_c()[1], 33.0F);
}

TEST(LoadGarden, AStationAmongSeveralIsNamedByItsEntry) {
  const TemporaryFolder folder;
  write_garden(folder,
               R"({"latitude": -33, "longitude": 19,
      "readings": [{"file": "readings/station.csv", "station": "B"}]})",
               R"([{"fecha": "2026-01-01", "indicativo": "A", "tmin": "9,0"},
                   {"fecha": "2026-01-01", "indicativo": "B", "tmin": "8,5"}])");
  EXPECT_EQ(load_garden(folder.path()).station.series.night_c()[0], 8.5F);
}

TEST(LoadGarden, ALoggerAloneIsNoStation) {
  const TemporaryFolder folder;
  write_garden(folder, R"({"latitude": -33, "longitude": 19, "readings": [
      {"file": "readings/station.csv", "bench": "open bench"}]})");
  EXPECT_TRUE(fault_of(folder).starts_with("garden.json: no entry of readings is of the station "
                                           "itself; expected daily minima and maxima "
                                           "of one whole season at least, from one"));
}

TEST(LoadGarden, MonthlyNormalsAloneAreEnoughAndSaidToBeRough) {
  const TemporaryFolder folder;
  write_garden(folder, R"({"latitude": 1, "longitude": 1, "monthly_normals": {
      "night_c": [1,1,1,1,1,1,1,1,1,1,1,1], "day_c": [1,1,1,1,1,1,1,1,1,1,1,1]}})");
  EXPECT_TRUE(load_garden(folder.path()).station.series.empty());
  EXPECT_TRUE(problems_of(folder).back().starts_with(
      "garden.json: there are no readings; nights are drawn from monthly_normals"));
}

TEST(LoadGarden, ReadingsOfDaysOnlyGiveNoNight) {
  const TemporaryFolder folder;
  write_garden(
      folder, support::smallest_garden, "date,tmin_c,tmax_c\n2026-01-01,,20\n2026-01-02,,21\n");
  EXPECT_TRUE(
      fault_of(folder).starts_with("garden.json: the readings give not one night; expected "));
}

constexpr std::string_view own_rule =
    R"({"schema": 1, "family": "Iridaceae", "genera": [ {"genus": "Moraea", "rule":
        {"night_limit_c": {"value": 9, "low": 8, "high": 10, "evidence": "grower"}}} ]})";

double moraea_limit_c(const GardenFolder& loaded) {
  return loaded.catalogue->rule_for("Moraea").found->rule.gate.night_limit_c->value;
}

TEST(LoadGarden, RulesOfOnesOwnLieOverTheCatalogue) {
  const TemporaryFolder folder;
  write_garden(folder);
  folder.write("rules/mine.json", own_rule);
  const GardenFolder loaded = load_garden(folder.path());
  EXPECT_DOUBLE_EQ(moraea_limit_c(loaded), 9.0);
}

TEST(LoadGarden, AFaultyRuleFileIsSaidAndLeftAsideTheOthersHold) {
  const TemporaryFolder folder;
  write_garden(folder);
  folder.write("rules/a.json", "{}");
  folder.write("rules/b.json", own_rule);
  folder.write("rules/notes.txt", "no rules");
  const GardenFolder loaded = load_garden(folder.path());
  EXPECT_DOUBLE_EQ(moraea_limit_c(loaded), 9.0);
  const std::vector<std::string> problems = problems_of(folder);
  EXPECT_EQ(problems.back(),
            "rules/a.json: the file is left aside; the other rules hold; `nightsow rules check "
            "rules/a.json` lists all");
  EXPECT_TRUE(problems.at(problems.size() - 2).starts_with("rules/a.json:1:1: "));
}

} // namespace
} // namespace nightsow::planner
