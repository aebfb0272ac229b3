#include "planner/answers/decision.hpp"

#include "planner/answers/decided_timing.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/gate_reasons.hpp"
#include "planner/answers/hold_saved.hpp"
#include "planner/answers/kept_ways.hpp"
#include "planner/answers/water_window.hpp"
#include "planner/model/nights_for_rule.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::Start;

// A window that begins so much later than nights allow is explained.
constexpr Days worth_telling{21};
// Plants a year sooner are worth many more later on (common practice, no source).
constexpr double worth_waiting_a_year = 0.6;
// A season with less than this of its best left is weighed against the next.
constexpr double season_mostly_left = 0.8;
// Of what unripe seed would have given: a pot that rests dry still holds most of it for another
// season (common practice, no source).
constexpr double carried_share = 0.8;
// Of seed with less of it ripe hardly anything comes: it is better kept dry.
constexpr double worth_sowing_unripe = 0.25;
// Of irreplaceable seed that keeps: the share to sow at once (common practice, no source).
constexpr double sown_of_irreplaceable = 0.6;
// More plants than by waiting, for which wet seed is left in warm nights (common practice, no
// source).
constexpr double much_more = 1.25;
constexpr double keeps_years = 2.0;
constexpr double least_to_split = 8.0;
constexpr double usual_half_life_years = 3.0;

using Seeds = std::optional<double>;

double half_life_years(const LineInput& input) {
  return value_or(input.rule.rule.seed.half_life_years, usual_half_life_years);
}

std::optional<int> keep_back(const LineInput& input) {
  const Seeds seeds = input.packet.seeds.middle();
  if (!input.packet.irreplaceable || !seeds || *seeds < least_to_split ||
      half_life_years(input) < keeps_years || start_of(input.rule.rule) == Start::at_once) {
    return std::nullopt;
  }
  return static_cast<int>(std::floor(*seeds * (1.0 - sown_of_irreplaceable)));
}

// The day of most plants from that one on.
Date best_day(const KeptWay& way, Date from) {
  const auto best =
      std::max_element(way.shares.begin() + days_between(way.first, from), way.shares.end());
  return way.first + Days{static_cast<int>(best - way.shares.begin())};
}

/// The packet in the season at hand.
struct Here {
  const LineInput& input;
  PacketProspects& known;
  Prospects& prospects;
  std::vector<KeptWay> ways;
  Date allowed{};
  Date opens{}; ///< the first day that the season allows; may lie behind
  Seeds seeds;
  double factor = 1.0; ///< what all cases make of the shares, which a few gave

  [[nodiscard]] int plants(double share) const {
    return static_cast<int>(std::lround(share * factor * seeds.value_or(0.0)));
  }

  [[nodiscard]] std::optional<double> told(double share) const {
    return seeds ? std::optional{rounded_tenth(share * factor * *seeds)} : std::nullopt;
  }

  [[nodiscard]] const KeptWay& best() const {
    return best_or_saved_way(ways, input.packet, seeds, input.saved);
  }

  // Of all days, those too that nights do not allow.
  [[nodiscard]] std::optional<WaterWindow> window() const {
    return water_window(best().first, best().shares, seeds);
  }

  // Of the days that the season allows, those before today too: it stays where it is as days pass.
  [[nodiscard]] std::optional<WaterWindow> open_window() const { return window_from(opens); }

  [[nodiscard]] double share_on(Date day) const {
    const auto entry = static_cast<std::size_t>(days_between(best().first, day));
    return entry < best().shares.size() ? best().shares[entry] : 0.0;
  }

  [[nodiscard]] std::optional<WaterWindow> window_from(Date day) const {
    const auto from = static_cast<std::ptrdiff_t>(days_between(best().first, day));
    return water_window(day, {best().shares.begin() + from, best().shares.end()}, seeds);
  }
};

// What the packet gives next season, kept the best way, from the day on which that season's nights
// are expected to allow it.
struct NextSeason {
  Date best{};
  double share = 0.0;
};

NextSeason next_season(const LineInput& input,
                       PacketProspects& known,
                       BenchSeasons& seasons,
                       const climate::Season& season) {
  const climate::Phases& phases = *seasons.station().turning.phases;
  const climate::Season next = season_after(phases, season, input.garden.today);
  const LineTiming timing = line_timing(input, seasons, next);
  const std::optional<Date> from = day_of_water(timing.verdict, timing.water, input.garden.today);
  if (timing.never || !from) {
    return {};
  }
  const bool hot = start_of(input.rule.rule) == Start::hot;
  Prospects& prospects = known.of(input, seasons, {input.bench, next, hot, on_mat(input)});
  if (*from < prospects.first_day() || *from > prospects.last_day()) {
    return {};
  }
  const std::vector<KeptWay> ways = kept_ways(input, prospects, *from);
  const KeptWay& way = best_way(ways, input.packet.seeds.middle());
  return {best_day(way, *from), way.most};
}

void tell_routes(const Here& here, Decision& decision) {
  for (const KeptWay& way : here.ways) {
    const std::string route = route_of(way.keeping, here.input.packet);
    const bool known = std::any_of(decision.routes.begin(),
                                   decision.routes.end(),
                                   [&](const RouteAnswer& other) { return other.route == route; });
    if (!known) {
      decision.routes.push_back(
          {route, here.told(way.most), best_day(way, here.allowed), way.keeping.warm_until});
    }
  }
}

// Nights are gone against only for what a grower would see.
bool worth_sowing_warm(double now, double later, Seeds seeds) {
  return now > later * much_more && (!seeds || (now - later) * *seeds >= 1.0);
}

// Seed that dies fast may do better wetted today, whatever the nights; not while something else
// speaks against water.
void compare_sowing_now(const Here& here, LineTiming& timing, Decision& decision) {
  const LineInput& input = here.input;
  const Date today = input.garden.today;
  const bool fast = half_life_years(input) < keeps_years || input.seed.fading();
  if (!fast || here.allowed < today + worth_keeping || today < here.prospects.first_day()) {
    return;
  }
  const double now = here.prospects.plants_share(today, {});
  decision.routes.push_back({"sow_now", here.told(now), today, {}});
  const bool held_up = timing.verdict == Verdict::unknown || input.guard.stale ||
                       input.packet.in_hand_from.has_value() ||
                       has_reason(timing.reasons, ReasonCode::hot_days) ||
                       has_reason(timing.reasons, ReasonCode::freezing_nights);
  const bool saved_so = input.saved != nullptr && input.saved->route == "sow_now";
  const double later = here.best().most;
  if (held_up || !(saved_so ? !worth_moving(later, now, here.seeds)
                            : worth_sowing_warm(now, later, here.seeds))) {
    return;
  }
  timing.verdict = Verdict::water_now;
  timing.water.not_before = today;
  timing.water.expected = {today, today, today, 0.0};
  Reason reason{ReasonCode::sow_now_loses_least, {}};
  if (here.seeds) {
    reason.values = {{"plants", here.plants(now)}, {"waiting", here.plants(later)}};
  }
  timing.reasons.insert(timing.reasons.begin(), std::move(reason));
}

// As saved, unless the other season is worth moving for. A window that has passed holds nothing.
bool better_next_season(
    const Here& here, double next, double now, bool passed, LineTiming& timing) {
  const bool better = next > now;
  const SavedLine* saved = here.input.saved;
  if (saved == nullptr || passed || better != saved->sown_this_season) {
    return better;
  }
  if (worth_moving(std::max(next, now), std::min(next, now), here.seeds)) {
    return better;
  }
  timing.reasons.push_back({ReasonCode::season_held, {}});
  return !better;
}

// Whether this season or the next; a season that is mostly left is not asked about.
void weigh_next_season(const Here& here,
                       BenchSeasons& seasons,
                       const climate::Season& season,
                       LineTiming& timing,
                       Decision& decision) {
  const std::optional<WaterWindow> window = here.open_window();
  const double now = here.best().most;
  const double ever = window ? window->plants_share : 0.0;
  const double if_ripe = window ? here.prospects.plants_share_if_ripe(
                                      std::max(window->best, here.allowed), here.best().keeping)
                                : 0.0;
  // Where nothing is to be expected of ripe seed, the nights have the last word.
  const bool well = window && now >= season_mostly_left * std::max(ever, if_ripe);
  if ((!window && here.input.seed.ripe) || (well && !timing.missed)) {
    return;
  }
  const bool unripe = now < worth_sowing_unripe * if_ripe;
  const double with_carried = unripe ? now : now + carried_share * std::max(0.0, if_ripe - now);
  const NextSeason next = next_season(here.input, here.known, seasons, season);
  if (next.share > 0.0) {
    decision.routes.push_back({"next_season", here.told(next.share), next.best, {}});
  }
  const bool passed = window && window->to < here.input.garden.today;
  if (better_next_season(here, next.share * worth_waiting_a_year, with_carried, passed, timing)) {
    if (passed) {
      timing.missed = window_passed(window->to);
    } else if (!timing.missed) {
      Reason better{ReasonCode::better_next_season, {{"when", next.best}}};
      if (here.seeds) {
        better.values.push_back({"plants", here.plants(next.share)});
        better.values.push_back({"now", here.plants(now)});
      }
      timing.missed = std::move(better);
    }
    return;
  }
  if (!window) {
    return;
  }
  timing.missed.reset();
  if (passed) {
    // What forbids water today is told first.
    timing.reasons.insert(timing.verdict == Verdict::water_now ? timing.reasons.begin()
                                                               : timing.reasons.end(),
                          {ReasonCode::late_for_it,
                           {{"no_later_than", window->to},
                            {"share", Share{rounded_share(1.0 - now / window->plants_share)}}}});
  }
}

// Plants on both days, where they differ in whole plants.
Reason with_plants(ReasonCode code, const Here& here, Date day, Date other) {
  Reason reason{code, {{"when", day}}};
  const int then = here.plants(here.share_on(day));
  const int otherwise = here.plants(here.share_on(other));
  if (here.seeds && then != otherwise) {
    reason.values.push_back({"plants", then});
    reason.values.push_back({"other", otherwise});
  }
  return reason;
}

// Its best time would be before nights allow any.
void tell_best_before(const Here& here, const WaterWindow& open, LineTiming& timing) {
  const std::optional<WaterWindow> ever = here.window();
  if (ever && ever->best < open.from && ever->best >= here.input.garden.today &&
      much_better(ever->plants_share, open.plants_share, here.seeds)) {
    timing.risks.push_back(
        with_plants(ReasonCode::best_before_holds, here, ever->best, here.allowed));
  }
}

// The day to act is the later of what nights allow and the first day of the window.
void move_into_window(const Here& here, const WaterWindow& open, LineTiming& timing) {
  const Date today = here.input.garden.today;
  const bool now = timing.verdict == Verdict::water_now;
  if (open.from > here.allowed) {
    timing.water.not_before = std::max(timing.water.not_before.value_or(open.from), open.from);
    keep_from(open.from, timing.water.expected);
    if (now && open.from > today) {
      timing.verdict = Verdict::wait;
      timing.water.expected = {open.from, open.from, open.from, 0.0};
    }
    if (now || open.from > here.allowed + worth_telling) {
      timing.reasons.insert(timing.reasons.begin(),
                            with_plants(ReasonCode::window_begins, here, open.from, here.allowed));
    }
  }
  tell_best_before(here, open, timing);
  if (here.allowed <= open.to) {
    const bool hot = start_of(here.input.rule.rule) == Start::hot;
    // The heat that it starts in has an end of its own.
    timing.water.no_later_than =
        hot ? std::min(open.to, timing.water.no_later_than.value_or(open.to)) : open.to;
  } else if (const std::optional<WaterWindow> left = here.window_from(here.allowed)) {
    timing.water.no_later_than = left->to;
  }
}

void tell_keeping(const Here& here, LineTiming& timing) {
  const KeptWay& best = here.best();
  const KeptWay& as_it_is = here.ways.front();
  const KeptWay& unsaved = best_way(here.ways, here.seeds);
  if (&best != &unsaved) {
    Reason held{ReasonCode::route_held, {{"store", route_of(best.keeping, here.input.packet)}}};
    if (here.seeds) {
      held.values.push_back({"plants", here.plants(best.most)});
      held.values.push_back({"other", here.plants(unsaved.most)});
    }
    timing.reasons.push_back(std::move(held));
    return;
  }
  if (&best == &as_it_is) {
    return;
  }
  Reason reason{ReasonCode::keep_otherwise, {{"store", route_of(best.keeping, here.input.packet)}}};
  if (best.keeping.warm_until) {
    reason.values.push_back({"until", *best.keeping.warm_until});
  }
  if (here.seeds) {
    reason.values.push_back({"plants", here.plants(best.most)});
    reason.values.push_back({"other", here.plants(as_it_is.most)});
  }
  timing.reasons.push_back(std::move(reason));
}

void sort_routes(std::vector<RouteAnswer>& routes) {
  std::stable_sort(routes.begin(), routes.end(), [](const auto& a, const auto& b) {
    return a.plants.value_or(0.0) > b.plants.value_or(0.0);
  });
}

Decision decide_on(Here here,
                   BenchSeasons& seasons,
                   const climate::Season& season,
                   LineTiming& timing) {
  Decision decision;
  decision.keep_back = keep_back(here.input);
  tell_routes(here, decision);
  weigh_next_season(here, seasons, season, timing, decision);
  const bool nights_allowed = timing.verdict == Verdict::water_now;
  if (!timing.missed && !nights_allowed) {
    compare_sowing_now(here, timing, decision);
  }
  const bool sown_against_nights = !nights_allowed && timing.verdict == Verdict::water_now;
  const std::optional<WaterWindow> window = here.open_window();
  if (!timing.missed && window && !sown_against_nights) {
    const Date first_possible = std::max(climate::first_allowed_date(season),
                                         timing.water.expected.p10.value_or(season.hottest));
    move_into_window(here, *window, timing);
    hold_days(
        here.input.saved,
        here.input.garden.today,
        first_possible,
        [&here](Date day) { return here.share_on(day) * here.factor; },
        here.seeds,
        timing);
    tell_keeping(here, timing);
    decision.keeping = here.best().keeping;
  }
  decision.route = timing.verdict == Verdict::water_now
                       ? "sow_now"
                       : route_of(decision.keeping, here.input.packet);
  const std::optional<Date> day =
      day_of_water(timing.verdict, timing.water, here.input.garden.today);
  if (day && *day <= here.prospects.last_day()) {
    const Seeds sown = here.seeds ? Seeds{*here.seeds - decision.keep_back.value_or(0)} : Seeds{};
    decision.expected = here.prospects.expected(*day, decision.keeping, sown);
  }
  tell_late_nights(timing);
  tell_hardly_any(decision.expected, timing);
  drop_passed_limit(here.input.garden.today, timing);
  sort_routes(decision.routes);
  return decision;
}

} // namespace

Decision decide(const LineInput& input,
                PacketProspects& known,
                BenchSeasons& seasons,
                const climate::Season& season,
                LineTiming& timing) {
  const std::optional<Date> allowed =
      day_of_water(timing.verdict, timing.water, input.garden.today);
  if (!allowed) {
    return {};
  }
  const bool before = *allowed < season.hottest || start_of(input.rule.rule) == Start::hot;
  Prospects& prospects = known.of(input, seasons, {input.bench, season, before, on_mat(input)});
  if (*allowed < prospects.first_day() || *allowed > prospects.last_day()) {
    return {};
  }
  const Seeds seeds = input.packet.seeds.middle();
  if (start_of(input.rule.rule) == Start::at_once) {
    Decision decision;
    decision.expected = prospects.expected(*allowed, {}, seeds);
    decision.route = "sow_now";
    tell_hardly_any(decision.expected, timing);
    decision.routes.push_back(
        {"sow_now",
         decision.expected ? std::optional{decision.expected->plants.mean} : std::nullopt,
         *allowed,
         {}});
    return decision;
  }
  const Date opens = std::clamp(timing.opens.value_or(*allowed), prospects.first_day(), *allowed);
  Here here{input, known, prospects, kept_ways(input, prospects, *allowed), *allowed, opens, seeds};
  here.factor = prospects.all_cases_factor(best_day(here.best(), *allowed), here.best().keeping);
  return decide_on(std::move(here), seasons, season, timing);
}

} // namespace nightsow::planner
