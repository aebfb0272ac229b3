#include "planner/answers/hold_saved.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

constexpr double gain_share = 0.03;
constexpr double gain_plants = 0.5;

// Where nothing comes of either day there is nothing to gain.
bool as_good(double held, double other, std::optional<double> seeds) {
  return !worth_moving(std::max(held, other), std::min(held, other), seeds);
}

void hold_latest(const SavedLine& saved,
                 Date today,
                 const ShareOnDay& share_on,
                 std::optional<double> seeds,
                 LineTiming& timing) {
  const std::optional<Date> now = timing.water.no_later_than;
  if (!now || !saved.no_later_than || *now == *saved.no_later_than ||
      *saved.no_later_than < today) {
    return;
  }
  const std::optional<Date>& water = timing.water.expected.p50;
  if (water && *water <= *now && *water > *saved.no_later_than) {
    return; // no day would be left
  }
  if (as_good(share_on(*saved.no_later_than), share_on(*now), seeds)) {
    timing.water.no_later_than = saved.no_later_than;
    timing.reasons.push_back(
        {ReasonCode::latest_held, {{"no_later_than", *saved.no_later_than}, {"would_be", *now}}});
  }
}

void hold_water(const SavedLine& saved,
                Date today,
                Date first_possible,
                const ShareOnDay& share_on,
                std::optional<double> seeds,
                LineTiming& timing) {
  const std::optional<Date> now = timing.water.expected.p50;
  if (timing.verdict == Verdict::water_now || !now || !saved.water || *saved.water == *now) {
    return;
  }
  const Date day = *saved.water;
  const std::optional<Date>& latest = timing.water.no_later_than;
  const bool possible =
      day > today && day >= first_possible && (!latest || day <= std::max(*latest, *now));
  if (possible && as_good(share_on(day), share_on(*now), seeds)) {
    timing.water.held = day;
    timing.reasons.push_back({ReasonCode::day_held, {{"when", day}, {"would_be", *now}}});
  }
}

} // namespace

bool worth_moving(double share, double than, std::optional<double> seeds) {
  return share > than * (1.0 + gain_share) && (!seeds || (share - than) * *seeds > gain_plants);
}

const KeptWay& best_or_saved_way(const std::vector<KeptWay>& ways,
                                 const Packet& packet,
                                 std::optional<double> seeds,
                                 const SavedLine* saved) {
  const KeptWay& best = best_way(ways, seeds);
  if (saved == nullptr || saved->route.empty()) {
    return best;
  }
  const auto held = std::find_if(ways.begin(), ways.end(), [&](const KeptWay& way) {
    return route_of(way.keeping, packet) == saved->route;
  });
  return held == ways.end() || worth_moving(best.most, held->most, seeds) ? best : *held;
}

void hold_days(const SavedLine* saved,
               Date today,
               Date first_possible,
               const ShareOnDay& share_on,
               std::optional<double> seeds,
               LineTiming& timing) {
  if (saved == nullptr || !saved->sown_this_season) {
    return;
  }
  hold_latest(*saved, today, share_on, seeds, timing);
  hold_water(*saved, today, first_possible, share_on, seeds, timing);
}

} // namespace nightsow::planner
