#include "planner/answers/plan.hpp"

#include "planner/answers/amounts.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/free_days.hpp"
#include "planner/answers/lots.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/answers/plan_line.hpp"
#include "planner/answers/tasks.hpp"

#include <algorithm>
#include <cstddef>
#include <future>
#include <map>
#include <optional>
#include <string>
#include <thread>
#include <tuple>
#include <utility>
#include <variant>
#include <vector>

namespace nightsow::planner {

namespace {

// A thread reckons the courses of the benches anew; fewer packets do not pay for it.
constexpr std::size_t worth_a_second_thread = 16;

struct Lines {
  std::vector<Sowing> sowings;
  std::vector<NotNow> not_now;
  int passed = 0;
};

bool wanted(PlanRequest::Only only, const std::string& start) {
  switch (only) {
  case PlanRequest::Only::cool:
    return start != "hot";
  case PlanRequest::Only::hot:
    return start == "hot";
  case PlanRequest::Only::all:
    break;
  }
  return true;
}

// What loses most by waiting first; then what is due first. The id makes the order independent of
// that of the packets.
void sort_lines(Lines& lines) {
  const Date far = Date::max();
  std::sort(lines.sowings.begin(), lines.sowings.end(), [&](const Sowing& a, const Sowing& b) {
    const auto key = [&](const Sowing& line) {
      return std::tuple{
          -line.seed.lost_by_waiting, line.first_water.expected.p50.value_or(far), line.packet};
    };
    return key(a) < key(b);
  });
  std::sort(lines.not_now.begin(), lines.not_now.end(), [&](const NotNow& a, const NotNow& b) {
    return std::tuple{a.when.value_or(far), a.packet} < std::tuple{b.when.value_or(far), b.packet};
  });
}

// The frost that single lines warn of, once a bench.
void add_frost_warnings(const std::vector<Sowing>& sowings, std::vector<Reason>& warnings) {
  std::map<std::string, std::pair<ReasonValue, int>> benches;
  for (const Sowing& sowing : sowings) {
    for (const Reason& risk : sowing.risks) {
      if (risk.code == ReasonCode::frost_ahead) {
        auto& [coldest_c, kinds] = benches[sowing.bench];
        coldest_c = risk.values.front().value;
        ++kinds;
      }
    }
  }
  for (const auto& [bench, frost] : benches) {
    warnings.push_back({ReasonCode::frost_on_bench,
                        {{"coldest_c", frost.first}, {"bench", bench}, {"kinds", frost.second}}});
  }
}

// Of every `step`th packet, from the one at `first` on.
std::vector<PlanLine> some_lines(const LoadedGarden& garden,
                                 std::size_t first,
                                 std::size_t step,
                                 BenchSeasons& seasons,
                                 const std::optional<climate::Season>& season) {
  std::vector<PlanLine> lines;
  for (std::size_t i = first; i < garden.packets.size(); i += step) {
    lines.push_back(plan_line(garden, garden.packets[i], seasons, season));
  }
  return lines;
}

// In the order of the packets. Each line follows from its packet alone, so that two threads with
// bench seasons of their own give the same lines as one.
std::vector<PlanLine> all_lines(const LoadedGarden& garden,
                                BenchSeasons& seasons,
                                const std::optional<climate::Season>& season) {
  if (garden.packets.size() < worth_a_second_thread || std::thread::hardware_concurrency() < 2) {
    return some_lines(garden, 0, 1, seasons, season);
  }
  auto others = std::async(std::launch::async, [&] {
    BenchSeasons own{garden};
    return some_lines(garden, 1, 2, own, season);
  });
  std::vector<PlanLine> even = some_lines(garden, 0, 2, seasons, season);
  std::vector<PlanLine> odd = others.get();
  std::vector<PlanLine> lines;
  for (std::size_t i = 0; i < even.size(); ++i) {
    lines.push_back(std::move(even[i]));
    if (i < odd.size()) {
      lines.push_back(std::move(odd[i]));
    }
  }
  return lines;
}

Lines lines_of(const LoadedGarden& garden,
               const PlanRequest& request,
               BenchSeasons& seasons,
               const std::optional<climate::Season>& season) {
  Lines lines;
  for (PlanLine& line : all_lines(garden, seasons, season)) {
    if (!std::visit([&](const auto& place) { return wanted(request.only, place.start); },
                    line.place)) {
      continue;
    }
    lines.passed += line.passed ? 1 : 0;
    if (auto* sowing = std::get_if<Sowing>(&line.place)) {
      lines.sowings.push_back(std::move(*sowing));
    } else {
      lines.not_now.push_back(std::move(std::get<NotNow>(line.place)));
    }
  }
  sort_lines(lines);
  return lines;
}

} // namespace

PlanAnswer plan(const LoadedGarden& garden, const PlanRequest& request) {
  BenchSeasons seasons{garden};
  const StationClimate& station = seasons.station();
  std::optional<climate::Season> season = chosen_season(station, garden.today, request.season);
  if (season) {
    require_past_season(garden, *season, usable_seasons(station, season));
  }
  Lines lines = lines_of(garden, request, seasons, season);
  const bool over = season && season->next_planning_begins <= garden.today;

  PlanAnswer answer;
  answer.garden = garden_head(garden.garden);
  answer.today = garden.today;
  std::optional<Reason> season_over;
  if (over || (season && lines.sowings.empty() && lines.passed > 0)) {
    const climate::Season next =
        climate::season_after(*station.turning.phases, *season, garden.today);
    season_over = Reason{ReasonCode::season_over, {{"season", season->name}, {"next", next.name}}};
    answer.preview = true;
    season = next;
    lines = lines_of(garden, request, seasons, season);
  }
  const int seasons_behind = usable_seasons(station, season);
  answer.readings = readings_head(garden, seasons_behind);
  answer.warnings = warnings_of(garden, station, seasons_behind);
  if (season_over) {
    answer.warnings.push_back(*season_over);
  }
  if (garden.packets.empty()) {
    answer.warnings.push_back({ReasonCode::no_packets, {}});
  }
  answer.season = season ? season->name : year_of(garden.today);
  if (season) {
    answer.phases = phases_head(station, *season);
  }
  answer.sowings = std::move(lines.sowings);
  add_amounts(garden, answer.sowings);
  lay_on_free_days(garden, answer);
  answer.shopping = shopping_for(garden, answer.sowings);
  add_frost_warnings(answer.sowings, answer.warnings);
  answer.not_now = std::move(lines.not_now);
  answer.lots = lots_of(answer.sowings, garden.today);
  answer.tasks = tasks_of(answer.lots, answer.sowings, {garden.today, garden.garden.away});
  answer.diary = diary_of(answer.lots, answer.tasks);
  return answer;
}

} // namespace nightsow::planner
