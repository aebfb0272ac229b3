#include "planner/answers/chilled_route.hpp"

#include "planner/answers/hold_saved.hpp"
#include "planner/model/nights_for_rule.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr const char* chilled_route_name = "chilled";

} // namespace

std::optional<ChilledLine> chilled_line(const LineInput& input,
                                        PacketProspects& known,
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
  there.line = placed_line(there.input, known, seasons, season);
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
