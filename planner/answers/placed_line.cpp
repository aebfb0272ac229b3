#include "planner/answers/placed_line.hpp"

#include "planner/answers/figures.hpp"
#include "planner/answers/kept_ways.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/usual_looks.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double hours_a_day = 24.0;
constexpr double watts_a_kilowatt = 1000.0;

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

PlacedLine placed_so(const LineInput& input,
                     PacketProspects& known,
                     BenchSeasons& seasons,
                     const std::optional<climate::Season>& season) {
  PlacedLine line;
  line.timing = line_timing(input, seasons, season);
  put_off_until_in_hand(input, line.timing);
  if (season && !line.timing.never) {
    line.decision = decide(input, known, seasons, *season, line.timing);
  }
  return line;
}

int whole(double plants) {
  return static_cast<int>(std::lround(plants));
}

// What the mat takes at most, until half of the seedlings are up.
void add_power(const LineInput& input,
               const HeatMat& mat,
               const Expected& expected,
               Reason& reason) {
  if (!mat.watts) {
    return;
  }
  const double days =
      expected.half ? days_between(expected.first_water, *expected.half) : usual_main_look_days;
  const double kwh = *mat.watts / watts_a_kilowatt * hours_a_day * days;
  reason.values.push_back({"kwh", rounded_tenth(kwh)});
  if (const auto& price = input.garden.garden.price_per_kwh) {
    reason.values.push_back({"price", rounded_share(*price * kwh)});
  }
}

Reason mat_reason(const LineInput& input, const PlacedLine& with, const PlacedLine& without) {
  const int plants = whole(plants_of(with));
  const int other = whole(plants_of(without));
  Reason reason = plants == other
                      ? Reason{ReasonCode::mat_gives_alike, {{"plants", plants}}}
                      : Reason{ReasonCode::mat_gives, {{"plants", plants}, {"other", other}}};
  add_power(input, *mat_for(input.garden.garden, input.bench), *with.decision.expected, reason);
  return reason;
}

bool stands_on_mat(const LineInput& input, const PlacedLine& with, const PlacedLine& without) {
  const double plants = plants_of(with);
  const double other = plants_of(without);
  if (start_of(input.rule.rule) == species_rules::Start::hot) {
    return plants >= other;
  }
  const double seeds = *input.packet.seeds.middle();
  return much_better(plants / seeds, other / seeds, seeds);
}

} // namespace

double plants_of(const PlacedLine& line) {
  const bool comes = !line.timing.never && !line.timing.missed && line.decision.expected;
  return comes ? line.decision.expected->plants.mean : 0.0;
}

PlacedLine placed_line(const LineInput& input,
                       PacketProspects& known,
                       BenchSeasons& seasons,
                       const std::optional<climate::Season>& season) {
  PlacedLine with = placed_so(input, known, seasons, season);
  const std::optional<double> seeds = input.packet.seeds.middle();
  // What another season serves better asks for no mat in this one.
  if (!on_mat(input) || with.timing.missed || !with.decision.expected || !seeds || *seeds <= 0.0) {
    return with;
  }
  LineInput off = input;
  off.off_mat = true;
  PlacedLine without = placed_so(off, known, seasons, season);
  if (stands_on_mat(input, with, without)) {
    with.timing.reasons.push_back(mat_reason(input, with, without));
    return with;
  }
  // It would ask for the mat that takes plants from it.
  std::erase_if(without.timing.reasons,
                [](const Reason& reason) { return reason.code == ReasonCode::mat_needed; });
  without.timing.reasons.push_back(
      {ReasonCode::mat_left_off,
       {{"plants", whole(plants_of(without))}, {"other", whole(plants_of(with))}}});
  without.off_mat = true;
  return without;
}

} // namespace nightsow::planner
