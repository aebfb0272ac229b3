#include "planner/render/answer_text.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

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

} // namespace
} // namespace nightsow::planner
