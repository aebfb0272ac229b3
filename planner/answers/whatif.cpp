#include "planner/answers/whatif.hpp"

#include "planner/answers/figures.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <string>
#include <variant>

namespace nightsow::planner {

namespace {

ChangeAnswer answer_of(const Mirror& /*mirror*/) {
  return {"mirror", std::nullopt};
}

ChangeAnswer answer_of(const Warmer& warmer) {
  return {"warmer", rounded_tenth(warmer.by.kelvin())};
}

ChangeAnswer answer_of(const OnBench& bench) {
  return {"bench", std::nullopt, bench.name};
}

ChangeAnswer answer_of(const OtherPackets& packets) {
  return {"packets", std::nullopt, packets.file};
}

ChangeAnswer answer_of(const OneRuleValue& rule) {
  return {"rule", std::nullopt, rule.taxon + '.' + rule.field + '=' + rule.value};
}

ChangeAnswer answer_of(const OtherPlace& other) {
  return {"place", std::nullopt, other.place->garden.name};
}

ChangeAnswer change_answer(const Change& change) {
  return std::visit([](const auto& kind) { return answer_of(kind); }, change);
}

// What changes of the garden, one after the other, and how they are called.
LoadedGarden changed_garden(const LoadedGarden& garden,
                            const std::vector<Change>& changes,
                            std::vector<ChangeAnswer>& told) {
  LoadedGarden changed = garden;
  for (const Change& change : changes) {
    changed = apply(change, std::move(changed));
    told.push_back(change_answer(change));
  }
  return changed;
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
    const bool same_side = side_of(line.before) == side_of(line.after);
    const int moved = std::abs(line.moved_days.value_or(0));
    return std::tuple{same_side, -moved, line.packet};
  };
  std::sort(lines.begin(), lines.end(), [&](const WhatIfLine& a, const WhatIfLine& b) {
    return key(a) < key(b);
  });
}

// Packets of both plans, by id; one that is not in a plan has an empty side there.
std::vector<WhatIfLine> beside_each_other(const PlanAnswer& before, const PlanAnswer& after) {
  const std::map<std::string, Placed> places_before = places_in(before);
  const std::map<std::string, Placed> places_after = places_in(after);
  std::map<std::string, WhatIfLine> lines;
  for (const auto& [packet, placed] : places_before) {
    lines[packet] = {packet, placed.taxon, placed.side, {}, std::nullopt};
  }
  for (const auto& [packet, placed] : places_after) {
    WhatIfLine& line = lines[packet];
    line.packet = packet;
    line.taxon = placed.taxon;
    line.after = placed.side;
  }
  std::vector<WhatIfLine> list;
  for (auto& [packet, line] : lines) {
    line.moved_days = moved_days(line.before, before.today, line.after, after.today);
    line.plants_change = plants_change(line.before, line.after);
    list.push_back(std::move(line));
  }
  return list;
}

WhatIfTotals totals_of(const std::vector<WhatIfLine>& lines) {
  WhatIfTotals totals;
  std::vector<int> moved;
  for (const WhatIfLine& line : lines) {
    const bool in_both = !line.before.list.empty() && !line.after.list.empty();
    totals.change_side += in_both && side_of(line.before) != side_of(line.after) ? 1 : 0;
    if (line.differs && line.moved_days.value_or(0) != 0) {
      moved.push_back(*line.moved_days);
    }
    totals.plants_before += line.before.plants.value_or(0.0);
    totals.plants_after += line.after.plants.value_or(0.0);
  }
  totals.moved = static_cast<int>(moved.size());
  if (!moved.empty()) {
    const auto middle = moved.begin() + static_cast<std::ptrdiff_t>((moved.size() - 1) / 2);
    std::nth_element(moved.begin(), middle, moved.end());
    totals.moved_days = *middle;
  }
  totals.plants_before = rounded_tenth(totals.plants_before);
  totals.plants_after = rounded_tenth(totals.plants_after);
  return totals;
}

SweepRow sweep_row(double by_k, const PlanAnswer& plan) {
  SweepRow row;
  row.warmer_k = by_k;
  for (const auto& [packet, placed] : places_in(plan)) {
    row.lines.push_back({packet, placed.taxon, placed.side});
    const Side side = side_of(placed.side);
    row.now += side == Side::now ? 1 : 0;
    row.later += side == Side::later ? 1 : 0;
    row.unknown += side == Side::unknown ? 1 : 0;
    row.not_here += side == Side::not_here ? 1 : 0;
    row.plants += placed.side.plants.value_or(0.0);
  }
  row.plants = rounded_tenth(row.plants);
  return row;
}

} // namespace

Side side_of(const WhatIfSide& side) {
  if (side.list.empty()) {
    return Side::not_in_hand;
  }
  if (side.list == "not_now") {
    return Side::not_here;
  }
  if (side.verdict == name_of(Verdict::unknown)) {
    return Side::unknown;
  }
  return side.verdict == name_of(Verdict::water_now) ? Side::now : Side::later;
}

std::string_view name_of(Side side) {
  switch (side) {
  case Side::now:
    return "now";
  case Side::later:
    return "later";
  case Side::unknown:
    return "unknown";
  case Side::not_here:
    return "not_here";
  case Side::not_in_hand:
    break;
  }
  return "not_in_hand";
}

WhatIfAnswer whatif(const LoadedGarden& garden, const WhatIfRequest& request) {
  WhatIfAnswer answer;
  const LoadedGarden changed = changed_garden(garden, request.changes, answer.changes);
  const PlanAnswer before = plan(garden, request.plan);
  PlanAnswer after = plan(changed, request.plan);
  answer.garden = before.garden;
  answer.today_before = before.today;
  answer.today_after = after.today;
  answer.season_before = before.season;
  answer.season_after = after.season;
  answer.lines = beside_each_other(before, after);
  answer.warnings = std::move(after.warnings);
  for (WhatIfLine& line : answer.lines) {
    line.differs = differs(line, tolerated_days(request));
  }
  sort_by_difference(answer.lines);
  answer.totals = totals_of(answer.lines);
  return answer;
}

SweepAnswer whatif_sweep(const LoadedGarden& garden,
                         const WhatIfRequest& request,
                         std::span<const double> by_k) {
  SweepAnswer answer;
  const LoadedGarden changed = changed_garden(garden, request.changes, answer.changes);
  for (const double by : by_k) {
    PlanAnswer plan_then = plan(apply(Warmer{CelsiusDelta{by}}, changed), request.plan);
    if (answer.rows.empty()) {
      answer.garden = plan_then.garden;
      answer.today = plan_then.today;
      answer.season = plan_then.season;
      answer.warnings = std::move(plan_then.warnings);
    }
    answer.rows.push_back(sweep_row(by, plan_then));
  }
  return answer;
}

} // namespace nightsow::planner
