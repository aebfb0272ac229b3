#include "climate/backtest.hpp"

#include "climate/base/quantile.hpp"
#include "climate/outlook.hpp"
#include "climate/past_seasons.hpp"
#include "climate/scores.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <span>

namespace nightsow::climate {

namespace {

constexpr double most_missing_in_test = 0.02;
constexpr double least_share_open = 0.9;
constexpr int least_median_day = 20;
constexpr int least_issue_day = 8;
constexpr std::size_t least_possible = 5;
constexpr int remembered_days = 120; // more than an outlook looks back

// One season and its words at each gate.
struct Season230 {
  SearchedSeason searched;
  std::array<NightWords, backtest_gates_c.size()> words;
};

NightLimit gate_at(std::size_t gate) {
  return {.at_or_under = Celsius{backtest_gates_c[gate]}};
}

const WordDay& day_of(const NightWords& words, NightEvent event) {
  return event == NightEvent::stirs ? words.stirs : words.holds;
}

std::vector<Season230> seasons_with_words(const BenchAir& bench, const Phases& phases) {
  std::vector<Season230> seasons;
  for (SearchedSeason& searched : searched_seasons(bench, phases)) {
    if (!searched.few_missing()) {
      continue;
    }
    Season230 season{std::move(searched), {}};
    for (std::size_t gate = 0; gate < backtest_gates_c.size(); ++gate) {
      season.words[gate] = night_words(
          season.searched.night_c, {}, gate_at(gate), first_allowed_day(season.searched.season));
    }
    seasons.push_back(std::move(season));
  }
  return seasons;
}

DailySeries part_of(const DailySeries& air, Date first, int count) {
  DailySeries part{first, static_cast<std::size_t>(count)};
  const std::vector<float> night_c = air.nights_from(first, count);
  const std::vector<float> day_c = air.days_from(first, count);
  for (std::size_t i = 0; i < part.size(); ++i) {
    part.set_night(i, night_c[i]);
    part.set_day(i, day_c[i]);
  }
  return part;
}

// What the seasons before had to say about one event at one gate.
struct Training {
  std::vector<double> days;
  int seasons = 0;
  int late = 0;
  int relapsed = 0;

  [[nodiscard]] bool worth_trying(NightEvent event) const {
    return static_cast<double>(days.size()) >= least_share_open * seasons &&
           median() >= least_median_day && (event == NightEvent::stirs || 2 * late > seasons);
  }

  [[nodiscard]] double median() const { return days.empty() ? 0.0 : quantile_type7(days, 0.5); }
};

Training training_of(std::span<const Season230> before, std::size_t gate, NightEvent event) {
  Training training;
  for (const Season230& season : before) {
    const std::optional<int> day = day_of(season.words[gate], event).day;
    ++training.seasons;
    training.late +=
        !day || *day > first_allowed_day(season.searched.season) + binds_slack_days ? 1 : 0;
    if (day) {
      training.days.push_back(*day);
      training.relapsed += relapses(season.searched.night_c, gate_at(gate), *day) ? 1 : 0;
    }
  }
  return training;
}

// All that is needed to look ahead in one tested season.
struct Test {
  const BenchAir& bench;
  const Season230& season;
  PastCourses past;
  int forecast_days;

  [[nodiscard]] BenchAir known_on(int issue_day) const {
    BenchAir known;
    known.air = part_of(bench.air,
                        season.searched.season.hottest - Days{remembered_days},
                        remembered_days + issue_day + 1);
    known.night_doubt = bench.night_doubt;
    return known;
  }
};

std::vector<double> days_in(const Outlook& outlook, std::size_t gate, NightEvent event, int first) {
  std::vector<double> days;
  for (int member = 0; member < outlook.members; ++member) {
    const NightWords words =
        night_words(outlook.night_of(member).first(nights_searched), {}, gate_at(gate), first);
    if (const std::optional<int> day = day_of(words, event).day) {
      days.push_back(*day);
    }
  }
  return days;
}

// A forecast as it might have been: right but for an error that grows, taken from the weather of
// the oldest season, which is as persistent as an error is.
DailySeries forecast_on(const Test& test, int issue_day) {
  const Season& season = test.season.searched.season;
  const Date first = season.hottest + Days{issue_day + 1};
  DailySeries forecast = part_of(test.bench.air, first, test.forecast_days);
  const Date error_from = test.past.seasons.front().hottest + Days{issue_day + 1};
  const auto error_k = [&](const DepartureRow& row, const SmoothCurve& curve, int i) {
    return static_cast<double>(row.at(error_from + Days{i})) / curve.residual_sd_c *
           forecast_error_k(i + 1);
  };
  for (int i = 0; i < test.forecast_days; ++i) {
    const auto at = static_cast<std::size_t>(i);
    const double night_c = static_cast<double>(forecast.night_c()[at]) +
                           error_k(test.past.departures.night, test.past.smooth.night, i);
    forecast.set_night(at, static_cast<float>(night_c), Mark::forecast);
    if (test.past.smooth.day) {
      const double day_c = static_cast<double>(forecast.day_c()[at]) +
                           error_k(test.past.departures.day, *test.past.smooth.day, i);
      forecast.set_day(at, static_cast<float>(day_c));
    }
  }
  return forecast;
}

std::vector<double> still_possible(const std::vector<double>& days, int issue_day) {
  std::vector<double> possible;
  std::copy_if(days.begin(), days.end(), std::back_inserter(possible), [&](double day) {
    return day > issue_day;
  });
  return possible.size() < least_possible ? std::vector<double>{issue_day + 1.0} : possible;
}

// Sums until the end, then means.
void add_case(const Test& test,
              const Training& training,
              std::size_t gate,
              NightEvent event,
              LeadScores& scores) {
  const int issue_day = static_cast<int>(std::floor(training.median())) - scores.lead_days;
  const WordDay& came = day_of(test.season.words[gate], event);
  if (issue_day < least_issue_day || came.unknown || !came.day || *came.day <= issue_day) {
    return;
  }
  const Season& season = test.season.searched.season;
  BenchAir known = test.known_on(issue_day);
  const int first = first_allowed_day(season);
  const std::vector<double> said =
      days_in(season_outlook(test.past, known, season), gate, event, first);
  if (said.empty()) {
    return;
  }
  const double day = *came.day;
  ++scores.cases;
  scores.crps_outlook += fair_crps(said, day);
  scores.crps_past += fair_crps(training.days, day);
  scores.crps_possible += fair_crps(still_possible(training.days, issue_day), day);
  const bool within = quantile_type7(said, 0.1) <= day && day <= quantile_type7(said, 0.9);
  scores.coverage_80 += within ? 1.0 : 0.0;
  const auto tenths = static_cast<double>(scores.rank.size());
  const auto tenth =
      static_cast<std::size_t>(std::min(tenths - 1.0, std::floor(tenths * middle_rank(said, day))));
  scores.rank[tenth] += 1.0;
  if (test.forecast_days > 0) {
    known.forecast = forecast_on(test, issue_day);
    scores.crps_forecast =
        scores.crps_forecast.value_or(0.0) +
        fair_crps(days_in(season_outlook(test.past, known, season), gate, event, first), day);
  }
}

void add_relapse(const Test& test,
                 const Training& training,
                 std::size_t gate,
                 NightEvent event,
                 RelapseScores& scores) {
  const WordDay& came = day_of(test.season.words[gate], event);
  if (came.unknown || !came.day) {
    return;
  }
  const Outlook outlook =
      season_outlook(test.past, test.known_on(*came.day), test.season.searched.season);
  if (outlook.members == 0) {
    return;
  }
  const NightLimit limit = gate_at(gate);
  int relapsing = 0;
  for (int member = 0; member < outlook.members; ++member) {
    relapsing += relapses(outlook.night_of(member), limit, *came.day) ? 1 : 0;
  }
  const bool happened = relapses(test.season.searched.night_c, limit, *came.day);
  ++scores.cases;
  scores.share += happened ? 1.0 : 0.0;
  scores.brier += brier_score(static_cast<double>(relapsing) / outlook.members, happened);
  scores.brier_climate += brier_score(
      static_cast<double>(training.relapsed) / static_cast<double>(training.days.size()), happened);
}

void test_season(const Test& test,
                 std::span<const Season230> before,
                 EventScores& scores,
                 std::set<double>& gates_c) {
  for (std::size_t gate = 0; gate < backtest_gates_c.size(); ++gate) {
    const Training training = training_of(before, gate, scores.event);
    if (!training.worth_trying(scores.event)) {
      continue;
    }
    gates_c.insert(backtest_gates_c[gate]);
    for (LeadScores& lead : scores.leads) {
      add_case(test, training, gate, scores.event, lead);
    }
    add_relapse(test, training, gate, scores.event, scores.relapse);
  }
}

// Sums become means.
void finish(EventScores& scores) {
  for (LeadScores& lead : scores.leads) {
    const double cases = std::max(1, lead.cases);
    lead.crps_outlook /= cases;
    lead.crps_past /= cases;
    lead.crps_possible /= cases;
    lead.coverage_80 /= cases;
    for (double& share : lead.rank) {
      share /= cases;
    }
    if (lead.crps_forecast) {
      *lead.crps_forecast /= cases;
    }
  }
  const double cases = std::max(1, scores.relapse.cases);
  scores.relapse.brier /= cases;
  scores.relapse.brier_climate /= cases;
  scores.relapse.share /= cases;
}

EventScores no_scores(NightEvent event) {
  EventScores scores;
  scores.event = event;
  for (const int lead : backtest_leads) {
    scores.leads.emplace_back().lead_days = lead;
  }
  return scores;
}

// What was known before the season's hottest night.
std::optional<PastCourses> courses_before(const BenchAir& bench,
                                          const Phases& phases,
                                          const Season& season) {
  BenchAir before;
  before.air =
      part_of(bench.air, bench.air.first(), days_between(bench.air.first(), season.hottest));
  const std::optional<SmoothYear> smooth = fit_smooth_year(before.air);
  return smooth ? std::optional{past_courses(before, *smooth, phases)} : std::nullopt;
}

} // namespace

Backtest backtest(const BenchAir& bench, const Phases& phases, int forecast_days) {
  Backtest result;
  result.events = {no_scores(NightEvent::stirs), no_scores(NightEvent::holds)};
  std::set<double> gates_c;
  const std::vector<Season230> seasons = seasons_with_words(bench, phases);
  for (std::size_t i = backtest_least_seasons; i < seasons.size(); ++i) {
    const Season230& season = seasons[i];
    if (season.searched.missing > most_missing_in_test * nights_searched) {
      continue;
    }
    std::optional<PastCourses> past = courses_before(bench, phases, season.searched.season);
    if (!past) {
      continue;
    }
    const std::size_t first = i - std::min<std::size_t>(i, backtest_most_seasons);
    const std::span<const Season230> before = std::span{seasons}.subspan(first, i - first);
    const Test test{bench, season, std::move(*past), forecast_days};
    ++result.seasons;
    for (EventScores& event : result.events) {
      test_season(test, before, event, gates_c);
    }
  }
  for (EventScores& event : result.events) {
    finish(event);
  }
  result.gates_c.assign(gates_c.begin(), gates_c.end());
  return result;
}

} // namespace nightsow::climate
