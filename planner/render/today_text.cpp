#include "planner/render/answer_text.hpp"
#include "planner/render/dates.hpp"
#include "planner/render/figure_text.hpp"
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
// The first is the garden's; below stand what is due, what more there is, and what comes next.
constexpr std::size_t most_lines_of_warning = 6;

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

// The packets the entry concerns, or how many where they do not fit, or nothing.
std::string packets_of(const DiaryEntry& entry, std::size_t columns) {
  std::vector<std::string> packets;
  for (const Task& task : entry.tasks) {
    packets.insert(packets.end(), task.packets.begin(), task.packets.end());
  }
  std::sort(packets.begin(), packets.end());
  packets.erase(std::unique(packets.begin(), packets.end()), packets.end());
  const std::string list = fmt::format(" ({})", fmt::join(packets, ", "));
  const std::string count =
      fmt::format(" ({})", counted_text(static_cast<double>(packets.size()), "packet"));
  const auto fits = [&](const std::string& text) { return columns_of(text) <= columns; };
  return fits(list) ? list : packets.size() > 1 && fits(count) ? count : "";
}

std::string entry_line(std::string_view lead, const DiaryEntry& entry, const TodayAnswer& answer) {
  const std::string day = entry.on == answer.today ? "Today" : day_text(entry.on, answer.today);
  const std::optional<Date> since = entry.overdue_since();
  const std::string line = fmt::format("{}{}: {}{}: {}",
                                       lead,
                                       day,
                                       titles_of(entry),
                                       since ? ", due since " + day_text(*since, answer.today) : "",
                                       entry_trays(entry, answer.lots));
  const std::size_t used = std::min<std::size_t>(columns_of(line), text_width);
  return line_of(line + packets_of(entry, text_width - used));
}

// Warnings, then alarms, as many as there is room for; how many are left out is said.
std::vector<std::string> warning_lines(const TodayAnswer& answer,
                                       const TextStyle& style,
                                       std::size_t most) {
  std::vector<std::string> texts;
  for (const Reason& warning : answer.warnings) {
    texts.push_back(sentence(warning, style));
  }
  for (const WeatherAlarm& alarm : answer.alarms) {
    texts.push_back(alarm_text(alarm, answer.today, style));
  }
  std::vector<std::string> lines;
  for (std::size_t shown = 0; shown < texts.size(); ++shown) {
    const std::vector<std::string> more = wrapped(texts[shown], text_width);
    const bool last = shown + 1 == texts.size();
    if (lines.size() + more.size() + (last ? 0 : 1) > most) {
      lines.push_back(fmt::format("And {} more of frost, heat or readings: nightsow today --json",
                                  texts.size() - shown));
      break;
    }
    lines.insert(lines.end(), more.begin(), more.end());
  }
  return lines;
}

// The figures of one sowing, the names of several.
std::vector<std::string> behind_lines(const TodayAnswer& answer, const TextStyle& style) {
  if (answer.behind.empty()) {
    return {};
  }
  if (answer.behind.size() == 1) {
    const BehindSowing& one = answer.behind.front();
    return wrapped(fmt::format("{}: {}", one.taxon, sentence(one.reason, style)), text_width);
  }
  std::vector<std::string> taxa;
  std::vector<long long> sowings;
  for (const BehindSowing& one : answer.behind) {
    taxa.push_back(one.taxon);
    sowings.push_back(one.sowing);
  }
  return {line_of(fmt::format("Fewer came than expected: nightsow account {}: {}",
                              fmt::join(sowings, " "),
                              fmt::join(taxa, ", ")))};
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
  const std::vector<std::string> behind = behind_lines(answer, style);
  const std::vector<std::string> warnings =
      warning_lines(answer, style, most_lines_of_warning - behind.size());
  lines.insert(lines.end(), warnings.begin(), warnings.end());
  // One line is kept for what is left out, one for what comes next.
  const std::size_t room = most_lines - 2 - behind.size();
  std::size_t shown = 0;
  for (; shown < answer.now.size() && lines.size() < room; ++shown) {
    lines.push_back(entry_line("", answer.now[shown], answer));
  }
  if (answer.now.empty()) {
    lines.emplace_back("Nothing to do on trays in the coming week.");
  }
  if (shown < answer.now.size()) {
    lines.push_back(fmt::format("And {} more by {}: nightsow plan --work",
                                answer.now.size() - shown,
                                day_text(answer.to, answer.today)));
  }
  lines.insert(lines.end(), behind.begin(), behind.end());
  if (answer.next) {
    lines.push_back(entry_line("Next, ", *answer.next, answer));
  }
  return fmt::format("{}\n", fmt::join(lines, "\n"));
}

} // namespace nightsow::planner
