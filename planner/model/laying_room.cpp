#include "planner/model/laying_room.hpp"

#include <algorithm>
#include <map>

namespace nightsow::planner {

namespace {

using Limit = MissingPlaces::Limit;

std::optional<int> room_of(const LimitedPlace& place, const LayingLimits& limits) {
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

/// Numbers places in the order in which they are met.
class Numbered {
public:
  Numbered(const LayingLimits& limits, LayingRoom& room) : limits_(limits), room_(room) {}

  void add(const LimitedPlace& place, int pots, std::vector<PotsTaken>& taken) {
    const std::optional<int> most = room_of(place, limits_);
    if (!most) {
      return;
    }
    const auto [known, fresh] = numbers_.try_emplace(place, room_.places.size());
    if (fresh) {
      room_.places.push_back(place);
      room_.room.push_back(*most);
    }
    taken.push_back({known->second, pots});
  }

private:
  const LayingLimits& limits_;
  LayingRoom& room_;
  std::map<LimitedPlace, std::size_t> numbers_;
};

} // namespace

LayingRoom laying_room(const std::vector<SowingToLay>& sowings, const LayingLimits& limits) {
  LayingRoom room;
  Numbered numbered{limits, room};
  for (const SowingToLay& sowing : sowings) {
    std::vector<std::vector<PotsTaken>>& choices = room.taken.emplace_back();
    for (const DayChoice& choice : sowing.choices) {
      std::vector<PotsTaken>& taken = choices.emplace_back();
      numbered.add({Limit::pots_a_day, choice.day, 0},
                   std::min(sowing.pots, limits.pots_a_day.value_or(sowing.pots)),
                   taken);
      if (sowing.bench) {
        numbered.add({Limit::bench, *sowing.bench, 0}, sowing.pots, taken);
      }
      for (int day = choice.mat_from; sowing.mat && day <= choice.mat_until; ++day) {
        numbered.add({Limit::mat, *sowing.mat, day}, sowing.pots, taken);
      }
    }
  }
  return room;
}

double value_of(const std::vector<SowingToLay>& sowings, const Picks& picks) {
  double value = 0.0;
  for (std::size_t sowing = 0; sowing < sowings.size(); ++sowing) {
    value += picks[sowing] ? sowings[sowing].choices[*picks[sowing]].value : 0.0;
  }
  return value;
}

std::vector<int> pots_used(const LayingRoom& room, const Picks& picks) {
  std::vector<int> used(room.places.size(), 0);
  for (std::size_t sowing = 0; sowing < picks.size(); ++sowing) {
    if (picks[sowing]) {
      for (const PotsTaken& taken : room.taken[sowing][*picks[sowing]]) {
        used[taken.place] += taken.pots;
      }
    }
  }
  return used;
}

} // namespace nightsow::planner
