#include "planner/render/cautions.hpp"

#include "species-rules/rule_fields.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

#include <stdexcept>

namespace nightsow::planner {
namespace {

std::size_t times(const std::string& text, std::string_view part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++count;
  }
  return count;
}

TEST(Cautions, EveryCautionOfTheRulesHasASentence) {
  for (const std::string_view code : species_rules::caution_codes) {
    EXPECT_TRUE(caution_sentence(code).ends_with('.')) << code;
  }
}

TEST(Cautions, ACautionIsNeverPassedOverInSilence) {
  PlanAnswer plan = small_plan();
  plan.sowings.front().cautions = {"glows_in_the_dark"};
  EXPECT_THROW(static_cast<void>(cautions_text(plan, {})), std::logic_error);
}

TEST(Cautions, EachIsSaidOnceWithItsPackets) {
  PlanAnswer plan = small_plan();
  plan.sowings.push_back(fleshy_sowing());
  plan.sowings.back().packet = "S02";
  const std::string text = cautions_text(plan, {});
  EXPECT_EQ(times(text, "poisonous"), 1U);
  EXPECT_NE(text.find("Packets: S01, S02."), std::string::npos) << text;
}

TEST(Cautions, AMatBringsItsWarningAndAMatNotWantedDoesNot) {
  PlanAnswer plan = small_plan();
  EXPECT_EQ(times(cautions_text(plan, {}), "residual-current"), 1U);
  plan.sowings = {waiting_sowing()};
  EXPECT_EQ(times(cautions_text(plan, {}), "residual-current"), 0U);
}

TEST(Cautions, DustIsAlwaysWarnedOfWhereSomethingIsSown) {
  PlanAnswer plan = small_plan();
  plan.sowings = {waiting_sowing()};
  EXPECT_EQ(times(cautions_text(plan, {}), "mask"), 1U);
  plan.sowings.clear();
  EXPECT_EQ(cautions_text(plan, {}), "");
}

} // namespace
} // namespace nightsow::planner
