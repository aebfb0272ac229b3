#include "planner/render/answer_text.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/table.hpp"
#include "planner/render/task_words.hpp"
#include "planner/render/text_parts.hpp"
#include "planner/render/today.hpp"
#include "planner/render/words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace nightsow::planner {

namespace {

constexpr std::size_t most_lines = 10;

std::string line_of(std::string_view text) {
  return shortened(text, text_width);
}

// The entry's kinds of work once each: "Get ready, sow dry".
std::string titles_of(const DiaryEntry& entry) {
  std::vector<std::string> titles;
  for (const Task& task : entry.tasks) {
    std::string title = task_title(task.kind);
    if (std::find(titles.begin(), titles.end(), title) == titles.end()) {
      titles.push_back(std::move(title));
    }
  }
  return fmt::format("{}", fmt::join(titles, ", "));
}

std::string entry_line(const DiaryEntry& entry, const TodayAnswer& answer) {
  const std::string day = entry.on == answer.today ? "Today" : day_text(entry.on, answer.today);
  return line_of(fmt::format("{}: {}: {}", day, titles_of(entry), entry.group));
}

} // namespace

std::string alarm_text(const WeatherAlarm& alarm, Date today, const TextStyle& style) {
  const bool frost = alarm.kind == WeatherAlarm::Kind::frost;
  return fmt::format("{}, {}: {} {} {}. {}",
                     frost ? "Frost" : "Heat",
                     alarm.bench,
                     temperature_text(alarm.air_c, style),
                     alarm.forecast ? "is forecast for" : "was read on",
                     day_text(alarm.on, today),
                     frost ? "Clear nights freeze pots: cover, do not water."
                           : "Shade, air bags; no first water for cool kinds.");
}

std::string today_text(const TodayAnswer& answer, const TextStyle& style) {
  std::vector<std::string> lines{
      line_of(fmt::format("{}, {}", answer.garden.name, date_text(answer.today)))};
  for (const WeatherAlarm& alarm : answer.alarms) {
    lines.push_back(line_of(alarm_text(alarm, answer.today, style)));
  }
  for (const Reason& warning : answer.warnings) {
    lines.push_back(line_of(sentence(warning, style)));
  }
  // One line is kept for what is left out, one for what comes next.
  const std::size_t room = most_lines - 2;
  std::size_t shown = 0;
  for (; shown < answer.now.size() && lines.size() < room; ++shown) {
    lines.push_back(entry_line(answer.now[shown], answer));
  }
  if (answer.now.empty()) {
    lines.emplace_back("Nothing to do on trays in the coming week.");
  }
  if (lines.size() > most_lines - 2) {
    lines.resize(most_lines - 2);
  }
  if (shown < answer.now.size()) {
    lines.push_back(fmt::format("And {} more by {}: nightsow plan --work",
                                answer.now.size() - shown,
                                day_text(answer.to, answer.today)));
  } else if (answer.next) {
    lines.push_back(line_of("Next, " + entry_line(*answer.next, answer)));
  }
  return fmt::format("{}\n", fmt::join(lines, "\n"));
}

} // namespace nightsow::planner
