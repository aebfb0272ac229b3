#include "planner/model/assign.hpp"

#include "planner/model/integer_program.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <utility>

namespace nightsow::planner {

namespace {

using Limit = MissingPlaces::Limit;

/// A limit that binds in one place: a day's pots, a bench, or a mat on a day.
struct Place {
  Limit limit = Limit::pots_a_day;
  int which = 0; ///< the day, or the index of bench or mat
  int day = 0;   ///< of a mat

  auto operator<=>(const Place&) const = default;
};

std::optional<int> room_of(const Place& place, const LayingLimits& limits) {
  switch (place.limit) {
  case Limit::pots_a_day:
    return limits.pots_a_day;
  case Limit::bench:
    return limits.bench_places.at(static_cast<std::size_t>(place.which));
  case Limit::mat:
    break;
  }
  return limits.mat_places.at(static_cast<std::size_t>(place.which));
}

// Where a sowing takes room when it is made on that day, as far as room is limited there.
std::map<Place, int> taken_by(const SowingToLay& sowing,
                              const DayChoice& choice,
                              const LayingLimits& limits) {
  std::map<Place, int> taken;
  if (limits.pots_a_day) {
    taken[{Limit::pots_a_day, choice.day, 0}] = std::min(sowing.pots, *limits.pots_a_day);
  }
  if (sowing.bench && room_of({Limit::bench, *sowing.bench, 0}, limits)) {
    taken[{Limit::bench, *sowing.bench, 0}] = sowing.pots;
  }
  if (sowing.mat && room_of({Limit::mat, *sowing.mat, 0}, limits)) {
    for (int day = choice.mat_from; day <= choice.mat_until; ++day) {
      taken[{Limit::mat, *sowing.mat, day}] = sowing.pots;
    }
  }
  return taken;
}

const DayChoice* best_of(const SowingToLay& sowing) {
  const auto best = std::max_element(
      sowing.choices.begin(), sowing.choices.end(), [](const DayChoice& a, const DayChoice& b) {
        return std::pair{a.value, -a.day} < std::pair{b.value, -b.day};
      });
  return best == sowing.choices.end() ? nullptr : &*best;
}

// Each on its best day, where there is room for that.
std::optional<Laid> unhindered(const std::vector<SowingToLay>& sowings,
                               const LayingLimits& limits) {
  Laid laid;
  std::map<Place, int> taken;
  for (const SowingToLay& sowing : sowings) {
    const DayChoice* best = best_of(sowing);
    laid.days.push_back(best != nullptr ? std::optional{best->day} : std::nullopt);
    if (best == nullptr) {
      continue;
    }
    laid.value += best->value;
    for (const auto& [place, pots] : taken_by(sowing, *best, limits)) {
      taken[place] += pots;
      if (taken[place] > *room_of(place, limits)) {
        return std::nullopt;
      }
    }
  }
  laid.bound = laid.value;
  return laid;
}

/// The integer program: a variable for each sowing and day, then one for each sowing left over, or
/// one for the pots that are too many in each place.
struct Laying {
  Program program;
  std::vector<std::pair<std::size_t, const DayChoice*>> choices; ///< variables, in order
  std::vector<Place> places;                                     ///< rows behind those of sowings
};

int add_variable(Program& program, const ProgramVariable& variable) {
  program.variables.push_back(variable);
  return static_cast<int>(program.variables.size()) - 1;
}

constexpr double no_limit = 1e9;

Laying laying_of(const std::vector<SowingToLay>& sowings,
                 const LayingLimits& limits,
                 bool worth_of_days) {
  Laying laying;
  std::map<Place, std::vector<ProgramTerm>> rows;
  for (std::size_t sowing = 0; sowing < sowings.size(); ++sowing) {
    if (sowings[sowing].choices.empty()) {
      continue;
    }
    ProgramRow once{{}, worth_of_days ? 0.0 : 1.0, 1.0};
    for (const DayChoice& choice : sowings[sowing].choices) {
      const int variable =
          add_variable(laying.program, {worth_of_days ? choice.value : 0.0, 1.0, true});
      laying.choices.emplace_back(sowing, &choice);
      once.terms.push_back({variable, 1.0});
      for (const auto& [place, pots] : taken_by(sowings[sowing], choice, limits)) {
        rows[place].push_back({variable, static_cast<double>(pots)});
      }
    }
    laying.program.rows.push_back(std::move(once));
  }
  for (auto& [place, terms] : rows) {
    laying.places.push_back(place);
    laying.program.rows.push_back(
        {std::move(terms), 0.0, static_cast<double>(*room_of(place, limits))});
  }
  return laying;
}

bool chosen(double value) {
  return value > 0.5;
}

// Everything is laid, at the price of pots too many; the fewest of them. A mat's places count once,
// however many days they are wanted.
std::vector<MissingPlaces> missing_places(const std::vector<SowingToLay>& sowings,
                                          const LayingLimits& limits) {
  Laying laying = laying_of(sowings, limits, false);
  std::map<std::pair<Limit, int>, int> too_many;
  const std::size_t sowing_rows = laying.program.rows.size() - laying.places.size();
  for (std::size_t at = 0; at < laying.places.size(); ++at) {
    const Place& place = laying.places[at];
    const auto [known, fresh] = too_many.try_emplace({place.limit, place.which}, 0);
    if (fresh) {
      known->second = add_variable(laying.program, {-1.0, no_limit, true});
    }
    laying.program.rows[sowing_rows + at].terms.push_back({known->second, -1.0});
    laying.program.rows[sowing_rows + at].low = -no_limit;
  }
  const Solved solved = solve(laying.program, good_enough_gap, most_seconds);
  std::vector<MissingPlaces> missing;
  if (!solved.found) {
    return missing;
  }
  for (const auto& [limit, variable] : too_many) {
    const auto pots =
        static_cast<int>(std::lround(solved.values.at(static_cast<std::size_t>(variable))));
    if (pots > 0) {
      missing.push_back({limit.first, limit.second, pots});
    }
  }
  return missing;
}

} // namespace

Laid lay(const std::vector<SowingToLay>& sowings, const LayingLimits& limits) {
  if (std::optional<Laid> laid = unhindered(sowings, limits)) {
    return *laid;
  }
  const Laying laying = laying_of(sowings, limits, true);
  const Solved solved = solve(laying.program, good_enough_gap, most_seconds);
  Laid laid;
  laid.days.resize(sowings.size());
  for (std::size_t at = 0; solved.found && at < laying.choices.size(); ++at) {
    const auto& [sowing, choice] = laying.choices[at];
    if (chosen(solved.values[at])) {
      laid.days[sowing] = choice->day;
      laid.value += choice->value;
    }
  }
  laid.bound = std::max(laid.value, solved.bound);
  laid.gap = laid.bound > 0.0 ? (laid.bound - laid.value) / laid.bound : 0.0;
  bool left_over = false;
  for (std::size_t sowing = 0; sowing < sowings.size(); ++sowing) {
    left_over = left_over || (!laid.days[sowing] && !sowings[sowing].choices.empty());
  }
  if (left_over) {
    laid.missing = missing_places(sowings, limits);
  }
  return laid;
}

} // namespace nightsow::planner
