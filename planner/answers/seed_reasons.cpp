#include "planner/answers/seed_reasons.hpp"

#include "planner/answers/figures.hpp"
#include "planner/model/nights_for_rule.hpp"

namespace nightsow::planner {

namespace {

// From this half-life on a packet is said to keep.
constexpr double keeps_half_life_years = 5.0;

// What a test takes away of the belief in unripeness is told from here on.
constexpr double tells_against_unripeness = 0.5;

TestAnswer test_answer(const SeedTest& seed) {
  TestAnswer answer;
  answer.sprouted = seed.test.count.sprouted;
  answer.of = seed.test.count.of;
  if (seed.test.day_written) {
    answer.on = seed.test.on;
  }
  answer.fit = rounded_share(seed.fit);
  return answer;
}

std::vector<NamedValue> age_and_alive(const SeedState& seed) {
  std::vector<NamedValue> values{{"alive", Share{rounded_share(seed.alive)}}};
  if (seed.age_years) {
    values.push_back({"age_years", rounded_tenth(*seed.age_years)});
  }
  return values;
}

void add_test(const SeedTest& seed, SeedReasons& result) {
  Reason tested{ReasonCode::seed_tested,
                {{"sprouted", seed.test.count.sprouted},
                 {"of", seed.test.count.of},
                 {"alive", Share{rounded_share(seed.alive_then.share)}}}};
  if (seed.test.day_written) {
    tested.values.push_back({"on", seed.test.on});
  }
  result.reasons.push_back(std::move(tested));
  if (seed.needs_no_ripening >= tells_against_unripeness) {
    result.reasons.push_back(
        {ReasonCode::ripe_by_test, {{"ripe", Share{rounded_share(seed.ripe_by_age)}}}});
  }
  if (seed.fit >= little_fit) {
    return;
  }
  Reason little{ReasonCode::test_says_little, {}};
  if (seed.test.at_c) {
    little.values.push_back({"at_c", Celsius{rounded_tenth(*seed.test.at_c)}});
  }
  result.risks.push_back(std::move(little));
}

} // namespace

SeedAnswer seed_answer(const SeedState& seed) {
  SeedAnswer answer;
  answer.store_known = seed.store_known;
  if (!seed.alive_known()) {
    return answer;
  }
  answer.alive = NumberSpread{
      rounded_share(seed.alive), rounded_share(seed.alive_low), rounded_share(seed.alive_high)};
  answer.fading = seed.fading();
  answer.lost_by_waiting = rounded_share(seed.lost_by_waiting());
  if (seed.test) {
    answer.tested = test_answer(*seed.test);
  }
  if (seed.age_years) {
    answer.age_years = rounded_tenth(*seed.age_years);
    answer.ripe = NumberSpread{rounded_share(seed.ripe_share.share),
                               rounded_share(seed.ripe_share.low),
                               rounded_share(seed.ripe_share.high)};
    answer.ripe_on = seed.ripe ? std::nullopt : seed.ripe_on;
  }
  return answer;
}

SeedReasons seed_reasons(const Packet& packet,
                         const species_rules::Rule& rule,
                         const SeedState& seed,
                         bool sown) {
  SeedReasons result;
  if (!seed.age_years) {
    result.risks.push_back({ReasonCode::seed_age_unknown, {}});
  }
  if (!seed.alive_known()) {
    return result;
  }
  std::vector<NamedValue> values = age_and_alive(seed);
  const bool keeps = value_or(rule.seed.half_life_years, 0.0) >= keeps_half_life_years;
  ReasonCode code = keeps ? ReasonCode::seed_keeps : ReasonCode::seed_alive;
  if (seed.fading()) {
    code = sown ? ReasonCode::seed_fading : ReasonCode::seed_fades_first;
    result.first = sown;
  }
  result.reasons.push_back({code, std::move(values)});
  if (seed.test) {
    add_test(*seed.test, result);
  }
  if (packet.harvest_guessed) {
    result.risks.push_back(
        {ReasonCode::harvest_guessed,
         {{"first", packet.harvested->first}, {"last", packet.harvested->last}}});
  }
  if (!seed.store_known) {
    result.risks.push_back({ReasonCode::store_unknown, {}});
  }
  return result;
}

} // namespace nightsow::planner
