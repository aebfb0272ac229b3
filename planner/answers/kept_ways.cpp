#include "planner/answers/kept_ways.hpp"

#include "planner/model/seed_state.hpp"
#include "planner/model/store_history.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

using Way = Keeping::Way;

constexpr double better_share = 0.05;
constexpr double better_plants = 0.5;
constexpr double warm_store_c = 15.0;

KeptWay kept_way(Prospects& prospects, const Keeping& keeping, Date allowed) {
  KeptWay way{keeping, prospects.first_day(), {}, 0.0};
  for (Date day = way.first; day <= prospects.last_day(); day += Days{1}) {
    way.shares.push_back(prospects.plants_share(day, keeping));
    if (day >= allowed) {
      way.most = std::max(way.most, way.shares.back());
    }
  }
  return way;
}

} // namespace

std::vector<KeptWay> kept_ways(const LineInput& input, Prospects& prospects, Date allowed) {
  std::vector<KeptWay> ways{kept_way(prospects, {}, allowed)};
  const Date today = input.garden.today;
  if (allowed < today + worth_keeping) {
    return ways;
  }
  for (const Way way : {Way::warm, Way::cool}) {
    ways.push_back(kept_way(prospects, {way, {}}, allowed));
  }
  const auto alive_and_ripe = [&](const Packet& packet) {
    return seed_state(packet, input.rule.rule, allowed).alive_and_ripe;
  };
  if (const auto until = best_warm_until(input.packet, today, allowed, alive_and_ripe)) {
    ways.push_back(kept_way(prospects, {Way::warm_then_cool, until}, allowed));
  }
  return ways;
}

bool much_better(double share, double than, std::optional<double> seeds) {
  return share > than * (1.0 + better_share) && (!seeds || (share - than) * *seeds > better_plants);
}

const KeptWay& best_way(const std::vector<KeptWay>& ways, std::optional<double> seeds) {
  const auto most = std::max_element(
      ways.begin(), ways.end(), [](const auto& a, const auto& b) { return a.most < b.most; });
  return much_better(most->most, ways.front().most, seeds) ? *most : ways.front();
}

std::string route_of(const Keeping& keeping, const Packet& packet) {
  switch (keeping.way) {
  case Way::warm:
    return "keep_warm";
  case Way::cool:
    return "fridge";
  case Way::warm_then_cool:
    return "warm_then_fridge";
  case Way::as_it_is:
    break;
  }
  if (!store_known(packet)) {
    return "as_it_is";
  }
  const bool warm = packet.stored.empty() || packet.stored.back().store_c >= warm_store_c;
  return warm ? "keep_warm" : "fridge";
}

} // namespace nightsow::planner
