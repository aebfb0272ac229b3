#include "planner/render/answer_text.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

bool holds(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
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

TEST(ClimateText, EveryLineFitsTheScreen) {
  ClimateAnswer climate = small_climate();
  climate.findings.at(0).file = "readings/" + std::string(120, 'x') + ".csv";
  climate.findings.at(0).other_c = -12.5;
  EXPECT_EQ(first_line_too_wide(climate_text(climate, {})), "");
}

} // namespace
} // namespace nightsow::planner
