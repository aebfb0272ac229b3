#include "planner/answers/learn.hpp"

#include "planner/answers/asked_kinds.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/known_sowings.hpp"
#include "planner/answers/learned_germinations.hpp"
#include "planner/answers/learned_limits.hpp"
#include "planner/answers/learned_trials.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/model/bench_seasons.hpp"
#include "planner/model/learned_effects.hpp"
#include "planner/model/learned_shares.hpp"
#include "planner/model/learned_times.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

namespace nightsow::planner {

namespace {

using Sowings = std::vector<const KnownSowing*>;

// Families are no taxa that the catalogue finds a rule for.
std::string accepted_name(const LoadedGarden& garden, const std::string& typed) {
  for (const species_rules::FamilyFile& family : garden.catalogue->families()) {
    if (family.family == typed) {
      return typed;
    }
  }
  return typed_rule(*garden.catalogue, typed).accepted;
}

std::set<std::string> names_asked(const LoadedGarden& garden,
                                  const std::vector<std::string>& typed) {
  std::set<std::string> names;
  for (const std::string& taxon : typed) {
    names.insert(accepted_name(garden, taxon));
  }
  return names;
}

Sowings those_of(const KnownSowings& record, const std::set<std::string>& names) {
  Sowings list;
  for (const KnownSowing& sowing : record.sowings) {
    if (names.empty() || std::any_of(names.begin(), names.end(), [&](const std::string& name) {
          return is_of(sowing, name);
        })) {
      list.push_back(&sowing);
    }
  }
  return list;
}

Count count_of(const KnownSowing& sowing) {
  const int came = sowing.told->came();
  return {came, std::max(came, sowing.told->sowing->seeds)};
}

std::vector<SownKind> sown_kinds(const LoadedGarden& garden,
                                 const KnownSowings& record,
                                 const std::vector<SharedCounts>& others) {
  std::vector<SownKind> kinds;
  for (const KnownSowing& sowing : record.sowings) {
    if (sowing.looked_at_to_the_end) {
      kinds.push_back(
          {sowing.rule.accepted, sowing.genus, sowing.rule.family, count_of(sowing), 1.0});
    }
  }
  for (const SharedCounts& garden_of_others : others) {
    for (const SharedSowing& sowing : garden_of_others.sowings) {
      if (const auto found = garden.catalogue->rule_for(sowing.taxon).found) {
        kinds.push_back({found->accepted,
                         found->accepted.substr(0, found->accepted.find(' ')),
                         found->family,
                         {sowing.came, std::max(sowing.came, sowing.seeds)},
                         others_weigh});
      }
    }
  }
  return kinds;
}

std::string word_of(KindLevel level) {
  switch (level) {
  case KindLevel::garden:
    return "garden";
  case KindLevel::family:
    return "family";
  case KindLevel::genus:
    return "genus";
  case KindLevel::taxon:
    break;
  }
  return "taxon";
}

LearnedShareLine line_of(const LearnedShare& share) {
  return {word_of(share.level),
          share.name,
          share.sowings,
          share.count.came,
          share.count.sown,
          rounded_share(share.share),
          rounded_share(share.limits.low),
          rounded_share(share.limits.high),
          rounded_share(share.leaned)};
}

/// Where a kind stands among its relatives: family, genus, taxon; the higher levels alone first.
using Standing = std::vector<std::string>;

std::map<std::string, Standing> standings_of(const std::vector<SownKind>& kinds) {
  std::map<std::string, Standing> standings;
  for (const SownKind& kind : kinds) {
    standings[kind.family] = {kind.family};
    standings[kind.genus] = {kind.family, kind.genus};
    // A genus that was sown as such stands there as a genus already.
    standings.try_emplace(kind.taxon, Standing{kind.family, kind.genus, kind.taxon});
  }
  return standings;
}

// The garden always; of the rest what holds or is held by a kind asked for, each under the higher
// level that it leans on.
std::vector<LearnedShareLine> share_lines(const std::vector<SownKind>& kinds,
                                          const Sowings& asked,
                                          bool all) {
  std::set<std::string> names;
  for (const KnownSowing* sowing : asked) {
    names.insert({sowing->rule.accepted, sowing->genus, sowing->rule.family});
  }
  const std::map<std::string, Standing> standings = standings_of(kinds);
  std::map<Standing, LearnedShareLine> lines;
  for (const LearnedShare& share : learned_shares(kinds)) {
    const Standing standing = share.name.empty() ? Standing{} : standings.at(share.name);
    if (all || share.name.empty() || names.contains(share.name)) {
      lines.try_emplace(standing, line_of(share));
    }
  }
  std::vector<LearnedShareLine> list;
  list.reserve(lines.size());
  for (auto& [standing, line] : lines) {
    list.push_back(std::move(line));
  }
  return list;
}

// Up to the end of the first season: what comes in a later one comes after another first water.
TimedSowing timed(const KnownSowing& sowing) {
  constexpr int days_of_a_season = 300;
  TimedSowing timed{count_of(sowing).sown, {}};
  for (const CameBy& look : sowing.told->looks) {
    const int day = days_between(*sowing.told->first_water, look.on);
    if (day > 0 && day < days_of_a_season) {
      timed.looks.push_back({day, look.came});
    }
  }
  return timed;
}

std::optional<DaysBetween> days_of(const std::optional<BetweenLooks>& days) {
  return days ? std::optional{DaysBetween{days->after, days->by}} : std::nullopt;
}

std::vector<LearnedTimesLine> time_lines(const Sowings& sowings) {
  std::map<std::string, std::vector<TimedSowing>> kinds;
  for (const KnownSowing* sowing : sowings) {
    if (sowing->told->counted() && sowing->told->first_water) {
      kinds[sowing->rule.accepted].push_back(timed(*sowing));
    }
  }
  std::vector<LearnedTimesLine> lines;
  for (const auto& [taxon, timed_sowings] : kinds) {
    const LearnedTimes times = learned_times(timed_sowings);
    if (times.sowings == 0) {
      continue;
    }
    LearnedTimesLine line;
    line.taxon = taxon;
    line.sowings = times.sowings;
    line.seeds = times.seeds;
    line.came = times.came;
    line.came_share = rounded_share(times.came_share);
    line.low = rounded_share(times.came > 0 ? times.came_limits.low : 0.0);
    line.high =
        rounded_share(times.came > 0 ? times.came_limits.high : wilson({0, times.seeds}).high);
    line.first = days_of(times.first);
    line.half = days_of(times.half);
    line.half_sown = days_of(times.half_sown);
    lines.push_back(std::move(line));
  }
  return lines;
}

std::vector<LearnedEffectLine> effect_lines(const KnownSowings& record) {
  std::vector<EffectSowing> sowings;
  for (const KnownSowing& sowing : record.sowings) {
    const RecordedSowing& sown = *sowing.told->sowing;
    if (sowing.looked_at_to_the_end) {
      const std::string arm = sown.trial.empty() ? "" : " " + sown.trial + " " + sown.arm;
      sowings.push_back(
          {sowing.rule.accepted + arm, count_of(sowing), sown.pots, sowing.age_years, sown.bench});
    }
  }
  std::vector<LearnedEffectLine> lines;
  for (const LearnedEffect& effect : learned_effects(sowings)) {
    LearnedEffectLine line;
    line.of = effect.against.empty() ? "age" : "bench";
    line.bench = effect.bench;
    line.against = effect.against;
    line.sowings = effect.sowings;
    if (effect.refused) {
      line.refused =
          *effect.refused == EffectRefusal::nothing_differs ? "nothing_differs" : "too_few_sowings";
    } else {
      line.usual_share = rounded_share(effect.usual_share);
      line.share = rounded_share(effect.share);
      line.low = rounded_share(effect.limits.low);
      line.high = rounded_share(effect.limits.high);
      line.settled = effect.settled;
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

void count_sowings(const Sowings& sowings, LearnAnswer& answer) {
  std::set<int> seasons;
  for (const KnownSowing* sowing : sowings) {
    ++answer.sowings;
    seasons.insert(sowing->season);
    answer.counted += sowing->told->counted() ? 1 : 0;
    if (sowing->told->counted() && !sowing->looked_at_to_the_end) {
      ++(sowing->closed == nullptr ? answer.too_early : answer.closed_early);
    }
  }
  answer.seasons = static_cast<int>(seasons.size());
}

std::string shelter_of(const Garden& garden, const std::string& bench) {
  return bench_named(garden, bench).shelter;
}

SharedSowing shared(const KnownSowing& sowing,
                    const std::vector<int>& seasons,
                    const Garden& garden) {
  const RecordedSowing& sown = *sowing.told->sowing;
  SharedSowing given;
  given.taxon = sowing.rule.accepted;
  given.seeds = count_of(sowing).sown;
  given.came = sowing.told->came();
  given.season = static_cast<int>(std::lower_bound(seasons.begin(), seasons.end(), sowing.season) -
                                  seasons.begin()) +
                 1;
  if (sowing.age_years) {
    given.age_years = std::round(2.0 * *sowing.age_years) / 2.0;
  }
  given.shelter = shelter_of(garden, sown.bench);
  given.trial = !sown.trial.empty();
  if (sowing.told->first_water) {
    for (const CameBy& look : sowing.told->looks) {
      given.looks.emplace_back(days_between(*sowing.told->first_water, look.on), look.came);
    }
  }
  return given;
}

SharedClimate shared_climate(const StationClimate& station, Date today) {
  SharedClimate climate;
  const climate::Season season = climate::season_of(*station.turning.phases, today);
  climate.warmest_nights_c =
      static_cast<int>(std::lround(station.smooth.night.value_c(season.hottest)));
  climate.coldest_nights_c =
      static_cast<int>(std::lround(station.smooth.night.value_c(season.coldest)));
  climate.warmest_days_c =
      station.smooth.day
          ? static_cast<int>(std::lround(station.smooth.day->value_c(season.hottest)))
          : climate.warmest_nights_c;
  return climate;
}

} // namespace

LearnAnswer learn(const LoadedGarden& garden, const LearnRequest& request) {
  BenchSeasons seasons(garden);
  const KnownSowings record = known_sowings(garden, seasons.station().turning.phases);
  const std::set<std::string> names = names_asked(garden, request.taxa);
  const Sowings asked = those_of(record, names);
  LearnAnswer answer;
  answer.garden = garden_head(garden.garden);
  answer.today = garden.today;
  answer.asked = request.taxa;
  answer.unknown = record.unknown;
  for (const SharedCounts& others : request.others) {
    answer.others_sowings += static_cast<int>(others.sowings.size());
  }
  answer.others_weight = request.others.empty() ? 0.0 : others_weigh;
  count_sowings(asked, answer);
  answer.shares = share_lines(sown_kinds(garden, record, request.others), asked, names.empty());
  answer.times = time_lines(asked);
  answer.trials = learned_trials(asked);
  if (names.empty()) {
    answer.effects = effect_lines(record);
  }
  answer.limits = learned_limits(asked, seasons);
  answer.germinations = learned_germinations(asked, answer.limits, seasons);
  answer.offered = offered_rules(answer.limits, answer.germinations);
  return answer;
}

SharedCounts counts_to_share(const LoadedGarden& garden) {
  const StationClimate station = station_climate(garden);
  const KnownSowings record = known_sowings(garden, station.turning.phases);
  const std::vector<int> seasons = seasons_of(record.sowings);
  SharedCounts counts;
  if (station.turning.phases) {
    counts.climate = shared_climate(station, garden.today);
  }
  std::map<std::string, SharedRule> rules;
  for (const KnownSowing& sowing : record.sowings) {
    if (!sowing.looked_at_to_the_end) {
      continue;
    }
    counts.sowings.push_back(shared(sowing, seasons, garden.garden));
    const species_rules::Rule& rule = sowing.rule.rule;
    SharedRule& given = rules[sowing.rule.accepted];
    given.taxon = sowing.rule.accepted;
    if (rule.gate.night_limit_c) {
      given.night_limit_c = rule.gate.night_limit_c->value;
    }
    if (rule.seed.germination_share) {
      given.germination_share = rule.seed.germination_share->value;
    }
  }
  for (auto& [taxon, rule] : rules) {
    counts.rules.push_back(std::move(rule));
  }
  return counts;
}

} // namespace nightsow::planner
