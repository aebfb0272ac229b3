#include "planner/answers/pot_weather.hpp"

#include "planner/answers/make_heads.hpp"
#include "planner/model/pot_places.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::planner {

namespace {

using climate::Season;

// One season that the pot stands through.
struct Stay {
  Season season;
  bool season_before = false; ///< wet before its hottest night
  Date water{};
  Date today{}; ///< nothing later is told
};

std::optional<HeatMat> mat_named(const Garden& garden, const std::string& name) {
  const auto found = std::find_if(
      garden.mats.begin(), garden.mats.end(), [&](const HeatMat& mat) { return mat.name == name; });
  return found == garden.mats.end() ? std::nullopt : std::optional{*found};
}

const std::vector<SeedCourse>& courses_at(const LoadedGarden& garden,
                                          BenchSeasons& seasons,
                                          const PotPlace& place,
                                          const Stay& stay) {
  return seasons.courses({bench_named(garden.garden, place.bench).name,
                          stay.season,
                          stay.season_before,
                          mat_named(garden.garden, place.mat)});
}

// The places in the order in which the pot stood there in the season.
std::vector<PotPlace> places_in(const SowingFacts& facts, Date first, Date ends) {
  std::vector<PotPlace> places;
  for (const PotPlace& place : facts.places) {
    if (place.from <= first) {
      places.assign(1, place);
    } else if (places.empty() || place.from < ends) {
      places.push_back(place);
    }
  }
  return places;
}

SeedCourse with_dry_spells(SeedCourse course, const SowingFacts& facts, Date today) {
  const Date last = std::min(today, course.first + Days{course.days() - 1});
  for (const DrySpell& spell : facts.dry) {
    if (!spell.to && spell.from < course.first) {
      continue; // a rest that nobody ended goes into no other season
    }
    const Date from = std::max(spell.from, course.first);
    const Date to = std::min(spell.to.value_or(last), last);
    if (from <= to) {
      const int first = days_between(course.first, from);
      course = left_dry(std::move(course), first, first + days_between(from, to));
    }
  }
  return course;
}

// Courses differ only where nobody has read yet.
bool read_to_end(const LoadedGarden& garden, const SeedCourse& course) {
  return !garden.station.empty() && garden.station.last() >= course.first + Days{course.days() - 1};
}

PotSeason pot_season(const LoadedGarden& garden,
                     BenchSeasons& seasons,
                     const SowingFacts& facts,
                     const Stay& stay,
                     PotWeather& weather) {
  const std::vector<SeedCourse>& first = courses_at(garden, seasons, facts.places.front(), stay);
  const Date begins = first.front().first;
  const Date ends = begins + Days{first.front().days()};
  const std::vector<PotPlace> places = places_in(facts, begins, ends);
  std::vector<const std::vector<SeedCourse>*> at;
  std::size_t count = read_to_end(garden, first.front()) ? 1 : first.size();
  for (const PotPlace& place : places) {
    at.push_back(&courses_at(garden, seasons, place, stay));
    count = std::min(count, at.back()->size());
  }
  PotSeason season;
  const bool plain = places.size() == 1 && facts.dry.empty();
  if (!plain) {
    weather.own.emplace_back();
  }
  for (std::size_t i = 0; i < count; ++i) {
    if (plain) {
      season.courses.push_back(&(*at.front())[i]);
      continue;
    }
    std::vector<StoodFrom> stood;
    for (std::size_t place = 0; place < places.size(); ++place) {
      stood.push_back({days_between(begins, places[place].from), &(*at[place])[i]});
    }
    weather.own.back().push_back(with_dry_spells(course_of_moved(stood), facts, stay.today));
  }
  if (!plain) {
    for (const SeedCourse& course : weather.own.back()) {
      season.courses.push_back(&course);
    }
  }
  season.days = season_days(stay.season, begins);
  season.water = std::clamp(days_between(begins, stay.water), 0, days_between(begins, ends) - 1);
  season.last = std::min(days_between(begins, stay.today), days_between(begins, ends) - 1);
  return season;
}

// The first watering of the season that is written down, else the day its nights begin to cool;
// empty where it is not wet by today.
std::optional<Date> watered_again(const SowingFacts& facts, const Season& season, Date today) {
  for (const Date day : facts.waterings) {
    if (day >= season.hottest && day < season.next_hottest) {
      return day;
    }
  }
  const bool left_dry = !facts.dry.empty() && !facts.dry.back().to;
  return left_dry || season.limb_begins > today ? std::nullopt : std::optional{season.limb_begins};
}

bool is_written(const SowingFacts& facts, Date watered) {
  return std::find(facts.waterings.begin(), facts.waterings.end(), watered) !=
         facts.waterings.end();
}

int unread_in(const LoadedGarden& garden,
              BenchSeasons& seasons,
              const SowingFacts& facts,
              const Stay& stay) {
  const std::string bench = bench_named(garden.garden, facts.places.back().bench).name;
  const climate::Outlook& outlook = seasons.season(bench, stay.season).outlook;
  const Date to = std::min(stay.today, stay.season.next_hottest);
  int unread = 0;
  for (Date day = std::max(stay.water, outlook.first); day < to; day += Days{1}) {
    const int index = days_between(outlook.first, day);
    const bool read = index < outlook.observed_days &&
                      !std::isnan(outlook.observed_night_c[static_cast<std::size_t>(index)]);
    unread += read ? 0 : 1;
  }
  return unread;
}

} // namespace

std::optional<PotWeather> pot_weather(const LoadedGarden& garden,
                                      BenchSeasons& seasons,
                                      const SowingFacts& facts,
                                      Date first_water,
                                      Date today) {
  const climate::Phases& phases = *seasons.station().turning.phases;
  Stay stay{climate::season_planned_on(phases, first_water), false, first_water, today};
  stay.season_before = first_water < stay.season.hottest;
  const Season earliest =
      stay.season_before ? climate::season_of(phases, stay.season.hottest - Days{1}) : stay.season;
  if (usable_seasons(seasons.station(), earliest) == 0) {
    return std::nullopt;
  }
  PotWeather weather;
  for (std::optional<Date> water = first_water; water;) {
    stay.water = *water;
    weather.seasons.push_back(pot_season(garden, seasons, facts, stay, weather));
    weather.wet_since = stay.water;
    weather.nights_unread += unread_in(garden, seasons, facts, stay);
    if (today < stay.season.next_hottest) {
      break;
    }
    stay = {climate::season_of(phases, stay.season.next_hottest), false, {}, today};
    water = watered_again(facts, stay.season, today);
  }
  if (weather.seasons.size() > 1 && !is_written(facts, weather.wet_since)) {
    weather.notes.push_back({ReasonCode::watered_again_taken, {{"when", weather.wet_since}}});
  }
  weather.first = weather.seasons.front().courses.front()->first;
  return weather;
}

std::vector<PotSeason> seasons_until(const PotWeather& weather, Date looked) {
  std::vector<PotSeason> until;
  for (PotSeason season : weather.seasons) {
    const int day = days_between(season.courses.front()->first, looked);
    if (until.empty() || day >= season.water) {
      season.last = std::max(season.water, std::min(season.last, day));
      until.push_back(std::move(season));
    }
  }
  return until;
}

int day_of_pot(const PotWeather& weather, const PotSeason& season, int day) {
  return days_between(weather.first, season.courses.front()->first) + day;
}

} // namespace nightsow::planner
