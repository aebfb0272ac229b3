#include "planner/answers/lots.hpp"
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
  case TaskKind::sow_wet:
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
  case TaskKind::rest_moist:
  case TaskKind::keep_watering:
  case TaskKind::gather_seed:
  case TaskKind::carry_on:
  case TaskKind::carry_over:
    return TaskKind::rest;
  case TaskKind::shade:
    return task.number == 1 ? TaskKind::first_look : TaskKind::wake;
  case TaskKind::prick_out:
    return task.number == 1 ? TaskKind::main_look : TaskKind::wake;
  case TaskKind::wake:
  case TaskKind::leave:
  case TaskKind::pot_on:
    break;
  }
  return TaskKind::wake;
}

// The day on which each tray is sown for the first, second … time.
using SownOn = std::map<std::pair<std::string_view, int>, Date>;

SownOn sowing_days(const std::vector<Task>& tasks) {
  SownOn days;
  for (const Task& task : tasks) {
    if (is_sowing(task.kind)) {
      days[{task.lot, task.number}] = task.on;
    }
  }
  return days;
}

/// Which tasks are one entry: those of the same kind of work and the same `of`.
struct Shared {
  std::string of;
  TaskKind kind{};
  int number = 1;

  auto operator<=>(const Shared&) const = default;
};

// 20260411 of 11 April 2026.
int day_number(Date day) {
  const date::year_month_day parts{day};
  return (static_cast<int>(parts.year()) * 100 +
          static_cast<int>(static_cast<unsigned>(parts.month()))) *
             100 +
         static_cast<int>(static_cast<unsigned>(parts.day()));
}

// A day of sowing is one for all trays. Rest and waking come to all of a bench at about the same
// time; the rest of the work follows the day on which a group is watered.
Shared shared_of(const Task& task, const Lot& lot, const SownOn& sown_on) {
  const TaskKind kind = main_kind(task);
  if (kind == TaskKind::sow_dry) {
    return {"sowing", kind, day_number(sown_on.at({task.lot, task.number}))};
  }
  if (kind == TaskKind::rest || kind == TaskKind::wake) {
    return {bench_and_start(lot), kind};
  }
  return {lot.group, kind};
}

Date first_open_day(const DiaryEntry& entry) {
  return std::find_if(entry.tasks.begin(),
                      entry.tasks.end(),
                      [](const Task& task) { return !task.done_on.has_value(); })
      ->on;
}

// Open work says when an entry is; where all is done, what was done last.
Date day_of(const DiaryEntry& entry) {
  std::optional<Date> open;
  std::optional<Date> done;
  for (const Task& task : entry.tasks) {
    const bool sown = is_sowing(entry.kind) && is_sowing(task.kind);
    if (task.kind != entry.kind && !sown && entry.kind != TaskKind::rest) {
      continue;
    }
    if (task.done_on) {
      done = std::max(done.value_or(task.on), task.on);
    } else {
      open = std::min(open.value_or(task.on), task.on);
    }
  }
  const Date last = entry.tasks.back().on;
  if (entry.done()) {
    return done.value_or(last);
  }
  // Its main kind may be done, and what goes with it not.
  return open ? *open : first_open_day(entry);
}

} // namespace

bool DiaryEntry::done() const {
  return std::all_of(
      tasks.begin(), tasks.end(), [](const Task& task) { return task.done_on.has_value(); });
}

std::optional<Date> DiaryEntry::overdue_since() const {
  std::optional<Date> since;
  for (const Task& task : tasks) {
    if (task.overdue_since) {
      since = std::min(since.value_or(*task.overdue_since), *task.overdue_since);
    }
  }
  return since;
}

std::vector<DiaryEntry> diary_of(const std::vector<Lot>& lots, const std::vector<Task>& tasks) {
  std::map<std::string_view, const Lot*> by_id;
  for (const Lot& lot : lots) {
    by_id[lot.id] = &lot;
  }
  const SownOn sown_on = sowing_days(tasks);
  std::map<Shared, DiaryEntry> entries;
  for (const Task& task : tasks) {
    const Shared shared = shared_of(task, *by_id.at(task.lot), sown_on);
    DiaryEntry& entry = entries[shared];
    if (task.kind == TaskKind::get_ready) {
      entry.alarm_days = days_to_get_ready;
    }
    entry.group = shared.of;
    entry.kind = shared.kind;
    entry.number = shared.number;
    entry.tasks.push_back(task);
  }
  std::vector<DiaryEntry> diary;
  diary.reserve(entries.size());
  for (auto& [key, entry] : entries) {
    entry.on = day_of(entry);
    diary.push_back(std::move(entry));
  }
  std::sort(diary.begin(), diary.end(), [](const DiaryEntry& a, const DiaryEntry& b) {
    return std::tuple{a.on, a.kind, a.group} < std::tuple{b.on, b.kind, b.group};
  });
  return diary;
}

} // namespace nightsow::planner
