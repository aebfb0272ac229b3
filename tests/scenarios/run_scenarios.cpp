#include "climate/base/file.hpp"
#include "climate/merge_readings.hpp"
#include "climate/readers/read_readings.hpp"
#include "planner/garden/change.hpp"
#include "tests/scenarios/claims.hpp"
#include "tests/scenarios/scenario.hpp"
#include "tests/support/source_folder.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <filesystem>
#include <ostream>
#include <string>
#include <vector>

namespace nightsow::scenarios {

namespace {

namespace fs = std::filesystem;

const fs::path scenario_folder = NIGHTSOW_SCENARIOS;
const fs::path measured_folder = support::shared_weather() / "series";

/// One scenario on one half of the Earth.
struct Run {
  fs::path file;
  bool north = false;
};

void PrintTo(const Run& run, std::ostream* out) {
  *out << run.file.filename().string() << (run.north ? " in the north" : " in the south");
}

std::vector<Run> all_runs() {
  std::vector<fs::path> files;
  for (const fs::directory_entry& entry : fs::directory_iterator(scenario_folder)) {
    if (entry.path().extension() == ".txt") {
      files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  std::vector<Run> runs;
  for (const fs::path& file : files) {
    runs.push_back({file, false});
    runs.push_back({file, true});
  }
  return runs;
}

// Letters and digits only, as GoogleTest wants its names.
std::string name_of(const testing::TestParamInfo<Run>& run) {
  std::string name;
  bool capital = true;
  for (const char letter : run.param.file.stem().string()) {
    const bool counts = std::isalnum(static_cast<unsigned char>(letter)) != 0;
    if (counts) {
      const int upper = std::toupper(static_cast<unsigned char>(letter));
      name += capital ? static_cast<char>(upper) : letter;
    }
    capital = !counts;
  }
  return name + (run.param.north ? "InTheNorth" : "InTheSouth");
}

planner::LoadedGarden invented_garden(const Scenario& scenario, bool north) {
  support::InventedGarden garden = scenario.garden;
  garden.climate.hottest_day_of_year =
      north ? support::hottest_in_the_north : support::hottest_in_the_south;
  return support::garden_of(garden);
}

// As measured on its own half; the other is its mirror.
planner::LoadedGarden measured_garden(const Scenario& scenario, bool north) {
  support::InventedGarden invented = scenario.garden;
  if (scenario.measured_in_the_north) {
    invented.climate.hottest_day_of_year = support::hottest_in_the_north;
  }
  const fs::path file = measured_folder / scenario.readings;
  const std::array readings{
      climate::read_readings(read_whole_file(file, "the scenario"), file.string())};
  const planner::LoadedGarden garden = planner::as_of(
      support::folder_of(invented, climate::merge_readings(readings), *scenario.today),
      *scenario.today);
  return north != scenario.measured_in_the_north ? planner::apply(planner::Mirror{}, garden)
                                                 : garden;
}

class Scenarios : public testing::TestWithParam<Run> {};

TEST_P(Scenarios, HoldAsGrowersTellThem) {
  const Scenario scenario = read_scenario(read_whole_file(GetParam().file, "the scenario"));
  for (const std::string& fault : scenario.faults) {
    ADD_FAILURE() << GetParam().file.filename().string() << ", " << fault;
  }
  if (HasFailure()) {
    return;
  }
  if (!scenario.readings.empty() && !fs::exists(measured_folder / scenario.readings)) {
    GTEST_SKIP() << "no readings of this station here";
  }
  const planner::LoadedGarden garden = scenario.readings.empty()
                                           ? invented_garden(scenario, GetParam().north)
                                           : measured_garden(scenario, GetParam().north);
  for (const Expectation& expectation : scenario.expectations) {
    const std::string fault = fault_in(expectation, garden);
    EXPECT_TRUE(fault.empty()) << GetParam().file.filename().string() << ", line "
                               << expectation.line.number << ": " << expectation.line.text
                               << "\nbut " << fault;
  }
}

INSTANTIATE_TEST_SUITE_P(OnBothHalves, Scenarios, testing::ValuesIn(all_runs()), name_of);

// The language itself: what is not understood must not pass for an expectation that holds.

const char* const whole = "scenario   A packet waits\n"
                          "source     common practice, no source\n"
                          "nights     17 in the hottest, 7 in the coldest, single nights +-2\n"
                          "today      60 days after the hottest night\n"
                          "packet     Bulbine annua, 40 seeds, harvested 300 days ago\n";

std::vector<std::string> faults_with(const std::string& more) {
  return read_scenario(whole + more).faults;
}

TEST(ScenarioLanguage, UnderstandsAWholeScenario) {
  EXPECT_EQ(faults_with("expect Bulbine annua: waits\n"), std::vector<std::string>{});
}

TEST(ScenarioLanguage, RefusesAWordItDoesNotKnowWithItsLine) {
  EXPECT_EQ(faults_with("expcet Bulbine annua: waits\nexpect Bulbine annua: waits\n"),
            std::vector<std::string>{"line 6: unknown word: expcet Bulbine annua: waits"});
}

TEST(ScenarioLanguage, RefusesWhatItDoesNotUnderstand) {
  for (const char* line : {"days ten above nights",
                           "mat warm",
                           "today tomorrow",
                           "packet Bulbine, some seeds",
                           "expect Bulbine annua waits"}) {
    const auto faults = faults_with(std::string(line) + "\nexpect Bulbine annua: waits\n");
    EXPECT_EQ(faults.size(), 1U) << line;
  }
}

TEST(ScenarioLanguage, RefusesAScenarioThatExpectsNothing) {
  EXPECT_EQ(faults_with(""), std::vector<std::string>{"it expects nothing"});
}

TEST(ScenarioLanguage, RefusesAClaimItDoesNotUnderstand) {
  const Scenario scenario = read_scenario(std::string(whole) + "expect Bulbine annua: thrives\n");
  EXPECT_EQ(fault_in(scenario.expectations.at(0), invented_garden(scenario, false)),
            "not understood");
}

TEST(ScenarioLanguage, FindsAClaimThatDoesNotHold) {
  const auto fault = [](const std::string& claim) {
    const Scenario scenario =
        read_scenario(std::string(whole) + "expect Bulbine annua: " + claim + '\n');
    return fault_in(scenario.expectations.at(0), invented_garden(scenario, false));
  };
  EXPECT_EQ(fault("waits"), "");
  EXPECT_NE(fault("waters now"), "");
  EXPECT_NE(fault("first water at most 3 days after today"), "");
  EXPECT_NE(fault("first water 3 +- 2 days after today"), "");
  EXPECT_NE(fault("says \"no such words\""), "");
}

} // namespace
} // namespace nightsow::scenarios
