#include "planner/answers/whatif.hpp"

#include "planner/answers/figures.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <string>
#include <variant>

namespace nightsow::planner {

namespace {

ChangeAnswer change_answer(const Change& change) {
  if (const auto* warmer = std::get_if<Warmer>(&change)) {
    return {"warmer", rounded_tenth(warmer->by.kelvin())};
  }
  return {"mirror", std::nullopt};
}

// Where each packet stands in a plan, and how it is written there.
struct Placed {
  std::string taxon;
  WhatIfSide side;
};

std::map<std::string, Placed> places_in(const PlanAnswer& plan) {
  std::map<std::string, Placed> places;
  for (const Sowing& line : plan.sowings) {
    WhatIfSide side{"sowings",
                    std::string(name_of(line.verdict)),
                    line.gate ? std::optional{line.gate->binds} : std::nullopt,
                    line.first_water.not_before,
                    line.first_water.expected,
                    line.first_water.no_later_than,
                    line.expected ? std::optional{line.expected->plants.mean} : std::nullopt};
    places[line.packet] = {line.taxon, side};
  }
  for (const NotNow& line : plan.not_now) {
    WhatIfSide side;
    side.list = "not_now";
    side.expected = {std::nullopt, line.when, std::nullopt, line.when ? 0.0 : 1.0};
    places[line.packet] = {line.taxon, side};
  }
  return places;
}

std::optional<int> moved_days(const WhatIfSide& before,
                              Date today_before,
                              const WhatIfSide& after,
                              Date today_after) {
  if (!before.expected.p50 || !after.expected.p50) {
    return std::nullopt;
  }
  return days_between(today_after, *after.expected.p50) -
         days_between(today_before, *before.expected.p50);
}

std::optional<double> plants_change(const WhatIfSide& before, const WhatIfSide& after) {
  return before.plants && after.plants
             ? std::optional{rounded_tenth(*after.plants - *before.plants)}
             : std::nullopt;
}

bool other_plants(const WhatIfLine& line) {
  constexpr double worth_saying = 1.0;
  constexpr double worth_saying_share = 0.05;
  const double change = std::abs(line.plants_change.value_or(0.0));
  return change >= worth_saying && change >= worth_saying_share * *line.before.plants;
}

// 183 days are not quite half an orbit, so a mirrored date may move by one.
int tolerated_days(const WhatIfRequest& request) {
  return std::any_of(request.changes.begin(),
                     request.changes.end(),
                     [](const Change& change) { return std::holds_alternative<Mirror>(change); })
             ? 1
             : 0;
}

bool differs(const WhatIfLine& line, int tolerated) {
  // That most seasons never bring it any more is a difference without a date.
  constexpr double never_difference = 0.05;
  const Spread& before = line.before.expected;
  const Spread& after = line.after.expected;
  return before.p50.has_value() != after.p50.has_value() ||
         std::abs(before.never - after.never) >= never_difference ||
         line.before.list != line.after.list || line.before.verdict != line.after.verdict ||
         line.before.binds != line.after.binds ||
         std::abs(line.moved_days.value_or(0)) > tolerated || other_plants(line);
}

// Packets that change side first, then by how far they move, then by id.
void sort_by_difference(std::vector<WhatIfLine>& lines) {
  const auto key = [](const WhatIfLine& line) {
    const bool same_list = line.before.list == line.after.list;
    const int moved = std::abs(line.moved_days.value_or(0));
    return std::tuple{same_list, -moved, line.packet};
  };
  std::sort(lines.begin(), lines.end(), [&](const WhatIfLine& a, const WhatIfLine& b) {
    return key(a) < key(b);
  });
}

} // namespace

WhatIfAnswer whatif(const LoadedGarden& garden, const WhatIfRequest& request) {
  LoadedGarden changed = garden;
  WhatIfAnswer answer;
  for (const Change& change : request.changes) {
    changed = apply(change, std::move(changed));
    answer.changes.push_back(change_answer(change));
  }
  const PlanAnswer before = plan(garden, request.plan);
  PlanAnswer after = plan(changed, request.plan);
  answer.garden = before.garden;
  answer.today_before = before.today;
  answer.today_after = after.today;
  answer.season_before = before.season;
  answer.season_after = after.season;
  answer.warnings = std::move(after.warnings);
  std::map<std::string, Placed> places_after = places_in(after);
  for (const auto& [packet, placed] : places_in(before)) {
    const WhatIfSide& side_after = places_after[packet].side;
    answer.lines.push_back({packet,
                            placed.taxon,
                            placed.side,
                            side_after,
                            moved_days(placed.side, before.today, side_after, after.today),
                            false,
                            plants_change(placed.side, side_after)});
  }
  for (WhatIfLine& line : answer.lines) {
    line.differs = differs(line, tolerated_days(request));
  }
  sort_by_difference(answer.lines);
  return answer;
}

} // namespace nightsow::planner
