#include "climate/past_seasons.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::climate {

namespace {

int count_missing(const std::vector<float>& night_c) {
  return static_cast<int>(
      std::count_if(night_c.begin(), night_c.end(), [](float c) { return std::isnan(c); }));
}

PastSeason words_of(const BenchAir& bench,
                    const SearchedSeason& searched,
                    const NightLimit& limit) {
  const Season& season = searched.season;
  PastSeason past;
  past.season = season;
  past.missing = searched.missing;
  const std::vector<float> day_c = bench.air.days_from(season.hottest, nights_searched);
  past.words = night_words(searched.night_c, day_c, limit, first_allowed_day(season));
  past.usable = searched.few_missing() && !past.words.stirs.unknown && !past.words.holds.unknown;
  return past;
}

} // namespace

std::vector<SearchedSeason> searched_seasons(const BenchAir& bench, const Phases& phases) {
  std::vector<SearchedSeason> seasons;
  if (bench.air.empty()) {
    return seasons;
  }
  Season season = season_of(phases, bench.air.first());
  while (season.hottest + Days{nights_searched - 1} <= bench.air.last()) {
    SearchedSeason searched{season, bench.air.nights_from(season.hottest, nights_searched)};
    searched.missing = count_missing(searched.night_c);
    if (season.hottest >= bench.air.first()) {
      seasons.push_back(std::move(searched));
    }
    season = season_of(phases, season.next_hottest);
  }
  return seasons;
}

std::vector<PastSeason> past_seasons(const BenchAir& bench,
                                     const Phases& phases,
                                     const NightLimit& limit) {
  std::vector<PastSeason> seasons;
  for (const SearchedSeason& searched : searched_seasons(bench, phases)) {
    if (2 * searched.missing <= nights_searched) {
      seasons.push_back(words_of(bench, searched, limit));
    }
  }
  return seasons;
}

Binding binding(std::span<const PastSeason> seasons) {
  Binding result;
  for (const PastSeason& past : seasons) {
    if (!past.usable) {
      continue;
    }
    ++result.seasons;
    const std::optional<int> holds = past.words.holds.day;
    result.never += holds ? 0 : 1;
    result.late += !holds || *holds > first_allowed_day(past.season) + binds_slack_days ? 1 : 0;
  }
  result.binds = 2 * result.late > result.seasons;
  return result;
}

YearsNeverCool years_never_cool(const BenchAir& bench,
                                date::month_day from,
                                const NightLimit& limit) {
  constexpr int whole_year = 365;
  YearsNeverCool result;
  if (bench.air.empty()) {
    return result;
  }
  for (int year = year_of(bench.air.first()); year <= year_of(bench.air.last()); ++year) {
    const Date first = in_year(from, year);
    const bool inside =
        first >= bench.air.first() && first + Days{whole_year - 1} <= bench.air.last();
    const std::vector<float> night_c = bench.air.nights_from(first, whole_year);
    if (!inside || count_missing(night_c) > most_missing * whole_year) {
      continue;
    }
    const std::vector<float> day_c = bench.air.days_from(first, whole_year);
    ++result.years;
    result.never += night_words(night_c, day_c, limit, 0).holds.day ? 0 : 1;
  }
  return result;
}

} // namespace nightsow::climate
