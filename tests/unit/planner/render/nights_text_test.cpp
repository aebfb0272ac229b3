#include "planner/render/answer_text.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

bool holds(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

PastNightsAnswer one_past_season(const PastSeasonDates& season) {
  PastNightsAnswer past;
  past.garden = small_head();
  past.today = day("2026-02-20");
  past.gates = {PastGate{"Bulbine", 13.0, 25.0, 5, 7, true, 40, 2, {season}}};
  return past;
}

TEST(NightsText, AGenusTellsWhatItAsksForAndWhenThatComes) {
  const std::string text = nights_text(small_nights(), {});
  EXPECT_TRUE(holds(text, "2 of 7, 3 of 14"));
  EXPECT_TRUE(holds(text, "not yet"));
  EXPECT_TRUE(holds(text, "12 Apr (1-26 Apr)")) << text;
  EXPECT_TRUE(holds(text, "because: Waits for cool nights"));
}

TEST(NightsText, TheFalseStartIsToldToWhoeverAsksWhy) {
  TextStyle style;
  style.why = true;
  EXPECT_FALSE(holds(nights_text(small_nights(), {}), "first cool week"));
  EXPECT_TRUE(holds(nights_text(small_nights(), style), "first cool week, 5 of 7 nights: 10 Mar"));
}

TEST(NightsText, WhereNightsDoNotDecideNoDateIsShown) {
  NightsAnswer nights = small_nights();
  nights.genera.at(0).binds = false;
  const std::string text = nights_text(nights, {});
  EXPECT_TRUE(holds(text, "nights do not decide here"));
  EXPECT_FALSE(holds(text, "12 Apr"));
}

TEST(NightsText, RecentNightsStandAgainstTheLimitAndAGapIsMissing) {
  NightsAnswer nights = small_nights();
  nights.genera.at(0).recent = {day("2026-02-17"), {13.0, std::nullopt, 13.1, 21.5}};
  EXPECT_TRUE(holds(nights_text(nights, {}), "last 4 nights: [▁ ▂█]"));
}

TEST(NightsText, WithoutReadingsNothingIsCounted) {
  NightsAnswer nights = small_nights();
  nights.genera.at(0).recent = {day("2026-01-22"), std::vector<std::optional<double>>(30)};
  const std::string text = nights_text(nights, {});
  EXPECT_TRUE(holds(text, "no readings"));
  EXPECT_FALSE(holds(text, "of 14"));
}

TEST(NightsText, TheForecastIsTold) {
  NightsAnswer nights = small_nights();
  nights.genera.at(0).forecast = ForecastNights{10, 3, 27.4};
  EXPECT_TRUE(holds(nights_text(nights, {}), "forecast: 3 of 10 nights at or under 13 °C"));
}

TEST(NightsText, GeneraThatDoNotWaitAreNamed) {
  EXPECT_TRUE(holds(nights_text(small_nights(), {}), "Do not wait for cool nights: Stapelia\n"));
}

TEST(NightsText, NothingThatWaitsIsAnAnswer) {
  NightsAnswer nights = small_nights();
  nights.genera.clear();
  EXPECT_TRUE(holds(nights_text(nights, {}), "Nothing here waits for cool nights."));
}

TEST(PastNightsText, ADateThatNeverCameIsNotOneThatIsUnknown) {
  const std::string text = past_nights_text(
      one_past_season({2011, true, day("2011-03-20"), std::nullopt, std::nullopt, {"settles"}}),
      {});
  EXPECT_TRUE(holds(text, "2011    20 Mar 2011  did not come  unknown")) << text;
  EXPECT_TRUE(holds(text, "Bulbine: 5 of 7 nights at or under 13 °C, days to 25 °C\n"));
}

TEST(PastNightsText, ASeasonWithHolesIsShownAndLeftOutOfTheCount) {
  const std::string text =
      past_nights_text(one_past_season({2011, false, {}, {}, {}, {"stirs", "holds"}}), {});
  EXPECT_TRUE(holds(text, "left out, nights are missing")) << text;
}

} // namespace
} // namespace nightsow::planner
