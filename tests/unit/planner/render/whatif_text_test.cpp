#include "planner/render/answer_text.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

bool holds(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST(WhatIfText, DifferencesComeFirst) {
  const std::string text = whatif_text(small_whatif(), {});
  EXPECT_TRUE(holds(text, "What if: every night and day +2.0 K\n"));
  EXPECT_TRUE(holds(text, "12 days later")) << text;
  EXPECT_LT(text.find("S09"), text.find("What stays as it is"));
  EXPECT_GT(text.find("S10"), text.find("What stays as it is"));
}

TEST(WhatIfText, APlanThatDoesNotChangeIsAnAnswer) {
  WhatIfAnswer whatif = small_whatif();
  whatif.lines.erase(whatif.lines.begin());
  EXPECT_TRUE(holds(whatif_text(whatif, {}), "What differs\n  Nothing.\n"));
}

TEST(WhatIfText, APacketThatDropsOutIsADifference) {
  WhatIfAnswer whatif = small_whatif();
  whatif.lines.at(1).after.list = "not_now";
  whatif.lines.at(1).moved_days.reset();
  whatif.lines.at(1).differs = true;
  const std::string text = whatif_text(whatif, {});
  EXPECT_TRUE(holds(text, "not this season")) << text;
  EXPECT_FALSE(holds(text, "What stays as it is"));
}

TEST(WhatIfText, NightsThatCeaseToDecideAreSaid) {
  WhatIfAnswer whatif = small_whatif();
  whatif.lines.at(0).after.binds = false;
  EXPECT_TRUE(holds(whatif_text(whatif, {}), "cool nights no longer decide\n"));
}

TEST(WhatIfText, AMirrorSaysWhatItKeepsAndWhatDayItIs) {
  WhatIfAnswer whatif = small_whatif();
  whatif.changes = {{"mirror", {}}};
  whatif.today_after = day("2026-08-22");
  const std::string text = whatif_text(whatif, {});
  EXPECT_TRUE(holds(text, "seed keeps its age and ripeness as they are"));
  EXPECT_TRUE(holds(text, "Under the change it is 22 Aug 2026, season 2026.\n"));
}

TEST(WhatIfText, WhereTodayMovesBothDatesOfWhatStaysAreShown) {
  WhatIfAnswer whatif = small_whatif();
  whatif.today_after = day("2026-08-22");
  whatif.lines.at(1).after.expected = spread("2026-10-01", "2026-10-12", "2026-10-26");
  const std::string text = whatif_text(whatif, {});
  const std::string_view stays = std::string_view{text}.substr(text.find("What stays as it is"));
  EXPECT_NE(stays.find("12 Apr (1-26 Apr)"), std::string_view::npos) << text;
  EXPECT_NE(stays.find("12 Oct (1-26 Oct)"), std::string_view::npos) << text;
}

TEST(WhatIfText, EveryLineFitsTheScreen) {
  WhatIfAnswer whatif = small_whatif();
  whatif.lines.at(0).taxon = "Sarcocaulon multifidum subsp. of a name without an end";
  whatif.lines.at(0).before.expected.never = 0.2;
  EXPECT_EQ(first_line_too_wide(whatif_text(whatif, {})), "");
}

} // namespace
} // namespace nightsow::planner
