#include "planner/answers/chilled_route.hpp"

#include "planner/answers/hold_saved.hpp"
#include "planner/model/nights_for_rule.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr const char* chilled_route_name = "chilled";

double plants_of(const PlacedLine& line) {
  const bool comes = !line.timing.never && !line.timing.missed && line.decision.expected;
  return comes ? line.decision.expected->plants.mean : 0.0;
}

// Seed that is harvested or comes later cannot be sown before.
void put_off_until_in_hand(const LineInput& input, LineTiming& timing) {
  const std::optional<Date>& in_hand = input.packet.in_hand_from;
  if (!in_hand) {
    return;
  }
  const std::optional<Date>& expected = timing.water.expected.p50;
  const bool held_up = timing.verdict == Verdict::water_now || (expected && *expected < *in_hand);
  timing.water.not_before = std::max(timing.water.not_before.value_or(*in_hand), *in_hand);
  keep_from(*in_hand, timing.water.expected);
  if (held_up) {
    timing.verdict = Verdict::wait;
    timing.reasons.insert(timing.reasons.begin(),
                          {ReasonCode::not_yet_in_hand, {{"on", *in_hand}}});
  }
}

} // namespace

PlacedLine placed_line(const LineInput& input,
                       BenchSeasons& seasons,
                       const std::optional<climate::Season>& season) {
  PlacedLine line;
  line.timing = line_timing(input, seasons, season);
  put_off_until_in_hand(input, line.timing);
  if (season && !line.timing.never) {
    line.decision = decide(input, seasons, *season, line.timing);
  }
  return line;
}

std::optional<ChilledLine> chilled_line(const LineInput& input,
                                        BenchSeasons& seasons,
                                        const climate::Season& season,
                                        PlacedLine& own) {
  const std::vector<Bench>& benches = input.garden.garden.benches;
  const auto place = std::find_if(
      benches.begin(), benches.end(), [](const Bench& bench) { return bench.chilled; });
  const std::optional<double> seeds = input.packet.seeds.middle();
  if (place == benches.end() || place->name == input.bench || !seeds || *seeds <= 0.0 ||
      start_of(input.rule.rule) != species_rules::Start::cool) {
    return std::nullopt;
  }
  ChilledLine there{{input.garden,
                     input.packet,
                     input.rule,
                     input.seed,
                     seasons.guard(place->name),
                     place->name,
                     nullptr},
                    {}};
  there.line = placed_line(there.input, seasons, season);
  if (!there.line.decision.expected) {
    return std::nullopt;
  }
  const double chilled = plants_of(there.line);
  const double here = plants_of(own);
  own.decision.routes.push_back(
      {chilled_route_name, chilled, there.line.decision.expected->first_water, {}});
  const bool saved_so = input.saved != nullptr && input.saved->route == chilled_route_name;
  const bool wins = saved_so ? !worth_moving(here / *seeds, chilled / *seeds, seeds)
                             : much_better(chilled / *seeds, here / *seeds, seeds);
  if (!wins || there.line.timing.never || there.line.timing.missed) {
    return std::nullopt;
  }
  there.line.decision.routes = own.decision.routes;
  std::stable_sort(there.line.decision.routes.begin(),
                   there.line.decision.routes.end(),
                   [](const RouteAnswer& a, const RouteAnswer& b) {
                     return a.plants.value_or(0.0) > b.plants.value_or(0.0);
                   });
  there.line.decision.route = chilled_route_name;
  there.line.timing.reasons.insert(there.line.timing.reasons.begin(),
                                   {ReasonCode::chilled_gives,
                                    {{"bench", place->name},
                                     {"plants", static_cast<int>(std::lround(chilled))},
                                     {"other", static_cast<int>(std::lround(here))}}});
  return there;
}

} // namespace nightsow::planner
