#include "planner/garden/open_sowings.hpp"

#include <algorithm>
#include <tuple>
#include <unordered_map>
#include <utility>

namespace nightsow::planner {

namespace {

struct State {
  OpenSowing open;
  Date last{}; ///< the last day of which something is told
};

using States = std::unordered_map<EntryId, State>;

template <typename Told, typename Use>
void tell(States& states, const std::vector<Told>& list, Use use) {
  for (const Told& told : list) {
    if (const auto at = states.find(told.sowing); at != states.end()) {
      at->second.last = std::max(at->second.last, told.on);
      use(at->second.open, told);
    }
  }
}

States states_of(const Records& records) {
  States states;
  for (const RecordedSowing& sowing : records.sowings) {
    states[sowing.id] = {{sowing, sowing.bench, {}, {}}, sowing.on};
  }
  // By date: what is told last stays.
  tell(states, records.counts, [](OpenSowing& open, const SeedlingCount& count) {
    open.last_count = count;
  });
  tell(states, records.waterings, [](OpenSowing& open, const Watering& watering) {
    open.last_watering = watering;
  });
  tell(states, records.moves, [](OpenSowing& open, const Move& move) {
    open.bench = move.kind == MoveKind::bench ? move.to : open.bench;
  });
  tell(states, records.press_tests, [](OpenSowing&, const PressTest&) {});
  tell(states, records.pottings, [](OpenSowing&, const Potting&) {});
  for (const Note& note : records.notes) {
    if (const auto at = note.sowing ? states.find(*note.sowing) : states.end();
        at != states.end()) {
      at->second.last = std::max(at->second.last, note.on);
    }
  }
  return states;
}

} // namespace

const Closing* closing_of(const Records& records, EntryId sowing) {
  const auto at = std::find_if(records.closings.begin(),
                               records.closings.end(),
                               [&](const Closing& closing) { return closing.sowing == sowing; });
  return at == records.closings.end() ? nullptr : &*at;
}

Date last_day_told(const Records& records, const RecordedSowing& sowing) {
  return states_of(records).at(sowing.id).last;
}

bool OpenSowing::wetted() const {
  return sowing.first_water.has_value() || last_watering.has_value();
}

bool OpenSowing::resting() const {
  return last_watering && last_watering->kind == WateringKind::dry_rest;
}

std::vector<OpenSowing> open_sowings(const Records& records,
                                     const std::vector<std::string>& benches,
                                     Date today) {
  std::vector<OpenSowing> open;
  for (auto& [id, state] : states_of(records)) {
    if (days_between(state.last, today) <= open_days && closing_of(records, id) == nullptr) {
      open.push_back(std::move(state.open));
    }
  }
  const auto place = [&](const OpenSowing& one) {
    return std::tuple(std::find(benches.begin(), benches.end(), one.bench) - benches.begin(),
                      one.bench,
                      one.sowing.id);
  };
  std::sort(open.begin(), open.end(), [&](const OpenSowing& one, const OpenSowing& other) {
    return place(one) < place(other);
  });
  return open;
}

} // namespace nightsow::planner
