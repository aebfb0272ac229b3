#include "planner/answers/plan.hpp"

#include "planner/answers/amounts.hpp"
#include "planner/answers/carried.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/free_days.hpp"
#include "planner/answers/lagging_pots.hpp"
#include "planner/answers/lots.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/answers/plan_line.hpp"
#include "planner/answers/recorded_work.hpp"
#include "planner/answers/since_saved.hpp"
#include "planner/answers/tasks.hpp"
#include "planner/model/two_threads.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <variant>
#include <vector>

namespace nightsow::planner {

namespace {

// Of fewer packets most of the work is the courses, which are made on two threads already.
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

// Null where none was saved of that season.
const SavedPlan* saved_of(const PlanRequest& request, int season) {
  const auto found = std::find_if(request.saved.begin(),
                                  request.saved.end(),
                                  [&](const SavedPlan& plan) { return plan.season == season; });
  return found == request.saved.end() ? nullptr : &*found;
}

const SavedLine* saved_line(const SavedPlan* saved, const std::string& packet) {
  if (saved == nullptr) {
    return nullptr;
  }
  const auto found = std::find_if(saved->lines.begin(),
                                  saved->lines.end(),
                                  [&](const SavedLine& line) { return line.packet == packet; });
  return found == saved->lines.end() ? nullptr : &*found;
}

// In the order of the packets. Each line follows from its packet alone.
std::vector<PlanLine> all_lines(const LoadedGarden& garden,
                                BenchSeasons& seasons,
                                const std::optional<climate::Season>& season,
                                const SavedPlan* saved) {
  std::vector<PlanLine> lines(garden.packets.size());
  on_two_threads(lines.size(), worth_a_second_thread, [&](std::size_t i) {
    const Packet& packet = garden.packets[i];
    lines[i] = plan_line(garden, packet, seasons, season, saved_line(saved, packet.id));
  });
  return lines;
}

Lines lines_of(const LoadedGarden& garden,
               const PlanRequest& request,
               BenchSeasons& seasons,
               const std::optional<climate::Season>& season) {
  const SavedPlan* saved = season ? saved_of(request, season->name) : nullptr;
  Lines lines;
  for (PlanLine& line : all_lines(garden, seasons, season, saved)) {
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

// Pots that have been sown, and their work beside that of the sowings. Once the windows of a season
// have passed, packets are planned for the next one, while pots still grow in it.
void add_carried(const LoadedGarden& garden,
                 BenchSeasons& seasons,
                 const std::optional<climate::Season>& season,
                 PlanAnswer& answer) {
  answer.carried = carried_pots(garden, seasons, season);
  if (season) {
    tell_lagging(garden, seasons, answer.carried);
  }
  const std::vector<Lot> lots = carried_lots(answer.carried, garden.today);
  const std::vector<Task> tasks =
      carried_tasks(lots, answer.carried, garden.today, garden.garden.away);
  answer.lots.insert(answer.lots.end(), lots.begin(), lots.end());
  answer.tasks.insert(answer.tasks.end(), tasks.begin(), tasks.end());
  std::stable_sort(answer.tasks.begin(), answer.tasks.end(), [](const Task& a, const Task& b) {
    return std::tuple{a.on, a.kind, a.lot} < std::tuple{b.on, b.kind, b.lot};
  });
}

bool all_asked(const PlanRequest& request) {
  return request.only == PlanRequest::Only::all;
}

// The work on what is still to be sown.
void add_work(const LoadedGarden& garden, PlanAnswer& answer) {
  const Presence presence{garden.today, garden.garden.away};
  answer.lots = lots_of(answer.sowings, presence);
  tell_trays(answer.lots, answer.sowings);
  answer.no_day = without_day(answer.sowings, garden.today);
  answer.tasks = tasks_of(answer.lots, answer.sowings, presence);
}

// Draws the work together, of which what was saved tells what is overdue.
void compare_with_saved(const LoadedGarden& garden,
                        const PlanRequest& request,
                        PlanAnswer& answer) {
  const SavedPlan* saved = saved_of(request, answer.season);
  if (saved != nullptr) {
    mark_overdue_sowings(*saved, garden.records, garden.today, answer.tasks);
  }
  answer.diary = diary_of(answer.lots, answer.tasks);
  if (saved != nullptr) {
    answer.saves = saved->saves;
    if (all_asked(request)) {
      answer.since_saved = since_saved(*saved, answer, garden);
    }
  }
}

} // namespace

PlanAnswer plan(const LoadedGarden& garden, const PlanRequest& request) {
  BenchSeasons seasons{garden};
  const StationClimate& station = seasons.station();
  std::optional<climate::Season> season = chosen_season(station, garden.today, request.season);
  if (season) {
    require_season_told(garden, *season);
    require_past_season(garden, *season, usable_seasons(station, season));
  }
  Lines lines = lines_of(garden, request, seasons, season);
  const bool over = season && season->next_planning_begins <= garden.today;
  std::optional<climate::Season> season_of_pots = season;

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
    if (over) {
      season_of_pots = next;
    }
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
  add_work(garden, answer);
  if (all_asked(request) && (!season || garden.today < season->next_planning_begins)) {
    add_carried(garden, seasons, season_of_pots, answer);
  }
  compare_with_saved(garden, request, answer);
  return answer;
}

} // namespace nightsow::planner
