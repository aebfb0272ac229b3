#include "planner/answers/review.hpp"

#include "planner/answers/figures.hpp"
#include "planner/answers/known_sowings.hpp"
#include "planner/answers/learned_trials.hpp"
#include "planner/answers/lessons.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/answers/promised.hpp"
#include "planner/model/bench_climate.hpp"
#include "planner/model/count_range.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/usual_looks.hpp"
#include "species-rules/seed_parameters.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr int clearly_early_days = 14;
constexpr double range_holds = 0.8;
constexpr double no_surprise = 0.05;

// In the order of DeathCause.
constexpr std::array<std::string_view, 8> cause_words{
    "unknown", "damping_off", "gnats", "snails", "heat", "dry", "frost", "other"};

std::string word_of(DeathCause cause) {
  return std::string(cause_words.at(static_cast<std::size_t>(cause)));
}

// By then what rested has woken, or will not (common practice, no source).
Date wake_by(const climate::Phases& phases, int season) {
  constexpr Days into_the_limb{45};
  return climate::season_named(phases, season + 1).limb_begins + into_the_limb;
}

int dead_in(const WhatCame& told) {
  int dead = 0;
  for (const auto& [cause, seedlings] : told.dead) {
    dead += seedlings;
  }
  return dead;
}

int chosen(const std::vector<int>& seasons, int present, std::optional<int> asked) {
  if (asked) {
    return *asked;
  }
  int latest = present;
  for (const int season : seasons) {
    latest = season < present ? season : latest;
  }
  return latest;
}

// The day on which nights held for the kind, as it was in the end.
std::optional<int> days_early(const KnownSowing& sowing, BenchSeasons& seasons) {
  const std::optional<climate::NightLimit> limit = night_limit(sowing.rule.rule);
  if (!limit || !sowing.told->first_water || !seasons.station().turning.phases) {
    return std::nullopt;
  }
  const Date water = *sowing.told->first_water;
  const climate::Season season = climate::season_of(*seasons.station().turning.phases, water);
  const std::string& bench = sowing.told->sowing->bench;
  if (seasons.season(bench, season).outlook.members == 0) {
    return std::nullopt;
  }
  const std::optional<Date> holds = seasons.gate(bench, season, *limit).words.holds.p50;
  return holds && *holds > water ? std::optional{days_between(water, *holds)} : std::nullopt;
}

std::string outcome_of(const KnownSowing& sowing, const ReviewLine& line) {
  if (!line.first_water) {
    return "dry";
  }
  if (!line.came) {
    return "not_counted";
  }
  if (!line.promised) {
    return "counted";
  }
  if (*line.came > line.promised->seedlings.p90) {
    return "more";
  }
  if (!sowing.looked_at_to_the_end && *line.came < line.promised->seedlings.p10) {
    return sowing.closed == nullptr ? "too_early" : "closed_early";
  }
  if (*line.came == 0) {
    return line.promised->seedlings.p10 > 0.0 || line.promised->seedlings.mean >= 1.0
               ? "nothing"
               : "as_promised";
  }
  return *line.came < line.promised->seedlings.p10 ? "fewer" : "as_promised";
}

std::string why_of(const ReviewLine& line) {
  if (line.outcome != "nothing" && line.outcome != "fewer") {
    return "";
  }
  if (line.firm + line.soft > 0) {
    return line.soft > line.firm ? "seed_was_dead" : "seed_is_sound";
  }
  return line.days_early.value_or(0) >= clearly_early_days ? "watered_early" : "";
}

// The first day on which what comes is of the season after that one. A pot's next season begins
// when nights cool again, of hot starters as its planning year does: counts of its rest, late as
// they are, still tell of the season before. Its first season is never over before all may be up.
Date next_season_of(const KnownSowing& sowing, const climate::Phases& phases, int season) {
  const climate::Season next = climate::season_named(phases, season + 1);
  const bool hot = start_of(sowing.rule.rule) == species_rules::Start::hot;
  const Date begins = hot ? next.planning_begins : next.limb_begins;
  if (season != sowing.season || !sowing.told->first_water) {
    return begins;
  }
  const int last_look = static_cast<int>(std::lround(
      value_or(sowing.rule.rule.seedling.last_look_days, double{usual_last_look_days})));
  return std::max(begins, *sowing.told->first_water + Days{last_look + 1});
}

// What comes in a later season is told of the season in which it came.
int came_in_season(const KnownSowing& sowing, const std::optional<climate::Phases>& phases) {
  return phases ? sowing.told->came_by(next_season_of(sowing, *phases, sowing.season) - Days{1})
                : sowing.told->came();
}

// Another bench has other nights and days, of which the plan promised nothing.
bool is_promise_of(const SavedLine& line,
                   const RecordedSowing& sown,
                   const std::string& bench,
                   Date water) {
  return line.packet == sown.packet_id && line.bench == bench && line.seedlings && line.plants &&
         line.seeds && std::lround(*line.seeds) == sown.seeds &&
         line.not_before.value_or(water) <= water && line.no_later_than.value_or(water) >= water;
}

/// What was really promised of the sowing, and on which day.
std::optional<std::pair<Promised, Date>> saved_promise(const KnownSowing& sowing,
                                                       const std::vector<SavedPlan>& saved,
                                                       const Garden& garden) {
  const RecordedSowing& sown = *sowing.told->sowing;
  const std::string& bench = bench_named(garden, sown.bench).name;
  if (!sowing.told->first_water || sown.packet_id.empty()) {
    return std::nullopt;
  }
  for (const SavedPlan& plan : saved) {
    for (const SavedLine& line : plan.lines) {
      if (plan.season == sowing.season && plan.on <= sown.on &&
          is_promise_of(line, sown, bench, *sowing.told->first_water)) {
        return std::pair{Promised{{line.seedlings->mean, line.seedlings->p10, line.seedlings->p90},
                                  {line.plants->mean, line.plants->p10, line.plants->p90}},
                         plan.on};
      }
    }
  }
  return std::nullopt;
}

ReviewLine line_of(const KnownSowing& sowing,
                   const std::vector<SavedPlan>& saved,
                   const Garden& garden,
                   Promises& promises,
                   BenchSeasons& seasons) {
  const WhatCame& told = *sowing.told;
  const RecordedSowing& sown = *told.sowing;
  ReviewLine line;
  line.sowing = sown.id;
  line.packet = sown.packet_id;
  line.taxon = sown.taxon;
  line.accepted = sowing.rule.accepted;
  line.bench = sown.bench;
  line.trial = sown.trial;
  line.arm = sown.arm;
  line.on = sown.on;
  line.first_water = told.first_water;
  line.seeds = sown.seeds;
  if (const auto promise = saved_promise(sowing, saved, garden)) {
    line.promised = promise->first;
    line.promised_on = promise->second;
  } else {
    line.promised = promises.of(sowing);
  }
  if (told.counted()) {
    line.came = came_in_season(sowing, seasons.station().turning.phases);
  }
  line.dead = dead_in(told);
  line.back = told.back;
  line.annual = first_rest_of(sowing.rule.rule) == species_rules::FirstRestWay::dies;
  line.evergreen = first_rest_of(sowing.rule.rule) == species_rules::FirstRestWay::none;
  line.firm = told.firm;
  line.soft = told.soft;
  line.days_early = days_early(sowing, seasons);
  if (sowing.closed != nullptr) {
    line.closed_on = sowing.closed->on;
    line.closed_why = name_of(sowing.closed->why);
  }
  line.outcome = outcome_of(sowing, line);
  line.why = why_of(line);
  return line;
}

std::vector<DeathsLine> deaths_of(const std::vector<const KnownSowing*>& sowings) {
  std::map<DeathCause, DeathsLine> by_cause;
  for (const KnownSowing* sowing : sowings) {
    for (const auto& [cause, seedlings] : sowing->told->dead) {
      DeathsLine& line = by_cause[cause];
      line.of = word_of(cause);
      line.seedlings += seedlings;
      ++line.sowings;
    }
  }
  std::vector<DeathsLine> list;
  list.reserve(by_cause.size());
  for (auto& [cause, line] : by_cause) {
    list.push_back(std::move(line));
  }
  std::stable_sort(list.begin(), list.end(), [](const DeathsLine& a, const DeathsLine& b) {
    return a.seedlings > b.seedlings;
  });
  return list;
}

void add_to(RangesHeld& held, const NumberSpread& promised, int came) {
  ++held.told;
  held.below += came < promised.p10 ? 1 : 0;
  held.above += came > promised.p90 ? 1 : 0;
  held.within = held.told - held.below - held.above;
  held.promised = rounded_tenth(held.promised + promised.mean);
  held.came += came;
}

// Ranges with whole ends hold more than they say; so this is on the kind side.
int least_likely(int told) {
  const std::vector<double> chances = beta_binomial(told, range_holds, 0.0);
  double sum = 0.0;
  int least = 0;
  for (const double chance : chances) {
    sum += chance;
    if (sum >= no_surprise) {
      break;
    }
    ++least;
  }
  return least;
}

void add_sums(ReviewAnswer& answer) {
  for (const ReviewLine& line : answer.lines) {
    answer.seeds += line.seeds;
    answer.came += line.came.value_or(0);
    answer.dead += line.dead;
    if (line.back) {
      answer.back = answer.back.value_or(0) + *line.back;
      ++answer.judged;
    }
    const bool open = line.outcome == "too_early" || line.outcome == "closed_early" || !line.came;
    if (line.promised && !open) {
      add_to(answer.seedlings_held, line.promised->seedlings, *line.came);
    }
    if (line.promised && line.back && !line.annual) {
      add_to(answer.plants_held, line.promised->plants, *line.back);
    }
  }
  answer.seedlings_held.least_likely = least_likely(answer.seedlings_held.told);
  answer.plants_held.least_likely = least_likely(answer.plants_held.told);
}

std::vector<CarriedLine> carried_into(const KnownSowings& record,
                                      int season,
                                      const std::optional<climate::Phases>& phases) {
  std::vector<CarriedLine> list;
  if (!phases) {
    return list;
  }
  for (const KnownSowing& sowing : record.sowings) {
    const WhatCame& told = *sowing.told;
    if (sowing.season >= season) {
      continue;
    }
    const Date from = next_season_of(sowing, *phases, season - 1);
    const Date to = next_season_of(sowing, *phases, season);
    const int before = told.came_by(from - Days{1});
    const int by_then = told.came_by(to - Days{1});
    const bool looked = std::any_of(told.looks.begin(), told.looks.end(), [&](const CameBy& look) {
      return look.on >= from && look.on < to;
    });
    // Seedlings looked at after their rest are judged with their own season.
    if (looked && (by_then > before || before == 0)) {
      list.push_back({told.sowing->id,
                      sowing.rule.accepted,
                      told.sowing->on,
                      told.sowing->seeds,
                      before,
                      by_then - before});
    }
  }
  return list;
}

} // namespace

ReviewAnswer review(const GardenFolder& folder,
                    const LoadedGarden& garden,
                    const ReviewRequest& request) {
  BenchSeasons seasons(garden);
  const std::optional<climate::Phases>& phases = seasons.station().turning.phases;
  const KnownSowings record = known_sowings(garden, phases);
  ReviewAnswer answer;
  answer.garden = garden_head(garden.garden);
  answer.today = garden.today;
  answer.seasons = seasons_of(record.sowings);
  answer.unknown = record.unknown;
  const int present =
      phases ? climate::season_planned_on(*phases, garden.today).name : year_of(garden.today);
  answer.season = chosen(answer.seasons, present, request.season);
  answer.rest_is_over = phases && garden.today >= wake_by(*phases, answer.season);
  Promises promises(folder);
  std::vector<const KnownSowing*> sowings;
  for (const KnownSowing& sowing : record.sowings) {
    if (sowing.season == answer.season) {
      sowings.push_back(&sowing);
      answer.lines.push_back(line_of(sowing, request.saved, garden.garden, promises, seasons));
    }
  }
  answer.carried = carried_into(record, answer.season, phases);
  answer.deaths = deaths_of(sowings);
  add_sums(answer);
  answer.lessons = lessons_of(answer, learned_trials(sowings));
  return answer;
}

} // namespace nightsow::planner
