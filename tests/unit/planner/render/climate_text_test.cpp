#include "planner/render/answer_text.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <string>

namespace nightsow::planner {
namespace {

bool holds(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

// Wherever its lines were broken.
std::string on_one_line(std::string text) {
  for (std::size_t at = text.find("\n  "); at != std::string::npos; at = text.find("\n  ")) {
    text.replace(at, 3, " ");
  }
  return text;
}

TEST(ClimateText, AFindingHasItsFileAndLine) {
  const std::string text = climate_text(small_climate(), {});
  EXPECT_TRUE(holds(text, "readings/station.csv:5981  14 Jul 1997")) << text;
  EXPECT_TRUE(holds(text, "99.9 °C  left out"));
}

TEST(ClimateText, PhasesAreDatesOfThePlacesOwnYear) {
  const std::string text = climate_text(small_climate(), {});
  EXPECT_TRUE(
      holds(text, "hottest night               10 Feb 2026, 16.5 °C on the smooth curve\n"));
  EXPECT_TRUE(holds(text, "cooling limb begins         20 Mar 2026\n"));
}

TEST(ClimateText, AMonthWithoutAFigureSaysNone) {
  const std::string text = climate_text(small_climate(), {});
  EXPECT_TRUE(holds(text, "Jan      15.9  28.0            16.1          none")) << text;
}

TEST(ClimateText, TheTrendIsInTenYears) {
  EXPECT_TRUE(holds(climate_text(small_climate(), {}),
                    "+0.2 K in ten years, give or take 0.1 K; +0.1 K is counted on.\n"));
}

TEST(ClimateText, AFahrenheitReaderGetsTheMonthsInFahrenheit) {
  TextStyle style;
  style.fahrenheit = true;
  const std::string text = climate_text(small_climate(), style);
  EXPECT_TRUE(holds(text, "mean lowest and highest in °F"));
  EXPECT_TRUE(holds(text, "60.6"));
  EXPECT_TRUE(holds(text, "62 °F on the smooth curve")) << text;
}

TEST(ClimateText, AFileSaysWhatItIsAndWhyOnlyWhenAsked) {
  TextStyle style;
  style.why = true;
  EXPECT_TRUE(holds(climate_text(small_climate(), {}),
                    "readings/station.csv: daily table, in °C, the station\n"));
  EXPECT_FALSE(holds(climate_text(small_climate(), {}), "its header names"));
  EXPECT_TRUE(holds(climate_text(small_climate(), style), "its header names tmin and tmax"));
}

TEST(ClimateText, AForecastIsNotTheStation) {
  ClimateAnswer answer = small_climate();
  answer.files = {{"coming.json", "JSON", "°C", "", {}, true},
                  {"frame.csv", "daily table", "°C", "frame", {}, false}};
  const std::string text = climate_text(answer, {});
  EXPECT_TRUE(holds(text, "coming.json: JSON, in °C, a forecast for the station\n")) << text;
  EXPECT_TRUE(holds(text, "frame.csv: daily table, in °C, logger on the frame\n")) << text;
}

TEST(ClimateText, ABenchSaysHowItWasReckonedAndWhatWouldCountOtherwise) {
  ClimateAnswer climate = small_climate();
  BenchLine line;
  line.bench = "frame";
  line.source = "fitted_transfer";
  line.night_k = 2.1;
  line.day_k = 3.0;
  line.next_source = "shelter_default";
  line.next_night_k = 1.5;
  line.next_day_k = 2.5;
  line.night_doubt_k = 0.9;
  line.paired_nights = 60;
  climate.benches = {line};
  const std::string text = on_one_line(climate_text(climate, {}));
  EXPECT_TRUE(
      holds(text, "frame: by its logger beside the station (+2.1 K at night, +3.0 K by day)"))
      << text;
  EXPECT_TRUE(holds(text, "what is usual")) << text;
  EXPECT_TRUE(holds(text, "Give or take 0.9 K at night")) << text;
}

TEST(ClimateText, AKelvinThatKeepsNightsFromHoldingSaysSo) {
  ClimateAnswer climate = small_climate();
  KelvinLine line;
  line.bench = "frame";
  line.limit_c = 13.0;
  line.kinds = {"Albuca", "Bulbine"};
  climate.kelvin = {line};
  const std::string text = climate_text(climate, {});
  EXPECT_TRUE(holds(text, "Albuca, Bulbine")) << text;
  EXPECT_TRUE(holds(text, "not this season")) << text;
}

TEST(ClimateText, EveryLineFitsTheScreen) {
  ClimateAnswer climate = small_climate();
  climate.findings.at(0).file = "readings/" + std::string(120, 'x') + ".csv";
  climate.findings.at(0).other_c = -12.5;
  EXPECT_EQ(first_line_too_wide(climate_text(climate, {})), "");
}

DecadeTrend trend(double a_decade, double low, double high) {
  return {a_decade, low, high, 0.01, 44};
}

/// The report of one gate.
std::string gate_report(std::optional<DecadeTrend> holds, bool binds = true) {
  ClimateAnswer answer = small_climate();
  GateTrendLine gate;
  gate.limit_c = 13.0;
  gate.nights = 5;
  gate.of = 7;
  gate.bench = "open bench";
  gate.genera = {"Bulbine"};
  gate.binds = binds;
  gate.seasons = 7;
  gate.holds = holds;
  answer.usual.gates = {gate};
  std::string text = climate_text(answer, {});
  text.erase(0, text.find("When cool nights come"));
  return text;
}

TEST(ClimateText, CoolNightsThatComeLaterAreDaysInTenYears) {
  const std::string text = gate_report(trend(2.0, 0.3, 4.0));
  EXPECT_TRUE(holds(text, "13 °C  open bench  Bulbine  not known   +2.0 (+0.3 to +4.0)  yes"))
      << text;
  EXPECT_TRUE(holds(text, "with 0 in it tells no sure move"));
}

TEST(ClimateText, AMoveOfLessThanATenthOfADayIsNaught) {
  const std::string text = gate_report(trend(0.01, -1.04, -0.0), false);
  EXPECT_TRUE(holds(text, "0 (-1.0 to 0)  no")) << text;
}

TEST(ClimateText, FrostHasItsShareAndItsDates) {
  ClimateAnswer answer = small_climate();
  answer.usual.frost.seasons = 44;
  EXPECT_TRUE(holds(climate_text(answer, {}), "No frost in 44 seasons."));
  answer.usual.frost.without = 14;
  answer.usual.frost.nights_a_season = 2.5;
  answer.usual.frost.first = DateRangeLine{day("2026-06-01"), day("2026-06-20"), day("2026-07-20")};
  answer.usual.frost.last = DateRangeLine{day("2026-07-01"), day("2026-08-02"), day("2026-09-01")};
  const std::string text = climate_text(answer, {});
  EXPECT_TRUE(holds(text, "Nights at or under freezing in 30 of 44 seasons, 2.5 a season")) << text;
  EXPECT_TRUE(holds(text, "the first comes about 20 Jun 2026 (8 in 10: 1 Jun-20 Jul)")) << text;
}

TEST(ClimateText, MissingWeekendsAndHolesAreSaid) {
  ClimateAnswer answer = small_climate();
  CompletenessLine nights;
  nights.element = "nights";
  nights.complete = 0.85;
  nights.months = 500;
  nights.months_lost = 40;
  nights.long_holes = {{day("1990-01-01"), day("1990-02-04"), 35}};
  nights.weekdays = LopsidedLine{{"sat", "sun"}, 0.25, 0.13};
  answer.record.completeness = {nights};
  const std::string text = climate_text(answer, {});
  EXPECT_TRUE(holds(text, "months with too little for a mean: 40 of 500.")) << text;
  EXPECT_TRUE(holds(text, "No nights from 1 Jan 1990 to 4 Feb 1990: 35 days.")) << text;
  EXPECT_TRUE(holds(text, "25 % in Saturday and Sunday, against 13 %")) << text;
}

TEST(ClimateText, SuspicionsOfTheRecordAreSaidInPlainWords) {
  ClimateAnswer answer = small_climate();
  answer.record.suspicions = {{"whole_fahrenheit", 0.97, "Read in whole or half °F"}};
  EXPECT_TRUE(holds(climate_text(answer, {}), "Read in whole or half °F")) << answer.season;
}

TEST(ClimateText, ALoggerSaysWhatIsInDoubtAboutIt) {
  ClimateAnswer answer = small_climate();
  LoggerRecord record;
  record.bench = "frame";
  record.from = day("2025-03-01");
  record.to = day("2026-02-19");
  record.nights = 340;
  answer.loggers = {record};
  EXPECT_TRUE(holds(climate_text(answer, {}),
                    "\nLogger on the frame\n  1 Mar 2025 to 19 Feb 2026, 340 nights; nothing in it "
                    "is in doubt.\n"))
      << climate_text(answer, {});
  answer.loggers[0].counts = {{"spike", 0, 2}};
  answer.loggers[0].findings = {{"spike", "ignored", day("2025-07-14"), "frame.csv", 17, 31.0, {}}};
  answer.loggers[0].suspicions = {{"whole_fahrenheit", 0.97, "Read in whole or half °F"}};
  const std::string text = climate_text(answer, {});
  EXPECT_FALSE(holds(text, "nothing in it")) << text;
  EXPECT_TRUE(holds(text, "frame.csv:17  14 Jul 2025")) << text;
  EXPECT_TRUE(holds(text, "Read in whole or half °F")) << text;
}

TEST(ClimateText, AStreakSaysHowManyDays) {
  ClimateAnswer answer = small_climate();
  answer.findings = {{"streak", "used", day("1997-07-14"), "a.csv", 5981, 12.4, {}, 16}};
  EXPECT_TRUE(holds(climate_text(answer, {}), "12.4 °C, 16 days"));
}

} // namespace
} // namespace nightsow::planner
