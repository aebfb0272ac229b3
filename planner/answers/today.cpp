#include "planner/answers/today.hpp"

#include "climate/base/celsius.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/plan.hpp"
#include "planner/model/bench_seasons.hpp"
#include "planner/model/seed_place.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>

namespace nightsow::planner {

namespace {

struct Extreme {
  Date on{};
  double air_c = 0.0; ///< as it is, so that it is compared before it is rounded
};

bool is_worse(WeatherAlarm::Kind kind, double air_c, double than_c) {
  return kind == WeatherAlarm::Kind::frost ? air_c < than_c : air_c > than_c;
}

// The coldest or hottest of so many days from `from` on; empty when none is known.
std::optional<Extreme> extreme(const std::vector<float>& air_c,
                               Date from,
                               WeatherAlarm::Kind kind) {
  std::optional<Extreme> found;
  for (std::size_t index = 0; index < air_c.size(); ++index) {
    const auto value = static_cast<double>(air_c[index]);
    if (!std::isnan(value) && (!found || is_worse(kind, value, found->air_c))) {
      found = Extreme{from + Days{static_cast<int>(index)}, value};
    }
  }
  return found;
}

std::optional<WeatherAlarm> alarm(const climate::BenchAir& bench,
                                  WeatherAlarm::Kind kind,
                                  double limit_c,
                                  Date today) {
  const bool frost = kind == WeatherAlarm::Kind::frost;
  const auto look = [&](const climate::DailySeries& series, Date from, int count) {
    return extreme(
        frost ? series.nights_from(from, count) : series.days_from(from, count), from, kind);
  };
  std::optional<Extreme> found = look(bench.forecast, today, alarm_days_ahead);
  const bool forecast = found.has_value();
  if (!found) {
    found = look(bench.air, today - Days{alarm_days_back}, alarm_days_back + 1);
  }
  const bool reached =
      found && (frost ? at_or_under(found->air_c, limit_c) : at_or_over(found->air_c, limit_c));
  if (!reached) {
    return std::nullopt;
  }
  return WeatherAlarm{kind, bench.bench, found->on, rounded_tenth(found->air_c), limit_c, forecast};
}

// The lowest heat that a tray on the bench is not to be wetted before.
double heat_limit_c(const std::vector<Lot>& lots, const std::string& bench) {
  std::optional<double> limit_c;
  for (const Lot& lot : lots) {
    const auto& when = lot.first_water.when;
    if (lot.bench == bench && when && when->no_day_over_c) {
      limit_c = std::min(limit_c.value_or(*when->no_day_over_c), *when->no_day_over_c);
    }
  }
  return limit_c.value_or(heat_alarm_c);
}

std::vector<WeatherAlarm> alarms_of(const LoadedGarden& garden, const std::vector<Lot>& lots) {
  const StationClimate station = station_climate(garden);
  std::vector<WeatherAlarm> alarms;
  for (const auto kind : {WeatherAlarm::Kind::frost, WeatherAlarm::Kind::heat}) {
    for (const Bench& bench : garden.garden.benches) {
      const bool frost = kind == WeatherAlarm::Kind::frost;
      if (bench.chilled || (frost && frost_care_of(bench) == climate::FrostCare::in)) {
        continue;
      }
      const double limit_c = frost ? frost_alarm_c : heat_limit_c(lots, bench.name);
      if (auto found = alarm(bench_air(garden, station, bench), kind, limit_c, garden.today)) {
        alarms.push_back(std::move(*found));
      }
    }
  }
  return alarms;
}

// What readings leave open is not watered, nor warmed.
bool waters(TaskKind kind) {
  return kind == TaskKind::first_water || kind == TaskKind::mat_on ||
         kind == TaskKind::water_by_need;
}

// What is an entry of the calendar may have tasks on several days. Requires: tasks by date.
std::vector<DiaryEntry> by_day(const DiaryEntry& entry) {
  std::vector<DiaryEntry> days;
  for (const Task& task : entry.tasks) {
    if (days.empty() || days.back().on != task.on) {
      days.push_back(entry);
      days.back().on = task.on;
      days.back().tasks.clear();
    }
    days.back().tasks.push_back(task);
  }
  return days;
}

bool left_open(const std::vector<Lot>& lots, const std::string& id) {
  return std::any_of(lots.begin(), lots.end(), [&](const Lot& lot) {
    return lot.id == id && lot.verdict == Verdict::unknown;
  });
}

} // namespace

TodayAnswer today(const LoadedGarden& garden, const PlanRequest& request) {
  PlanAnswer season = plan(garden, request);
  TodayAnswer answer;
  answer.garden = season.garden;
  answer.today = garden.today;
  answer.to = garden.today + Days{coming_days};
  for (const Reason& warning : season.warnings) {
    if (warning.code == ReasonCode::readings_stale ||
        warning.code == ReasonCode::readings_suspect) {
      answer.warnings.push_back(warning);
    }
  }
  for (const CarriedPot& pot : season.carried) {
    for (const Reason& reason : pot.reasons) {
      if (reason.code == ReasonCode::behind_expected) {
        answer.behind.push_back({pot.sowing, pot.taxon, reason});
      }
    }
  }
  answer.lots = std::move(season.lots);
  for (const DiaryEntry& entry : season.diary) {
    DiaryEntry due = entry;
    std::erase_if(due.tasks, [&](const Task& task) {
      return task.done_on || task.on > answer.to ||
             (waters(task.kind) && left_open(answer.lots, task.lot));
    });
    for (DiaryEntry& of_a_day : by_day(due)) {
      answer.now.push_back(std::move(of_a_day));
    }
    DiaryEntry later = entry;
    std::erase_if(later.tasks,
                  [&](const Task& task) { return task.done_on || task.on <= answer.to; });
    if (!later.tasks.empty() && (!answer.next || later.tasks.front().on < answer.next->on)) {
      answer.next = by_day(later).front();
    }
  }
  std::stable_sort(answer.now.begin(), answer.now.end(), [](const auto& a, const auto& b) {
    return a.on < b.on;
  });
  answer.alarms = alarms_of(garden, answer.lots);
  return answer;
}

} // namespace nightsow::planner
