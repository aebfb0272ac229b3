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
struct SeasonWords {
  SearchedSeason searched;
  std::array<NightWords, backtest_gates_c.size()> words;
};

NightLimit gate_at(std::size_t gate) {
  return {.at_or_under = Celsius{backtest_gates_c[gate]}};
}

const WordDay& day_of(const NightWords& words, NightEvent event) {
  return event == NightEvent::stirs ? words.stirs : words.holds;
}

std::vector<SeasonWords> seasons_with_words(const BenchAir& bench, const Phases& phases) {
  std::vector<SeasonWords> seasons;
  for (SearchedSeason& searched : searched_seasons(bench, phases)) {
    if (!searched.few_missing()) {
      continue;
    }
    SeasonWords season{std::move(searched), {}};
    for (std::size_t gate = 0; gate < backtest_gates_c.size(); ++gate) {
      season.words[gate] = night_words(
          season.searched.night_c, {}, gate_at(gate), first_allowed_day(season.searched.season));
    }
    seasons.push_back(std::move(season));
  }
  return seasons;
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

Training training_of(std::span<const SeasonWords> before, std::size_t gate, NightEvent event) {
  Training training;
  for (const SeasonWords& season : before) {
    const WordDay& word = day_of(season.words[gate], event);
    if (word.unknown) {
      continue;
    }
    const std::optional<int> day = word.day;
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
  const DailySeries& open; ///< with its holes
  const SeasonWords& season;
  PastCourses past;
  int forecast_days = 0;

  // Holes are filled behind the cut, so that no fill knows what came.
  [[nodiscard]] BenchAir known_on(int issue_day) const {
    BenchAir known;
    known.air = open.part(season.searched.season.hottest - Days{remembered_days},
                          remembered_days + issue_day + 1);
    fill_short_holes(known.air);
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
// one of the past seasons, another for each tested one, for an error is as persistent as weather.
DailySeries forecast_on(const Test& test, int issue_day) {
  const Season& season = test.season.searched.season;
  DailySeries forecast = test.open.part(season.hottest + Days{issue_day + 1}, test.forecast_days);
  const std::vector<Season>& past = test.past.seasons;
  const Date error_from =
      past[static_cast<std::size_t>(season.name) % past.size()].hottest + Days{issue_day + 1};
  const auto with_error = [&](float came_c, const DepartureRow& row, double sd_k, std::size_t i) {
    const auto day = static_cast<int>(i);
    const auto departure_k = static_cast<double>(row.at(error_from + Days{day}));
    return static_cast<float>(static_cast<double>(came_c) +
                              departure_k / sd_k * forecast_error_k(day + 1));
  };
  const Departures& departures = test.past.departures;
  for (std::size_t i = 0; i < forecast.size(); ++i) {
    forecast.set_night(
        i,
        with_error(
            forecast.night_c()[i], departures.night, test.past.smooth.night.residual_sd_c, i),
        Mark::forecast);
    if (test.past.smooth.day) {
      forecast.set_day(
          i,
          with_error(forecast.day_c()[i], departures.day, test.past.smooth.day->residual_sd_c, i));
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

// What was told on an issue day: the day of the event in each member that has one.
struct Told {
  std::vector<double> days;
  std::vector<double> with_forecast; ///< empty when none is asked for
};

Told told_on(const Test& test, int issue_day, std::size_t gate, NightEvent event) {
  const Season& season = test.season.searched.season;
  const int first = first_allowed_day(season);
  BenchAir known = test.known_on(issue_day);
  Told told{days_in(season_outlook(test.past, known, season), gate, event, first), {}};
  if (test.forecast_days > 0) {
    known.forecast = forecast_on(test, issue_day);
    told.with_forecast = days_in(season_outlook(test.past, known, season), gate, event, first);
  }
  return told;
}

// Sums until the end, then means.
void add_scores(const Told& told,
                const std::vector<double>& past_days,
                int issue_day,
                double day,
                LeadScores& scores) {
  ++scores.cases;
  scores.crps_outlook += fair_crps(told.days, day);
  scores.crps_past += fair_crps(past_days, day);
  scores.crps_possible += fair_crps(still_possible(past_days, issue_day), day);
  const bool within =
      quantile_type7(told.days, 0.1) <= day && day <= quantile_type7(told.days, 0.9);
  scores.coverage_80 += within ? 1.0 : 0.0;
  const auto tenths = static_cast<double>(scores.pit.size());
  const auto tenth = static_cast<std::size_t>(
      std::min(tenths - 1.0, std::floor(tenths * middle_rank(told.days, day))));
  scores.pit[tenth] += 1.0;
  if (!told.with_forecast.empty()) {
    scores.crps_forecast = scores.crps_forecast.value_or(0.0) + fair_crps(told.with_forecast, day);
  }
}

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
  const Told told = told_on(test, issue_day, gate, event);
  const bool forecast_fails = test.forecast_days > 0 && told.with_forecast.empty();
  if (!told.days.empty() && !forecast_fails) {
    add_scores(told, training.days, issue_day, *came.day, scores);
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
    relapsing +=
        relapses(outlook.night_of(member).first(nights_searched), limit, *came.day) ? 1 : 0;
  }
  const bool happened = relapses(test.season.searched.night_c, limit, *came.day);
  ++scores.cases;
  scores.share += happened ? 1.0 : 0.0;
  scores.brier += brier_score(static_cast<double>(relapsing) / outlook.members, happened);
  scores.brier_climate += brier_score(
      static_cast<double>(training.relapsed) / static_cast<double>(training.days.size()), happened);
}

void test_season(const Test& test,
                 std::span<const SeasonWords> before,
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
    for (double& share : lead.pit) {
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

// What was known before the season's hottest night. Holes are open while the year is fitted.
std::optional<PastCourses> courses_before(const DailySeries& open,
                                          const Phases& phases,
                                          const Season& season) {
  BenchAir before;
  before.air = open.part(open.first(), days_between(open.first(), season.hottest));
  const std::optional<SmoothYear> smooth = fit_smooth_year(before.air);
  if (!smooth) {
    return std::nullopt;
  }
  fill_short_holes(before.air);
  return past_courses(before, *smooth, phases);
}

} // namespace

Backtest backtest(const DailySeries& series, const Phases& phases, int forecast_days) {
  Backtest result;
  result.events = {no_scores(NightEvent::stirs), no_scores(NightEvent::holds)};
  std::set<double> gates_c;
  BenchAir whole;
  whole.air = series;
  fill_short_holes(whole.air);
  const std::vector<SeasonWords> seasons = seasons_with_words(whole, phases);
  for (std::size_t i = backtest_least_seasons; i < seasons.size(); ++i) {
    const SeasonWords& season = seasons[i];
    if (season.searched.missing > most_missing_in_test * nights_searched) {
      continue;
    }
    std::optional<PastCourses> past = courses_before(series, phases, season.searched.season);
    if (!past) {
      continue;
    }
    const std::size_t first = i - std::min<std::size_t>(i, backtest_most_seasons);
    const std::span<const SeasonWords> before = std::span{seasons}.subspan(first, i - first);
    const Test test{series, season, std::move(*past), forecast_days};
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
