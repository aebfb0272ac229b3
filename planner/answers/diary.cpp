#include "planner/answers/tasks.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace nightsow::planner {

namespace {

// With which task a calendar shows this one.
TaskKind main_kind(const Task& task) {
  switch (task.kind) {
  case TaskKind::get_ready:
  case TaskKind::sow_dry:
    return TaskKind::sow_dry;
  case TaskKind::first_water:
  case TaskKind::mat_on:
    return TaskKind::first_water;
  case TaskKind::water_by_need:
    return task.number == 1 ? TaskKind::first_water : TaskKind::main_look;
  case TaskKind::first_look:
  case TaskKind::bag_off:
    return TaskKind::first_look;
  case TaskKind::main_look:
  case TaskKind::mat_off:
    return TaskKind::main_look;
  case TaskKind::dry_rest:
  case TaskKind::re_wet:
  case TaskKind::rest:
  case TaskKind::carry_on:
  case TaskKind::carry_over:
    return TaskKind::rest;
  case TaskKind::shade:
    return task.number == 1 ? TaskKind::first_look : TaskKind::wake;
  case TaskKind::wake:
  case TaskKind::prick_out:
  case TaskKind::leave:
  case TaskKind::pot_on:
    break;
  }
  return TaskKind::wake;
}

// The day on which each tray is sown for the first, second … time.
std::map<std::pair<std::string_view, int>, Date> sowing_days(const std::vector<Task>& tasks) {
  std::map<std::pair<std::string_view, int>, Date> days;
  for (const Task& task : tasks) {
    if (task.kind == TaskKind::sow_dry) {
      days[{task.lot, task.number}] = task.on;
    }
  }
  return days;
}

// Entries of a group and kind are numbered by date.
void number(std::vector<DiaryEntry>& diary) {
  std::map<std::pair<std::string_view, TaskKind>, int> last;
  for (DiaryEntry& entry : diary) {
    entry.number = ++last[{entry.group, entry.kind}];
  }
}

} // namespace

std::vector<DiaryEntry> diary_of(const std::vector<Lot>& lots, const std::vector<Task>& tasks) {
  std::map<std::string_view, std::string_view> groups;
  for (const Lot& lot : lots) {
    groups[lot.id] = lot.group;
  }
  const auto sown_on = sowing_days(tasks);
  std::map<std::tuple<std::string_view, TaskKind, Date>, DiaryEntry> entries;
  for (const Task& task : tasks) {
    const TaskKind kind = main_kind(task);
    const std::string_view group = groups.at(task.lot);
    const Date day = kind == TaskKind::sow_dry ? sown_on.at({task.lot, task.number}) : Date{};
    DiaryEntry& entry = entries[{group, kind, day}];
    const bool leads = task.kind == kind || kind == TaskKind::rest;
    if (leads && (entry.on == Date{} || task.on < entry.on)) {
      entry.on = task.on;
    }
    if (task.kind == TaskKind::get_ready) {
      entry.alarm_days = days_to_get_ready;
    }
    entry.group = group;
    entry.kind = kind;
    entry.tasks.push_back(task);
  }
  std::vector<DiaryEntry> diary;
  diary.reserve(entries.size());
  for (auto& [key, entry] : entries) {
    diary.push_back(std::move(entry));
  }
  std::sort(diary.begin(), diary.end(), [](const DiaryEntry& a, const DiaryEntry& b) {
    return std::tuple{a.on, a.kind, a.group} < std::tuple{b.on, b.kind, b.group};
  });
  number(diary);
  return diary;
}

} // namespace nightsow::planner
