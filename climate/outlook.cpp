#include "climate/outlook.hpp"

#include "climate/member_courses.hpp"
#include "climate/past_seasons.hpp"
#include "climate/persistence.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace nightsow::climate {

namespace {

constexpr std::array shifts_days{-14, -7, 0, 7, 14};
constexpr std::array wide_kelvin{-1.0, 0.0, 1.0};

std::vector<Season> seasons_before(const PastCourses& past, const Season& target) {
  std::vector<Season> seasons;
  std::copy_if(past.seasons.begin(),
               past.seasons.end(),
               std::back_inserter(seasons),
               [&](const Season& season) { return season.hottest < target.hottest; });
  if (seasons.size() > static_cast<std::size_t>(most_seasons)) {
    seasons.erase(seasons.begin(), seasons.end() - most_seasons);
  }
  return seasons;
}

// The days of the past that stand for the first day of the target season, one a member: whole years
// before it, to the nearest day, so that leap days shift no member against another.
std::vector<Date> starts_of(const std::vector<Season>& seasons, const Season& target) {
  std::vector<Date> starts;
  for (const Season& season : seasons) {
    const Days back{static_cast<int>(std::lround((target.name - season.name) * days_a_year))};
    for (const int shift : shifts_days) {
      starts.push_back(target.hottest - back + Days{shift});
    }
  }
  return starts;
}

// Where the readings end.
struct Known {
  Date last_night{};
  Date last_day{};
  LastDays last_days;
};

Date last_maximum(const DailySeries& air, Date last_night) {
  for (Date day = last_night; day > last_night - Days{7}; day -= Days{1}) {
    const std::optional<std::size_t> at = air.index_of(day);
    if (at && !std::isnan(air.day_c()[*at])) {
      return day;
    }
  }
  return last_night;
}

std::optional<Known> known_end(const PastCourses& past, const BenchAir& known) {
  constexpr int remembered_days = 90;
  const std::optional<Date> last = last_night(known.air);
  if (!last) {
    return std::nullopt;
  }
  const Date last_day = last_maximum(known.air, *last);
  const Date first = last_day - Days{remembered_days - 1};
  const Departures end =
      departures(known.air.part(first, days_between(first, *last) + 1), past.present);
  return Known{*last, last_day, last_days(end, *last, last_day)};
}

// The member's own season at the same time of the year, as it was then.
LastDays member_last_days(const PastCourses& past, const Known& known, Date first, Date start) {
  return last_days(past.departures,
                   start + Days{days_between(first, known.last_night)},
                   start + Days{days_between(first, known.last_day)});
}

void add_member(const DepartureRow& row,
                const std::vector<double>& smooth_c,
                Date start,
                std::vector<float>& values_c) {
  const std::vector<float> departures_k = row.from(start, static_cast<int>(smooth_c.size()));
  const std::size_t before = values_c.size();
  values_c.resize(before + smooth_c.size());
  for (std::size_t t = 0; t < smooth_c.size(); ++t) {
    // What a past season lacks is taken as usual.
    const double departure_k =
        std::isnan(departures_k[t]) ? 0.0 : static_cast<double>(departures_k[t]);
    values_c[before + t] = static_cast<float>(smooth_c[t] + departure_k);
  }
}

struct Elements {
  Courses night;
  Courses day;
};

// A maximum that is older than the last night has been forgotten that much more.
MemoryWeights night_weights(int nights_ahead, int days_ahead) {
  MemoryWeights weights = night_memory(nights_ahead);
  weights.last_day = night_memory(days_ahead).last_day;
  return weights;
}

// What a member is moved by on each day, given how it differed.
template <class Remembered>
void add_remembered(const LastDays& differs,
                    std::span<const MemoryWeights> weights,
                    Remembered remembered_k,
                    std::span<float> course_c) {
  for (std::size_t t = 0; t < weights.size(); ++t) {
    course_c[t] += static_cast<float>(remembered_k(differs, weights[t]));
  }
}

void add_memory(const PastCourses& past,
                const Known& known,
                Date first,
                const std::vector<Date>& starts,
                Elements& elements) {
  const int days = elements.night.days;
  const int last_night = days_between(first, known.last_night);
  const int last_day = days_between(first, known.last_day);
  std::vector<MemoryWeights> night;
  for (int t = std::max(0, last_night + 1); t < std::min(days, last_night + memory_days); ++t) {
    night.push_back(night_weights(t - last_night, t - last_day));
  }
  std::vector<MemoryWeights> day;
  for (int t = std::max(0, last_day + 1); t < std::min(days, last_day + memory_days); ++t) {
    day.push_back(day_memory(t - last_day));
  }
  const std::size_t night_begin = first_unknown(last_night, days);
  const std::size_t day_begin = first_unknown(last_day, days);
  for (std::size_t i = 0; i < starts.size(); ++i) {
    const LastDays differs =
        difference(known.last_days, member_last_days(past, known, first, starts[i]));
    const auto member = static_cast<int>(i);
    add_remembered(
        differs, night, remembered_night_k, elements.night.of(member).subspan(night_begin));
    add_remembered(differs, day, remembered_day_k, elements.day.of(member).subspan(day_begin));
  }
}

Elements past_elements(const PastCourses& past,
                       const Season& season,
                       int days,
                       const std::vector<Date>& starts) {
  Elements elements{{days, {}}, {days, {}}};
  const std::vector<double> night_c = past.present.night.values_c(season.hottest, days);
  const std::vector<double> day_c =
      past.present.day
          ? past.present.day->values_c(season.hottest, days)
          : std::vector<double>(static_cast<std::size_t>(days), static_cast<double>(missing_c));
  elements.night.values_c.reserve(starts.size() * night_c.size());
  elements.day.values_c.reserve(starts.size() * day_c.size());
  for (const Date start : starts) {
    add_member(past.departures.night, night_c, start, elements.night.values_c);
    add_member(past.departures.day, day_c, start, elements.day.values_c);
  }
  return elements;
}

void scale_strays(int last, Courses& courses) {
  const std::size_t begin = first_unknown(last, courses.days);
  int ahead = static_cast<int>(begin) - last;
  Moves moves;
  for (const Spread& members : spreads_from(courses, begin)) {
    moves.add(members.mean_c, members.mean_c, stray_factor(ahead++));
  }
  move_from(begin, moves, courses);
}

// A forecast of one element, from the first day of the season on.
struct Expected {
  std::vector<float> values_c;
  int issued = 0;    ///< the first day it tells of
  double lag1 = 0.0; ///< how much of a departure is left a day later
};

// Each day of the forecast and the members of that day are weighed by their variances; what it
// moved the last of its days by is forgotten as nights forget. Returns the days it had a say in.
int weigh_forecast(const Expected& expected, int last, Courses& courses) {
  int days = 0;
  double moved_k = 0.0;
  const std::size_t begin = first_unknown(last, courses.days);
  const std::vector<Spread> spreads = spreads_from(courses, begin);
  Moves moves;
  for (std::size_t i = 0; i < spreads.size(); ++i) {
    const Spread& members = spreads[i];
    const auto expected_c = static_cast<double>(expected.values_c[begin + i]);
    if (std::isnan(expected_c)) {
      moved_k *= expected.lag1;
      moves.add(members.mean_c, members.mean_c + moved_k, 1.0);
      continue;
    }
    const double error_k = forecast_error_k(static_cast<int>(begin + i) - expected.issued + 1);
    const double weight = members.variance / (members.variance + error_k * error_k);
    moved_k = weight * (expected_c - members.mean_c);
    moves.add(members.mean_c, members.mean_c + moved_k, std::sqrt(1.0 - weight));
    ++days;
  }
  move_from(begin, moves, courses);
  return days;
}

int weigh_forecast(const PastCourses& past,
                   const DailySeries& forecast,
                   Date first,
                   const Known& known,
                   Elements& elements) {
  if (forecast.empty()) {
    return 0;
  }
  const int issued = days_between(first, forecast.first());
  const int days = elements.night.days;
  weigh_forecast({forecast.days_from(first, days),
                  issued,
                  past.smooth.day ? past.smooth.day->residual_lag1 : 0.0},
                 days_between(first, known.last_day),
                 elements.day);
  return weigh_forecast(
      {forecast.nights_from(first, days), issued, past.smooth.night.residual_lag1},
      days_between(first, known.last_night),
      elements.night);
}

// The members once more for each level that the bench, or so short a record, may be wrong by.
void add_raised(std::span<const float> course_c, double by_k, std::vector<float>& values_c) {
  const std::size_t before = values_c.size();
  values_c.insert(values_c.end(), course_c.begin(), course_c.end());
  const auto raise_k = static_cast<float>(by_k);
  for (std::size_t i = before; i < values_c.size(); ++i) {
    values_c[i] += raise_k;
  }
}

void add_members(Elements& elements, CelsiusDelta night_doubt, Outlook& outlook) {
  outlook.night_c.reserve(elements.night.values_c.size());
  outlook.day_c.reserve(elements.day.values_c.size());
  const std::span<const double> sides(wide_kelvin);
  const std::span<const double> none = sides.subspan(1, 1);
  for (int member = 0; member < elements.night.members(); ++member) {
    for (const double level_k : outlook.past_seasons < few_seasons ? sides : none) {
      for (const double side : night_doubt.kelvin() > 0.0 ? sides : none) {
        const double night_k = level_k + side * night_doubt.kelvin();
        add_raised(elements.night.of(member), night_k, outlook.night_c);
        add_raised(elements.day.of(member), level_k, outlook.day_c);
        ++outlook.members;
      }
    }
  }
}

// A day that nobody read stays what the member had: unknown days are as uncertain as those to come.
void put_observed(std::span<const float> observed_c, std::span<float> member_c) {
  for (std::size_t t = 0; t < observed_c.size(); ++t) {
    if (!std::isnan(observed_c[t])) {
      member_c[t] = observed_c[t];
    }
  }
}

void put_observed(const BenchAir& known, Outlook& outlook) {
  outlook.observed_night_c = known.air.nights_from(outlook.first, outlook.observed_days);
  outlook.observed_day_c = known.air.days_from(outlook.first, outlook.observed_days);
  const auto days = static_cast<std::size_t>(outlook.days);
  for (std::size_t member = 0; member < static_cast<std::size_t>(outlook.members); ++member) {
    put_observed(outlook.observed_night_c, std::span(outlook.night_c).subspan(member * days, days));
    put_observed(outlook.observed_day_c, std::span(outlook.day_c).subspan(member * days, days));
  }
}

} // namespace

PastCourses past_courses(const BenchAir& bench,
                         const SmoothYear& smooth,
                         const SmoothYear& present,
                         const Phases& phases) {
  PastCourses past{smooth, present, departures(bench.air, smooth), {}};
  for (const SearchedSeason& searched : searched_seasons(bench, phases)) {
    if (searched.few_missing()) {
      past.seasons.push_back(searched.season);
    }
  }
  return past;
}

PastCourses past_courses(const BenchAir& bench, const SmoothYear& smooth, const Phases& phases) {
  return past_courses(bench, smooth, smooth, phases);
}

std::span<const float> Outlook::night_of(int member) const {
  return std::span<const float>(night_c).subspan(static_cast<std::size_t>(member) *
                                                     static_cast<std::size_t>(days),
                                                 static_cast<std::size_t>(days));
}

std::span<const float> Outlook::day_of(int member) const {
  return std::span<const float>(day_c).subspan(static_cast<std::size_t>(member) *
                                                   static_cast<std::size_t>(days),
                                               static_cast<std::size_t>(days));
}

double stray_factor(int days_ahead) {
  constexpr double near = 0.75;
  constexpr double far = 1.1;
  constexpr double near_until = 8.0;
  constexpr double far_from = 14.0;
  const double share = (static_cast<double>(days_ahead) - near_until) / (far_from - near_until);
  return std::lerp(near, far, std::clamp(share, 0.0, 1.0));
}

double forecast_error_k(int day_of_forecast) {
  return 1.6 + 0.2 * (day_of_forecast - 1);
}

Outlook season_outlook(const PastCourses& past, const BenchAir& known, const Season& season) {
  Outlook outlook;
  outlook.first = season.hottest;
  outlook.days = days_between(season.hottest, season.next_hottest);
  const std::vector<Season> seasons = seasons_before(past, season);
  outlook.past_seasons = static_cast<int>(seasons.size());
  const std::vector<Date> starts = starts_of(seasons, season);
  Elements elements = past_elements(past, season, outlook.days, starts);
  if (const std::optional<Known> end = known_end(past, known)) {
    const int last = days_between(season.hottest, end->last_night);
    outlook.observed_days = std::clamp(last + 1, 0, outlook.days);
    add_memory(past, *end, season.hottest, starts, elements);
    scale_strays(last, elements.night);
    scale_strays(days_between(season.hottest, end->last_day), elements.day);
    outlook.forecast_days = weigh_forecast(past, known.forecast, season.hottest, *end, elements);
  }
  add_members(elements, known.night_doubt, outlook);
  put_observed(known, outlook);
  return outlook;
}

DateSpread date_spread(Date first, std::vector<std::optional<int>> days) {
  DateSpread spread;
  if (days.empty()) {
    spread.never = 1.0;
    return spread;
  }
  // Never sorts behind every day.
  std::sort(
      days.begin(), days.end(), [](const auto& a, const auto& b) { return a && (!b || *a < *b); });
  const auto n = static_cast<double>(days.size());
  const auto percentile = [&](double p) -> std::optional<Date> {
    const auto rank = static_cast<std::size_t>(std::max(1.0, std::ceil(p * n - 1e-9)));
    const std::optional<int>& day = days[rank - 1];
    return day ? std::optional<Date>{first + Days{*day}} : std::nullopt;
  };
  spread.p10 = percentile(0.1);
  spread.p50 = percentile(0.5);
  spread.p90 = percentile(0.9);
  spread.never = static_cast<double>(std::count(days.begin(), days.end(), std::nullopt)) / n;
  return spread;
}

DateSpread outlook_mild_days(const Outlook& outlook,
                             std::optional<Celsius> day_limit,
                             int first_allowed) {
  const auto searched = static_cast<std::size_t>(std::min(outlook.days, nights_searched));
  std::vector<std::optional<int>> mild;
  mild.reserve(static_cast<std::size_t>(outlook.members));
  for (int member = 0; member < outlook.members; ++member) {
    mild.push_back(
        first_mild_day(outlook.day_of(member).first(searched), day_limit, first_allowed));
  }
  return date_spread(outlook.first, std::move(mild));
}

OutlookWords outlook_words(const Outlook& outlook, const NightLimit& limit, int first_allowed) {
  const auto searched = static_cast<std::size_t>(std::min(outlook.days, nights_searched));
  std::vector<std::optional<int>> stirs;
  std::vector<std::optional<int>> settles;
  OutlookWords words;
  int relapsing = 0;
  for (int member = 0; member < outlook.members; ++member) {
    const std::span<const float> night_c = outlook.night_of(member);
    const NightWords season = night_words(
        night_c.first(searched), outlook.day_of(member).first(searched), limit, first_allowed);
    stirs.push_back(season.stirs.day);
    settles.push_back(season.settles.day);
    words.holds_day.push_back(season.holds.day);
    if (season.holds.day) {
      // Where it holds already, what matters is a relapse after watering now.
      const int after = std::max(*season.holds.day, outlook.observed_days - 1);
      relapsing += relapses(night_c, limit, after) ? 1 : 0;
    }
  }
  words.stirs = date_spread(outlook.first, std::move(stirs));
  words.settles = date_spread(outlook.first, std::move(settles));
  words.holds = date_spread(outlook.first, words.holds_day);
  words.relapse = outlook.members > 0 ? static_cast<double>(relapsing) / outlook.members : 0.0;
  const auto seen = std::min(searched, outlook.observed_night_c.size());
  words.observed = night_words(std::span(outlook.observed_night_c).first(seen),
                               std::span(outlook.observed_day_c).first(seen),
                               limit,
                               first_allowed);
  return words;
}

} // namespace nightsow::climate
