#include "planner/render/answer_text.hpp"
#include "planner/render/today.hpp"
#include "tests/unit/planner/render/hand_made.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace nightsow::planner {
namespace {

using support::day;

TodayAnswer quiet_day() {
  TodayAnswer answer;
  answer.garden = small_head();
  answer.today = day("2026-07-20");
  answer.to = day("2026-07-27");
  return answer;
}

WeatherAlarm frost_on(const std::string& bench) {
  return {WeatherAlarm::Kind::frost, bench, day("2026-07-19"), 1.0, 3.0, false};
}

DiaryEntry sowing_of(const std::string& packet) {
  DiaryEntry entry;
  entry.on = day("2026-07-22");
  entry.group = "bench-cool-" + packet;
  entry.kind = TaskKind::sow_dry;
  Task task;
  task.on = entry.on;
  task.kind = TaskKind::sow_dry;
  task.packets = {packet};
  entry.tasks = {task};
  return entry;
}

std::ptrdiff_t lines_in(const std::string& text) {
  return std::count(text.begin(), text.end(), '\n');
}

TEST(TodayText, SaysHowManyAlarmsAreLeftOutAndStaysWithinTenLines) {
  TodayAnswer answer = quiet_day();
  for (int bench = 1; bench <= 12; ++bench) {
    answer.alarms.push_back(frost_on("bench " + std::to_string(bench)));
    answer.now.push_back(sowing_of("S" + std::to_string(bench)));
  }
  answer.next = sowing_of("T1");
  const std::string text = today_text(answer, {});
  EXPECT_LE(lines_in(text), 10);
  EXPECT_NE(text.find("bench 5"), std::string::npos);
  EXPECT_EQ(text.find("bench 6:"), std::string::npos);
  EXPECT_NE(text.find("And 7 more"), std::string::npos) << text;
  EXPECT_NE(text.find("And 11 more by 27 Jul"), std::string::npos) << text;
  EXPECT_NE(text.find("Next, "), std::string::npos) << text;
}

TEST(TodayText, TellsAllOfAWarningOverSeveralLines) {
  TodayAnswer answer = quiet_day();
  answer.warnings = {{ReasonCode::readings_stale, {{"last", day("2026-02-19")}, {"days", 151}}}};
  const std::string text = today_text(answer, {});
  EXPECT_EQ(first_line_too_wide(text), "");
  EXPECT_EQ(text.find("\u2026"), std::string::npos) << text;
  EXPECT_NE(text.find("151 days ago"), std::string::npos) << text;
}

TEST(TodayText, NamesThePacketsOfATask) {
  TodayAnswer answer = quiet_day();
  answer.now = {sowing_of("S1")};
  Lot lot;
  lot.id = answer.now.front().tasks.front().lot = "bench-cool-S1-thin";
  lot.group = "bench-cool-S1";
  answer.lots = {lot};
  EXPECT_NE(today_text(answer, {}).find("Sow dry: bench-cool-S1 (S1)"), std::string::npos);
}

} // namespace
} // namespace nightsow::planner
