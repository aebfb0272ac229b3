#include "planner/model/assign.hpp"

#include "planner/model/integer_program.hpp"
#include "planner/model/lay_by_hand.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double relaxed_seconds = 1.0;

/// One variable for each sowing and day that is still in question.
struct Laying {
  Program program;
  std::vector<std::pair<std::size_t, std::size_t>> choices; ///< sowing and choice, of each variable
};

double best_value(const SowingToLay& sowing) {
  double best = 0.0;
  for (const DayChoice& choice : sowing.choices) {
    best = std::max(best, choice.value);
  }
  return best;
}

double sum_of_best(const std::vector<SowingToLay>& sowings) {
  double sum = 0.0;
  for (const SowingToLay& sowing : sowings) {
    sum += best_value(sowing);
  }
  return sum;
}

template <class InQuestion>
Laying laying_of(const std::vector<SowingToLay>& sowings,
                 const LayingRoom& room,
                 InQuestion in_question) {
  Laying laying;
  std::vector<ProgramRow> places;
  for (const int pots : room.room) {
    places.push_back({{}, 0.0, static_cast<double>(pots)});
  }
  std::size_t number = 0;
  for (std::size_t sowing = 0; sowing < sowings.size(); ++sowing) {
    ProgramRow once{{}, 0.0, 1.0};
    for (std::size_t choice = 0; choice < sowings[sowing].choices.size(); ++choice) {
      if (!in_question(number++)) {
        continue;
      }
      const auto variable = static_cast<int>(laying.program.variables.size());
      laying.program.variables.push_back({sowings[sowing].choices[choice].value, 1.0, true});
      laying.choices.emplace_back(sowing, choice);
      once.terms.push_back({variable, 1.0});
      for (const PotsTaken& taken : room.taken[sowing][choice]) {
        places[taken.place].terms.push_back({variable, static_cast<double>(taken.pots)});
      }
    }
    if (!once.terms.empty()) {
      laying.program.rows.push_back(std::move(once));
    }
  }
  std::move(places.begin(), places.end(), std::back_inserter(laying.program.rows));
  return laying;
}

Picks picks_of(const Laying& laying, const std::vector<double>& values, std::size_t sowings) {
  constexpr double as_good_as_one =
      0.9999; // so that the few of a bound that are not whole stay out
  Picks picks(sowings);
  for (std::size_t variable = 0; variable < values.size(); ++variable) {
    if (values[variable] > as_good_as_one) {
      picks[laying.choices[variable].first] = laying.choices[variable].second;
    }
  }
  return picks;
}

/// The best laying so far, and what none can be worth more than.
class Search {
public:
  Search(const std::vector<SowingToLay>& sowings, const LayingRoom& room)
      : sowings_(sowings), room_(room), picks_(lay_by_hand(sowings, room)),
        value_(value_of(sowings, picks_)), bound_(std::max(value_, sum_of_best(sowings))) {}

  void run() {
    if (good_enough()) {
      return;
    }
    const Laying all = laying_of(sowings_, room_, [](std::size_t) { return true; });
    const Relaxed relaxed = solve_relaxed(all.program, relaxed_seconds);
    if (!relaxed.found) {
      solve_whole(all);
      return;
    }
    lower_bound_to(relaxed.worth);
    offer(bettered(sowings_, room_, picks_of(all, relaxed.values, sowings_.size())));
    if (good_enough()) {
      return;
    }
    // What would cost more than is still to be gained is no part of anything better.
    constexpr double slip = 1e-6;
    const double to_gain = bound_ - value_ + slip;
    solve_whole(laying_of(sowings_, room_, [&](std::size_t variable) {
      return relaxed.values[variable] > slip || relaxed.price[variable] <= to_gain;
    }));
  }

  [[nodiscard]] const Picks& picks() const { return picks_; }

  [[nodiscard]] double value() const { return value_; }

  [[nodiscard]] double bound() const { return bound_; }

  [[nodiscard]] double gap() const { return bound_ > 0.0 ? (bound_ - value_) / bound_ : 0.0; }

private:
  [[nodiscard]] bool good_enough() const { return gap() <= good_enough_gap; }

  void offer(Picks picks) {
    const double value = value_of(sowings_, picks);
    if (value > value_) {
      picks_ = std::move(picks);
      value_ = value;
      bound_ = std::max(bound_, value_);
    }
  }

  void lower_bound_to(double bound) { bound_ = std::max(value_, std::min(bound_, bound)); }

  void solve_whole(const Laying& laying) {
    const Solved solved = solve(laying.program, good_enough_gap, most_seconds);
    if (solved.found) {
      offer(bettered(sowings_, room_, picks_of(laying, solved.values, sowings_.size())));
      lower_bound_to(std::max(solved.bound, value_));
    }
  }

  const std::vector<SowingToLay>& sowings_;
  const LayingRoom& room_;
  Picks picks_;
  double value_;
  double bound_;
};

} // namespace

Laid lay(const std::vector<SowingToLay>& sowings, const LayingLimits& limits) {
  const LayingRoom room = laying_room(sowings, limits);
  Search search{sowings, room};
  search.run();
  Laid laid;
  bool left_over = false;
  for (std::size_t sowing = 0; sowing < sowings.size(); ++sowing) {
    const std::optional<std::size_t> pick = search.picks()[sowing];
    const std::vector<DayChoice>& choices = sowings[sowing].choices;
    laid.days.push_back(pick ? std::optional{choices[*pick].day} : std::nullopt);
    left_over = left_over || (!pick && !choices.empty());
  }
  laid.value = search.value();
  laid.bound = search.bound();
  laid.gap = search.gap();
  if (left_over) {
    laid.missing = missing_places(sowings, room, search.picks());
  }
  return laid;
}

} // namespace nightsow::planner
