#include "climate/seasons.hpp"

#include "climate/night_words.hpp"

#include <algorithm>

namespace nightsow::climate {

namespace {

// The first time the recurring day comes on or after `from`.
Date next_on_or_after(Date from, date::month_day day) {
  const Date this_year = in_year(day, year_of(from));
  return this_year >= from ? this_year : in_year(day, year_of(from) + 1);
}

Date last_before(Date from, date::month_day day) {
  const Date this_year = in_year(day, year_of(from));
  return this_year < from ? this_year : in_year(day, year_of(from) - 1);
}

Season season_from(const Phases& phases, Date hottest) {
  Season season;
  season.hottest = hottest;
  season.limb_begins = next_on_or_after(hottest, phases.limb_begins);
  season.coldest = next_on_or_after(season.limb_begins, phases.coldest);
  season.next_hottest = next_on_or_after(hottest + Days{1}, phases.hottest);
  season.planning_begins = last_before(hottest, phases.warming_middle);
  season.next_planning_begins = last_before(season.next_hottest, phases.warming_middle);
  const Days half_limb{days_between(season.limb_begins, season.coldest) / 2};
  season.name = year_of(season.limb_begins + half_limb);
  return season;
}

} // namespace

Date last_on_or_before(Date from, date::month_day day) {
  return last_before(from + Days{1}, day);
}

int first_allowed_day(const Season& season) {
  return std::max(holds_of - 1, days_between(season.hottest, season.limb_begins));
}

Date first_allowed_date(const Season& season) {
  return season.hottest + Days{first_allowed_day(season)};
}

Season season_of(const Phases& phases, Date day) {
  return season_from(phases, last_on_or_before(day, phases.hottest));
}

Season season_named(const Phases& phases, int name) {
  // The middle of the limb follows the hottest night by less than a year.
  const Season candidate = season_from(phases, in_year(phases.hottest, name));
  return candidate.name == name ? candidate
                                : season_from(phases, in_year(phases.hottest, name - 1));
}

Season season_planned_on(const Phases& phases, Date day) {
  const Season season = season_of(phases, day);
  return day >= season.next_planning_begins ? season_from(phases, season.next_hottest) : season;
}

Season season_after(const Phases& phases, const Season& season, Date today) {
  const Season next = season_of(phases, season.next_hottest);
  return next.next_planning_begins <= today ? season_planned_on(phases, today) : next;
}

} // namespace nightsow::climate
