#include "planner/answers/account_report.hpp"

#include "planner/answers/account_basis.hpp"
#include "planner/answers/account_curve.hpp"
#include "planner/answers/account_deciding.hpp"
#include "planner/answers/account_names.hpp"
#include "planner/answers/account_nights.hpp"
#include "planner/answers/account_notes.hpp"
#include "planner/answers/account_reasons.hpp"
#include "planner/answers/carried.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/garden/open_sowings.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::RuleFor;

constexpr int draws_of_rule = 128;
constexpr double worth_a_look = 1.0; // seedlings expected since the last count
constexpr double hardly_begun = 1.0; // seedlings expected by now, where nothing was counted
constexpr double hardly_fits = 0.02; // chance of a count no likelier
constexpr double far_off = 2.0;      // seedlings: a count nearer than that hardly misses
constexpr Days shortest_rest{14};    // common practice, no source

// One sowing and all that its account is made from.
struct Asked {
  const LoadedGarden& garden;
  BenchSeasons& seasons;
  const RecordedSowing& sowing;
  SowingFacts facts;
  Date today{}; ///< of a closed sowing the day of its closing
  bool deciding = false;
};

void nothing_reckoned(SowingAccount& answer, std::optional<Reason> because) {
  answer.step = "nothing_reckoned";
  if (because) {
    answer.advice.push_back(std::move(*because));
  }
  answer.advice.push_back({ReasonCode::account_nothing_reckoned, {}});
}

SowingAccount head_of(const Asked& asked) {
  const SowingFacts& facts = asked.facts;
  SowingAccount answer;
  answer.sowing = asked.sowing.id;
  answer.packet = asked.sowing.packet_id;
  answer.taxon = asked.sowing.taxon;
  answer.bench = bench_named(asked.garden.garden, facts.places.back().bench).name;
  answer.sown = asked.sowing.on;
  answer.first_water = facts.first_water;
  answer.seeds = asked.sowing.seeds;
  answer.pots = asked.sowing.pots;
  answer.up = std::min(facts.up_in_all(), answer.seeds);
  answer.died = facts.died;
  answer.firm = facts.pressed.firm;
  answer.soft = facts.pressed.soft;
  if (!facts.looks.empty()) {
    answer.counted_on = facts.looks.back().on;
    answer.alive = facts.looks.back().seen;
  }
  answer.notes = account_notes(asked.garden.garden, asked.sowing, facts);
  return answer;
}

// Looks before first water found nothing, and tell nothing.
SowingRecord record_of(const Asked& asked, const PotWeather& weather) {
  SowingRecord record;
  record.seeds = asked.sowing.seeds;
  record.pots = asked.sowing.pots;
  record.pressed = asked.facts.pressed;
  for (const CountedLook& look : asked.facts.looks) {
    if (look.on >= *asked.facts.first_water) {
      record.looks.push_back(
          {days_between(weather.first, look.on), std::min(look.up_in_all, record.seeds)});
    }
  }
  return record;
}

// The next day on which such a pot is watered again: the plan's own where it rests, else after a
// rest worth the name.
Date next_time(const Asked& asked, bool warm) {
  const Date today = asked.today;
  const auto season = chosen_season(asked.seasons.station(), today, std::nullopt);
  const auto pot = carried_pot(asked.garden, asked.seasons, season, asked.sowing);
  if (pot && pot->stage == PotStage::resting) {
    if (const auto water = day_of_water(pot->verdict, pot->water, today)) {
      return std::max(today, *water);
    }
  }
  const climate::Phases& phases = *asked.seasons.station().turning.phases;
  const date::month_day begins = warm ? phases.hot_season_begins : phases.limb_begins;
  constexpr Days year{365};
  return climate::last_on_or_before(today + shortest_rest + year, begins);
}

void add_missing(const Account& result, SowingAccount& answer) {
  for (const CauseShare& cause : result.causes) {
    answer.missing.push_back({std::string(name_of(cause.cause)),
                              rounded_share(cause.share),
                              rounded_share(cause.p10),
                              rounded_share(cause.p90),
                              static_cast<int>(std::lround(cause.p10 * result.missing)),
                              static_cast<int>(std::lround(cause.p90 * result.missing))});
  }
}

void add_press(const AccountAdvice& advice, SowingAccount& answer) {
  if (!advice.press_five) {
    return;
  }
  answer.press.emplace();
  for (const NextStep step : advice.by_firm) {
    answer.press->step_by_firm.emplace_back(name_of(step));
  }
  answer.advice.push_back(
      {ReasonCode::account_press, {{"sowing", static_cast<int>(answer.sowing)}}});
}

// What more should have come since the last count asks for another one before all else.
bool is_outdated(const Asked& asked,
                 std::span<const SeedsOnDay> cases,
                 const AccountBasis& basis,
                 const Account& result,
                 NextStep step) {
  const bool ends = step == NextStep::nothing_missing || step == NextStep::stop;
  const int today = days_between(basis.weather.first, asked.today);
  return !ends && today > basis.looked &&
         expected_by(cases, basis.record, result, today) >= worth_a_look;
}

void advise(const Asked& asked,
            const AccountBasis& basis,
            std::span<const SeedsOnDay> cases,
            const Account& result,
            const AccountAdvice& advice,
            const species_rules::SeedParameters& seed,
            SowingAccount& answer) {
  const bool fits = result.like_the_rule >= hardly_fits ||
                    std::abs(result.up - result.expected_up.mean) < far_off;
  const bool told = advice.step != NextStep::nothing_missing && advice.step != NextStep::too_early;
  if (told) {
    answer.advice.push_back(likely_reason(answer.missing, result.missing));
    if (answer.nights) {
      answer.advice.push_back(nights_reason(*answer.nights));
    }
  }
  if (is_outdated(asked, cases, basis, result, advice.step)) {
    answer.step = "look_again";
    answer.until.reset();
    answer.advice.push_back(
        {ReasonCode::account_look_again,
         {{"last", *answer.counted_on}, {"days", days_between(*answer.counted_on, asked.today)}}});
  } else {
    const Date today = asked.today;
    const bool rests_dry = pot_rests_dry(seed, answer.alive > 0);
    answer.advice.push_back(step_reason(advice.step, result, seed, rests_dry, answer.until, today));
    if (advice.step == NextStep::keep_for_next_limb && *answer.until <= today) {
      answer.step = "water_again";
      answer.until.reset();
    }
    if (told) {
      answer.how_sure = rounded_share(advice.how_sure);
      answer.advice.push_back(sure_reason(advice.how_sure, fits));
    }
    add_press(advice, answer);
  }
  if (!fits) {
    answer.advice.push_back({ReasonCode::account_unlike_rule,
                             {{"up", result.up},
                              {"low", result.expected_up.p10},
                              {"high", result.expected_up.p90},
                              {"rule", answer.rule}}});
  }
}

// The day by which half of what the season brings is up, by the rule alone.
std::optional<int> half_up(std::span<const SeedsOnDay> cases) {
  std::vector<double> up(cases.front().up.size(), 0.0);
  for (const SeedsOnDay& seeds : cases) {
    for (std::size_t day = 0; day < up.size(); ++day) {
      up[day] += seeds.up[day];
    }
  }
  const double all = std::accumulate(up.begin(), up.end(), 0.0);
  std::partial_sum(up.begin(), up.end(), up.begin());
  const auto half = std::lower_bound(up.begin(), up.end(), 0.5 * all);
  return all > 0.0 ? std::optional{static_cast<int>(half - up.begin())} : std::nullopt;
}

void account_uncounted(const Asked& asked,
                       const AccountBasis& basis,
                       std::span<const SeedsOnDay> cases,
                       SowingAccount& answer) {
  answer.expected_up = expected_up(cases, basis.record, basis.looked);
  if (answer.expected_up->mean < hardly_begun) {
    answer.step = name_of(NextStep::too_early);
    const std::optional<int> half = half_up(cases);
    if (half && *half > basis.looked) {
      answer.until = basis.weather.first + Days{*half};
    }
    answer.advice.push_back(too_early_reason(answer.until));
  } else {
    answer.step = "count_first";
    answer.advice.push_back(
        {ReasonCode::account_count_first, {{"sowing", static_cast<int>(asked.sowing.id)}}});
  }
}

void account_counted(const Asked& asked,
                     const AccountBasis& basis,
                     const RuleFor& rule,
                     std::span<const SeedsOnDay> cases,
                     SowingAccount& answer) {
  const species_rules::SeedParameters seed = species_rules::seed_parameters(rule.rule);
  const Account result = account(cases, basis.record);
  const SowingSituation situation = situation_of(basis, rule, asked.today);
  const AccountAdvice advice = advice_for(cases, basis.record, result, situation);
  answer.expected_up = {rounded_tenth(result.expected_up.mean),
                        static_cast<double>(result.expected_up.p10),
                        static_cast<double>(result.expected_up.p90)};
  answer.closed = advice.step == NextStep::nothing_missing ||
                  situation.cool_seasons_had >= situation.cool_seasons_kept;
  answer.step = name_of(advice.step);
  add_missing(result, answer);
  answer.more_to_come = rounded_tenth(result.more_to_come);
  if (advice.wait_until) {
    answer.until = basis.weather.first + Days{*advice.wait_until};
  } else if (advice.step == NextStep::keep_for_next_limb) {
    answer.until = next_time(asked, seed.start == species_rules::Start::hot);
  }
  if (result.missing > 0) {
    answer.nights = nights_so_far(asked.garden, basis.weather, seed);
    if (asked.deciding) {
      answer.deciding = deciding_values(basis, rule, situation);
    }
  }
  advise(asked, basis, cases, result, advice, seed, answer);
}

void account_reckoned(const Asked& asked,
                      const RuleFor& rule,
                      const PotWeather& weather,
                      SowingAccount& answer) {
  AccountBasis basis{asked.sowing,
                     asked.facts,
                     packet_as_sown(asked.sowing, asked.garden.records),
                     weather,
                     record_of(asked, weather),
                     0};
  const int today = days_between(weather.first, asked.today);
  const bool counted = !basis.record.looks.empty();
  basis.looked = counted ? basis.record.looks.back().day : today;
  const std::vector<SeedsOnDay> cases = cases_of(basis, {rule, draws_of_rule});
  if (counted) {
    account_counted(asked, basis, rule, cases, answer);
  } else {
    account_uncounted(asked, basis, cases, answer);
  }
  const bool keeps = answer.step == name_of(NextStep::keep_for_next_limb);
  const int until = answer.until && !keeps ? days_between(weather.first, *answer.until) : today;
  answer.curve = account_curve(
      basis, cases, days_between(weather.first, *asked.facts.first_water), std::max(today, until));
}

SowingAccount account_of(const Asked& asked) {
  SowingAccount answer = head_of(asked);
  const species_rules::Lookup lookup = asked.garden.catalogue->rule_for(asked.sowing.taxon);
  if (!lookup.found) {
    nothing_reckoned(answer,
                     Reason{ReasonCode::unknown_taxon,
                            {{"written", asked.sowing.taxon}, {"suggestion", lookup.suggestion}}});
    return answer;
  }
  answer.rule = lookup.found->rule_name;
  add_name_notes(lookup, asked.sowing.taxon, answer.notes);
  if (!asked.facts.first_water) {
    answer.step = "water_first";
    answer.advice.push_back(
        {ReasonCode::account_water_first, {{"sowing", static_cast<int>(asked.sowing.id)}}});
    return answer;
  }
  if (!asked.seasons.station().turning.phases) {
    nothing_reckoned(answer, no_cooling_limb_reason(asked.seasons.station()));
    return answer;
  }
  const std::optional<PotWeather> weather =
      pot_weather(asked.garden, asked.seasons, asked.facts, *asked.facts.first_water, asked.today);
  if (!weather) {
    nothing_reckoned(answer,
                     Reason{ReasonCode::readings_begin_late, {{"on", *asked.facts.first_water}}});
    return answer;
  }
  answer.notes.insert(answer.notes.end(), weather->notes.begin(), weather->notes.end());
  if (weather->nights_unread > 0) {
    answer.notes.push_back({ReasonCode::nights_unread, {{"missing", weather->nights_unread}}});
  }
  account_reckoned(asked, *lookup.found, *weather, answer);
  return answer;
}

// What most likely happened stays; what to do next is nobody's question any more.
void close(const Closing& closing, SowingAccount& answer) {
  answer.closed = true;
  answer.closed_on = closing.on;
  answer.closed_why = name_of(closing.why);
  answer.step = "closed";
  answer.until.reset();
  answer.press.reset();
  answer.how_sure.reset();
  answer.more_to_come.reset();
  answer.deciding.clear();
  std::erase_if(answer.advice, [](const Reason& reason) {
    return reason.code != ReasonCode::account_likely && reason.code != ReasonCode::nights_short &&
           reason.code != ReasonCode::warm_nights_short && reason.code != ReasonCode::nights_came &&
           reason.code != ReasonCode::account_unlike_rule;
  });
  Reason closed{ReasonCode::account_closed, {{"on", closing.on}}};
  if (closing.why != ClosingReason::other) {
    closed.values.push_back({"closed", answer.closed_why});
  }
  answer.advice.push_back(std::move(closed));
}

std::vector<Reason> readings_warnings(const LoadedGarden& garden, const StationClimate& station) {
  std::vector<Reason> warnings = warnings_of(garden, station, climate::few_seasons);
  std::erase_if(warnings, [](const Reason& reason) {
    return reason.code != ReasonCode::readings_stale && reason.code != ReasonCode::readings_suspect;
  });
  return warnings;
}

} // namespace

AccountAnswer account_report(const LoadedGarden& garden, const AccountRequest& request) {
  BenchSeasons seasons{garden};
  AccountAnswer answer;
  answer.garden = garden_head(garden.garden);
  answer.today = garden.today;
  answer.warnings = readings_warnings(garden, seasons.station());
  const bool named = !request.sowings.empty();
  answer.overview = !named;
  for (const RecordedSowing& sowing : garden.records.sowings) {
    const bool wanted =
        !named || std::find(request.sowings.begin(), request.sowings.end(), sowing.id) !=
                      request.sowings.end();
    if (!wanted) {
      continue;
    }
    if (!named && !request.all && closing_of(garden.records, sowing.id) != nullptr) {
      ++answer.closed;
      continue;
    }
    SowingAccount one = sowing_account(garden, seasons, sowing, request.deciding);
    if (one.closed && !named && !request.all) {
      ++answer.closed;
    } else {
      answer.accounts.push_back(std::move(one));
    }
  }
  return answer;
}

SowingAccount sowing_account(const LoadedGarden& garden,
                             BenchSeasons& seasons,
                             const RecordedSowing& sowing,
                             bool deciding) {
  const SowingFacts facts = sowing_facts(sowing, garden.records);
  const Closing* const closing = closing_of(garden.records, sowing.id);
  if (closing == nullptr) {
    return account_of({garden, seasons, sowing, facts, garden.today, deciding});
  }
  SowingAccount answer = account_of({garden, seasons, sowing, facts, closing->on, false});
  close(*closing, answer);
  return answer;
}

} // namespace nightsow::planner
