#include "planner/model/lay_by_hand.hpp"

#include <algorithm>
#include <map>
#include <numeric>

namespace nightsow::planner {

namespace {

// Steps that give less are not worth taking, and rounding could take them for ever.
constexpr double least_gain = 1e-9;
constexpr int most_rounds = 30;

/// Picks, and what they take.
class Table {
public:
  Table(const std::vector<SowingToLay>& sowings, const LayingRoom& room, Picks picks)
      : sowings_(sowings), room_(room), picks_(std::move(picks)), used_(pots_used(room, picks_)) {}

  [[nodiscard]] const Picks& picks() const { return picks_; }

  [[nodiscard]] double value(std::size_t sowing) const {
    return picks_[sowing] ? sowings_[sowing].choices[*picks_[sowing]].value : 0.0;
  }

  void put(std::size_t sowing, std::optional<std::size_t> choice) {
    add(sowing, -1);
    picks_[sowing] = choice;
    add(sowing, 1);
  }

  [[nodiscard]] bool fits(std::size_t sowing, std::size_t choice) const {
    const auto& taken = room_.taken[sowing][choice];
    return std::all_of(taken.begin(), taken.end(), [&](const PotsTaken& one) {
      return used_[one.place] + one.pots <= room_.room[one.place];
    });
  }

  /// The first place without room for it, and how many pots are too many there.
  [[nodiscard]] std::optional<PotsTaken> too_many(std::size_t sowing, std::size_t choice) const {
    for (const PotsTaken& one : room_.taken[sowing][choice]) {
      const int over = used_[one.place] + one.pots - room_.room[one.place];
      if (over > 0) {
        return PotsTaken{one.place, over};
      }
    }
    return std::nullopt;
  }

  [[nodiscard]] int holds(std::size_t sowing, std::size_t place) const {
    if (picks_[sowing]) {
      for (const PotsTaken& one : room_.taken[sowing][*picks_[sowing]]) {
        if (one.place == place) {
          return one.pots;
        }
      }
    }
    return 0;
  }

  /// The choice of most value that fits; empty: none does. The sowing is not laid.
  [[nodiscard]] std::optional<std::size_t> best_that_fits(std::size_t sowing) const {
    std::optional<std::size_t> best;
    const auto& choices = sowings_[sowing].choices;
    for (std::size_t choice = 0; choice < choices.size(); ++choice) {
      if ((!best || choices[choice].value > choices[*best].value) && fits(sowing, choice)) {
        best = choice;
      }
    }
    return best;
  }

  [[nodiscard]] const std::vector<int>& used() const { return used_; }

private:
  void add(std::size_t sowing, int times) {
    if (picks_[sowing]) {
      for (const PotsTaken& one : room_.taken[sowing][*picks_[sowing]]) {
        used_[one.place] += times * one.pots;
      }
    }
  }

  const std::vector<SowingToLay>& sowings_;
  const LayingRoom& room_;
  Picks picks_;
  std::vector<int> used_;
};

double best_value(const SowingToLay& sowing) {
  double best = 0.0;
  for (const DayChoice& choice : sowing.choices) {
    best = std::max(best, choice.value);
  }
  return best;
}

std::vector<std::size_t> most_value_first(const std::vector<SowingToLay>& sowings) {
  std::vector<std::size_t> order(sowings.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return best_value(sowings[a]) > best_value(sowings[b]);
  });
  return order;
}

std::vector<std::size_t> most_pots_first(const std::vector<SowingToLay>& sowings) {
  std::vector<std::size_t> order = most_value_first(sowings);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return sowings[a].pots > sowings[b].pots;
  });
  return order;
}

// Onto the best day with room for it.
bool move_alone(std::size_t sowing, Table& table) {
  const std::optional<std::size_t> before = table.picks()[sowing];
  const double value = table.value(sowing);
  table.put(sowing, std::nullopt);
  table.put(sowing, table.best_that_fits(sowing));
  if (table.value(sowing) > value + least_gain) {
    return true;
  }
  table.put(sowing, before);
  return false;
}

// Whether another makes way for the sowing on that day, and both together gain. `sowing` lies on
// `choice` then; otherwise all is as it was.
bool make_way(std::size_t sowing, std::size_t choice, double worth, Table& table) {
  const std::optional<std::size_t> before = table.picks()[sowing];
  const double value = table.value(sowing);
  table.put(sowing, std::nullopt);
  const std::optional<PotsTaken> over = table.too_many(sowing, choice);
  for (std::size_t other = 0; over && other < table.picks().size(); ++other) {
    if (other == sowing || table.holds(other, over->place) < over->pots) {
      continue;
    }
    const std::optional<std::size_t> others = table.picks()[other];
    const double others_value = table.value(other);
    table.put(other, std::nullopt);
    if (table.fits(sowing, choice)) {
      table.put(sowing, choice);
      table.put(other, table.best_that_fits(other));
      if (worth + table.value(other) > value + others_value + least_gain) {
        return true;
      }
      table.put(other, std::nullopt);
      table.put(sowing, std::nullopt);
    }
    table.put(other, others);
  }
  table.put(sowing, before);
  return false;
}

bool move_with_another(std::size_t sowing, const std::vector<SowingToLay>& sowings, Table& table) {
  const auto& choices = sowings[sowing].choices;
  bool moved = false;
  for (std::size_t choice = 0; choice < choices.size(); ++choice) {
    if (choices[choice].value > table.value(sowing) + least_gain) {
      moved = make_way(sowing, choice, choices[choice].value, table) || moved;
    }
  }
  return moved;
}

/// How many pots are too many, by limit; a mat's places once.
class Missing {
public:
  explicit Missing(const LayingRoom& room) : room_(room) {}

  [[nodiscard]] std::map<std::pair<MissingPlaces::Limit, int>, int> by_limit(
      const std::vector<int>& used) const {
    std::map<std::pair<MissingPlaces::Limit, int>, int> missing;
    for (std::size_t place = 0; place < used.size(); ++place) {
      const int over = used[place] - room_.room[place];
      if (over > 0) {
        int& most = missing[{room_.places[place].limit, room_.places[place].which}];
        most = std::max(most, over);
      }
    }
    return missing;
  }

  [[nodiscard]] int in_all(const std::vector<int>& used) const {
    int sum = 0;
    for (const auto& [limit, pots] : by_limit(used)) {
      sum += pots;
    }
    return sum;
  }

private:
  const LayingRoom& room_;
};

// Onto the day on which least is missing then; of those the one of most value. Whether it moved.
bool put_where_least_is_missing(std::size_t sowing,
                                const std::vector<SowingToLay>& sowings,
                                const Missing& missing,
                                Table& table) {
  const auto& choices = sowings[sowing].choices;
  const std::optional<std::size_t> before = table.picks()[sowing];
  std::optional<std::size_t> best = before;
  int fewest = before ? missing.in_all(table.used()) : 0;
  for (std::size_t choice = 0; choice < choices.size(); ++choice) {
    table.put(sowing, choice);
    const int pots = missing.in_all(table.used());
    const bool more_worth =
        best && pots == fewest && !before && choices[choice].value > choices[*best].value;
    if (!best || pots < fewest || more_worth) {
      best = choice;
      fewest = pots;
    }
  }
  table.put(sowing, best);
  return best != before;
}

// The pots in each place when all are laid, whatever the room: what is left over first, in that
// order, then moved about while fewer are missing.
std::vector<int> all_laid(const std::vector<SowingToLay>& sowings,
                          const LayingRoom& room,
                          const Picks& start,
                          const std::vector<std::size_t>& order) {
  Table table{sowings, room, start};
  const Missing missing{room};
  for (const std::size_t sowing : order) {
    if (!table.picks()[sowing]) {
      put_where_least_is_missing(sowing, sowings, missing, table);
    }
  }
  bool moved = true;
  for (int round = 0; moved && round < most_rounds; ++round) {
    moved = false;
    for (const std::size_t sowing : order) {
      moved = put_where_least_is_missing(sowing, sowings, missing, table) || moved;
    }
  }
  return table.used();
}

} // namespace

Picks bettered(const std::vector<SowingToLay>& sowings, const LayingRoom& room, Picks picks) {
  Table table{sowings, room, std::move(picks)};
  bool moved = true;
  for (int round = 0; moved && round < most_rounds; ++round) {
    moved = false;
    for (const std::size_t sowing : most_value_first(sowings)) {
      moved = move_alone(sowing, table) || moved;
      moved = move_with_another(sowing, sowings, table) || moved;
    }
  }
  return table.picks();
}

Picks lay_by_hand(const std::vector<SowingToLay>& sowings, const LayingRoom& room) {
  Table table{sowings, room, Picks(sowings.size())};
  for (const std::size_t sowing : most_value_first(sowings)) {
    table.put(sowing, table.best_that_fits(sowing));
  }
  return bettered(sowings, room, table.picks());
}

std::vector<MissingPlaces> missing_places(const std::vector<SowingToLay>& sowings,
                                          const LayingRoom& room,
                                          const Picks& picks) {
  const Missing missing{room};
  const std::vector<std::size_t> large = most_pots_first(sowings);
  std::optional<std::vector<int>> best;
  for (const auto& [start, order] : {std::pair{picks, most_value_first(sowings)},
                                     std::pair{picks, large},
                                     std::pair{Picks(sowings.size()), large}}) {
    std::vector<int> used = all_laid(sowings, room, start, order);
    if (!best || missing.in_all(used) < missing.in_all(*best)) {
      best = std::move(used);
    }
  }
  std::vector<MissingPlaces> result;
  for (const auto& [limit, pots] : missing.by_limit(*best)) {
    result.push_back({limit.first, limit.second, pots});
  }
  return result;
}

} // namespace nightsow::planner
