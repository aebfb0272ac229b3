#include "planner/garden/saved_plan.hpp"

#include "planner/answers/plan_marks.hpp"
#include "planner/render/saved.hpp"
#include "tests/support/garden_text.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::planner {
namespace {

using support::fault;

std::string saved_text() {
  PlanAnswer answer = small_plan();
  answer.saves = 3;
  return saved_plan_text(answer, {"garden-mark", {{"S01", "row-mark", "rule-mark", 4.0}}});
}

std::string with(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return text.replace(at, from.size(), to);
}

SavedPlan read(const std::string& text) {
  return read_saved_plan(text, "plans/2026.json");
}

TEST(SavedPlan, IsReadAsItWasWritten) {
  const PlanAnswer answer = small_plan();
  const SavedPlan plan = read(saved_text());
  EXPECT_EQ(plan.season, 2026);
  EXPECT_EQ(plan.saves, 3);
  EXPECT_EQ(plan.on, answer.today);
  EXPECT_EQ(plan.readings_to, answer.readings.to);
  EXPECT_EQ(plan.garden_mark, "garden-mark");
  ASSERT_EQ(plan.lines.size(), answer.sowings.size() + answer.not_now.size());
  for (std::size_t i = 0; i < answer.sowings.size(); ++i) {
    const Sowing& sowing = answer.sowings[i];
    EXPECT_EQ(plan.lines[i].packet, sowing.packet);
    EXPECT_EQ(plan.lines[i].verdict, name_of(sowing.verdict));
    EXPECT_EQ(plan.lines[i].water, day_of_water(sowing.verdict, sowing.first_water, answer.today));
    EXPECT_EQ(plan.lines[i].no_later_than, sowing.first_water.no_later_than);
  }
  EXPECT_EQ(plan.lines[0].row_mark, "row-mark");
  EXPECT_EQ(plan.lines[0].seeds_sown, 4.0);
  EXPECT_FALSE(plan.lines.back().sown_this_season);
}

TEST(SavedPlan, OfANewerSchemaIsRefusedWithPlaceAndRemedy) {
  const std::string found = fault<InputError>(
      [] { return read(with(saved_text(), R"("schema": 1)", R"("schema": 2)")); });
  EXPECT_EQ(found,
            "plans/2026.json:2:3: this saved plan is of schema 2; expected schema 1 or older; use "
            "the newer nightsow that wrote it; the file was not touched");
}

TEST(SavedPlan, ThatIsDamagedIsRefusedWithItsPlace) {
  struct Case {
    const char* from;
    const char* to;
    const char* found;
  };

  for (const Case& one : {Case{R"("saves": 3)", R"("saved": 3)", "\"saves\" is missing"},
                          Case{R"("season": 2026)", R"("season": "2026")", "season"},
                          Case{R"("today": "2026-02-20")", R"("today": "2026-02-30")", "today"},
                          Case{R"("sowings": [)", R"("sowings": [ 1, )", "sowings"}}) {
    const std::string found =
        fault<InputError>([&] { return read(with(saved_text(), one.from, one.to)); });
    EXPECT_NE(found.find(one.found), std::string::npos) << found;
    EXPECT_EQ(found.rfind("plans/2026.json:", 0), 0U) << found;
  }
  EXPECT_NE(fault<InputError>([] { return read(saved_text().substr(0, 900)); }), "");
  EXPECT_NE(fault<InputError>([] { return read(""); }), "");
}

TEST(SavedPlan, WithoutMarksIsReadAllTheSame) {
  const SavedPlan plan = read(with(saved_text(), R"("made_from")", R"("made_by")"));
  EXPECT_EQ(plan.garden_mark, "");
  EXPECT_EQ(plan.lines.front().row_mark, "");
}

} // namespace
} // namespace nightsow::planner
