#include "planner/answers/free_days.hpp"

#include "planner/answers/expectation.hpp"
#include "planner/answers/figures.hpp"
#include "planner/model/assign.hpp"
#include "planner/model/sowing_days.hpp"
#include "planner/model/usual_looks.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <string>
#include <utility>

namespace nightsow::planner {

namespace {

// Free days looked at before the day of first water, that day included, and after it.
constexpr int days_before = 16;
constexpr int days_after = 8;

// Where nothing is expected or known a sowing still counts for something.
constexpr double least_value = 0.1;
constexpr double unknown_value = 1.0;

// Of two days worth the same the nearer to first water is taken: a pot sown dry stands in the way.
constexpr double day_early_costs = 1e-6;

struct Line {
  Sowing* sowing = nullptr;
  Date water{};
};

double value_on(const Sowing& sowing, int days_late) {
  if (!sowing.expected) {
    return unknown_value / (1.0 + 0.01 * std::max(0, days_late));
  }
  const double value = std::max(least_value, sowing.expected->plants.mean);
  if (days_late <= 0) {
    return value * (1.0 + day_early_costs * days_late);
  }
  const double kept = 1.0 - sowing.expected->week_costs.value_or(0.0);
  return std::max(least_value / 10.0, value * std::pow(kept, days_late / 7.0)) /
         (1.0 + day_early_costs * days_late);
}

DayChoice choice_on(const Sowing& sowing, Date day, Date water, Date today) {
  DayChoice choice;
  choice.day = days_between(today, day);
  choice.value = value_on(sowing, days_between(water, day));
  if (sowing.work.on_mat) {
    choice.mat_from = days_between(today, std::max(day, water));
    choice.mat_until =
        choice.mat_from + sowing.how.main_look_days.value_or(usual_main_look_days) - 1;
  }
  return choice;
}

std::vector<DayChoice> choices_of(const Garden& garden, const Line& line, Date today) {
  std::vector<DayChoice> choices;
  int found = 0;
  const Date from = line.sowing->in_hand_from.value_or(today);
  for (Date day = line.water; day >= from && found < days_before; day -= Days{1}) {
    if (is_sowing_day(garden, day)) {
      choices.push_back(choice_on(*line.sowing, day, line.water, today));
      ++found;
    }
  }
  const Date last =
      line.sowing->first_water.no_later_than.value_or(line.water + Days{sowing_days_searched});
  found = 0;
  Date day = std::max(today, line.water + Days{1});
  for (; day <= last && found < days_after; day += Days{1}) {
    if (is_sowing_day(garden, day)) {
      choices.push_back(choice_on(*line.sowing, day, line.water, today));
      ++found;
    }
  }
  return choices;
}

SowingToLay sowing_to_lay(const Garden& garden, const Line& line, Date today) {
  SowingToLay sowing;
  sowing.choices = choices_of(garden, line, today);
  sowing.pots = line.sowing->how.pots.value_or(1);
  const auto bench = std::find_if(garden.benches.begin(),
                                  garden.benches.end(),
                                  [&](const Bench& one) { return one.name == line.sowing->bench; });
  if (bench != garden.benches.end()) {
    sowing.bench = static_cast<int>(bench - garden.benches.begin());
  }
  const std::optional<HeatMat> wanted =
      line.sowing->work.on_mat ? mat_for(garden, line.sowing->bench) : std::nullopt;
  if (wanted) {
    const auto mat = std::find_if(garden.mats.begin(), garden.mats.end(), [&](const HeatMat& one) {
      return one.name == wanted->name && one.bench == wanted->bench;
    });
    sowing.mat = static_cast<int>(mat - garden.mats.begin());
  }
  return sowing;
}

LayingLimits limits_of(const Garden& garden) {
  LayingLimits limits;
  limits.pots_a_day = garden.pots_per_day;
  std::transform(garden.benches.begin(),
                 garden.benches.end(),
                 std::back_inserter(limits.bench_places),
                 [](const Bench& bench) { return bench.pots; });
  std::transform(garden.mats.begin(),
                 garden.mats.end(),
                 std::back_inserter(limits.mat_places),
                 [](const HeatMat& mat) { return mat.pots; });
  return limits;
}

Reason way_out(const Garden& garden, const MissingPlaces& missing, int left_over, Date today) {
  const auto which = static_cast<std::size_t>(missing.which);
  std::vector<NamedValue> values{{"sowings", left_over}, {"pots", missing.pots}};
  switch (missing.limit) {
  case MissingPlaces::Limit::bench:
    values.push_back({"bench", garden.benches.at(which).name});
    return {ReasonCode::bench_full, std::move(values)};
  case MissingPlaces::Limit::mat:
    if (const std::string& bench = garden.mats.at(which).bench; !bench.empty()) {
      values.push_back({"bench", bench});
    }
    return {ReasonCode::mat_full, std::move(values)};
  case MissingPlaces::Limit::pots_a_day:
    break;
  }
  values.push_back({"on", today + Days{missing.which}});
  return {ReasonCode::pots_a_day_short, std::move(values)};
}

std::vector<Line> lines_of(PlanAnswer& answer) {
  std::vector<Line> lines;
  for (Sowing& sowing : answer.sowings) {
    const std::optional<Date> water =
        day_of_water(sowing.verdict, sowing.first_water, answer.today);
    if (sowing.sow_on && water) {
      lines.push_back({&sowing, *water});
    }
  }
  // By packet, so that their order in the file changes nothing.
  std::sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) {
    return a.sowing->packet < b.sowing->packet;
  });
  return lines;
}

} // namespace

void lay_on_free_days(const LoadedGarden& garden, PlanAnswer& answer) {
  const Date today = answer.today;
  std::vector<Line> lines = lines_of(answer);
  std::vector<SowingToLay> sowings;
  sowings.reserve(lines.size());
  for (const Line& line : lines) {
    sowings.push_back(sowing_to_lay(garden.garden, line, today));
  }
  if (lines.empty()) {
    return;
  }
  const Laid laid = lay(sowings, limits_of(garden.garden));
  FreeDaysAnswer free_days;
  for (std::size_t at = 0; at < lines.size(); ++at) {
    // What has no free day in time keeps the day that its own line found.
    if (sowings[at].choices.empty()) {
      continue;
    }
    const std::optional<int> day = laid.days[at];
    lines[at].sowing->sow_on = day ? std::optional{today + Days{*day}} : std::nullopt;
    ++free_days.sowings;
    if (!day) {
      ++free_days.left_over;
      free_days.packets_left_over.push_back(lines[at].sowing->packet);
    }
  }
  free_days.value = rounded_tenth(laid.value);
  free_days.bound = rounded_tenth(laid.bound);
  free_days.gap = rounded_share(laid.gap);
  for (const MissingPlaces& missing : laid.missing) {
    answer.warnings.push_back(way_out(garden.garden, missing, free_days.left_over, today));
  }
  answer.free_days = free_days;
}

} // namespace nightsow::planner
