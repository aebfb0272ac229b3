#include "planner/answers/seed_outlook.hpp"

#include "climate/base/problem.hpp"
#include "planner/answers/asked_kinds.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/rules_report.hpp"
#include "planner/answers/seed_reasons.hpp"
#include "planner/answers/work_facts.hpp"
#include "planner/model/keeping.hpp"
#include "planner/model/seed_state.hpp"
#include "species-rules/seed_moisture.hpp"
#include "species-rules/seed_parameters.hpp"
#include "species-rules/viability.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

using species_rules::Rule;
using species_rules::ShareRange;
using species_rules::Store;

constexpr double warm_c = species_rules::room_c;
constexpr double cool_c = keeping_cool_c;
constexpr double days_a_year = 365.25;
constexpr int year_days = 365;
constexpr int search_step_days = 5;
// A way that is better by less than this is not worth its trouble (common practice, no source).
constexpr double worth_the_trouble = 0.01;

Packet packet_of(const SeedOutlookRequest& request, Date today) {
  Packet packet;
  packet.taxon = request.taxon;
  packet.harvested = harvest_of(request.age, today);
  packet.stored = stages_until(request.stored, today, false);
  packet.tested = request.tested;
  return packet;
}

NumberSpread spread_of(const ShareRange& range) {
  return {rounded_share(range.share), rounded_share(range.low), rounded_share(range.high)};
}

// Relative errors of the two add up as squares: they are independent.
ShareRange both(const SeedState& state) {
  const auto off = [](double end, double middle) {
    return middle > 0.0 ? 1.0 - end / middle : 0.0;
  };
  const ShareRange& ripe = state.ripe_share;
  const double down = std::hypot(off(state.alive_low, state.alive), off(ripe.low, ripe.share));
  const double up = std::hypot(off(state.alive_high, state.alive), off(ripe.high, ripe.share));
  const double most = std::min(state.alive_high, ripe.high);
  return {state.alive_and_ripe,
          std::max(0.0, state.alive_and_ripe * (1.0 - down)),
          std::max(state.alive_and_ripe, std::min(most, state.alive_and_ripe * (1.0 + up)))};
}

SeedChances chances_of(const SeedState& state) {
  return {spread_of({state.alive, state.alive_low, state.alive_high}),
          spread_of(state.ripe_share),
          spread_of(both(state))};
}

/// Seed that is to be kept for a year from today on.
struct ToKeep {
  const Packet& packet;
  const Rule& rule;
  Date today;

  [[nodiscard]] SeedState in_a_year(int warm_days) const {
    const Keeping::Way way = warm_days == 0          ? Keeping::Way::cool
                             : warm_days < year_days ? Keeping::Way::warm_then_cool
                                                     : Keeping::Way::warm;
    const std::optional<Date> warm_until =
        way == Keeping::Way::warm_then_cool ? std::optional{today + Days{warm_days}} : std::nullopt;
    const Packet kept = kept_so(packet, {way, warm_until}, today);
    return seed_state(kept, rule, today + Days{year_days});
  }
};

// The days of warmth before the fridge that leave most seed alive and ripe.
int best_warm_days(const ToKeep& seed) {
  int best = 0;
  double most = 0.0;
  for (int days = 0; days <= year_days; days += search_step_days) {
    const double share = seed.in_a_year(days).alive_and_ripe;
    if (share > most) {
      most = share;
      best = days;
    }
  }
  return best;
}

std::vector<KeepingAnswer> ways_to_keep(const ToKeep& seed, double& lost_in_a_year) {
  const auto way = [](Store store, std::optional<int> warm_days) {
    KeepingAnswer answer;
    answer.way = word_of(store);
    answer.warm_days = warm_days;
    answer.warm_c = warm_c;
    answer.cool_c = cool_c;
    return answer;
  };
  std::vector<std::pair<KeepingAnswer, SeedState>> ways;
  ways.emplace_back(way(Store::cool_dry, {}), seed.in_a_year(0));
  ways.emplace_back(way(Store::warm_dry, {}), seed.in_a_year(year_days));
  const int warm_days = best_warm_days(seed);
  if (warm_days > 0 && warm_days < year_days) {
    ways.emplace_back(way(Store::warm_then_cool, warm_days), seed.in_a_year(warm_days));
  }
  auto best = ways.begin();
  for (auto next = ways.begin(); next != ways.end(); ++next) {
    if (next->second.alive_and_ripe > best->second.alive_and_ripe + worth_the_trouble) {
      best = next;
    }
  }
  best->first.best = true;
  const double alive = seed_state(seed.packet, seed.rule, seed.today).alive;
  lost_in_a_year = alive > 0.0 ? std::max(0.0, 1.0 - best->second.alive / alive) : 0.0;
  std::vector<KeepingAnswer> answers;
  for (auto& [answer, state] : ways) {
    answer.in_a_year = chances_of(state);
    answers.push_back(std::move(answer));
  }
  return answers;
}

// Seed kept from today on in a store of its own making.
NumberSpread alive_after(const ToKeep& seed, double store_c, double humidity, int days) {
  Packet kept = seed.packet;
  StoreStage stage;
  stage.store_c = store_c;
  stage.humidity = humidity;
  kept.stored.push_back(stage);
  const SeedState state = seed_state(kept, seed.rule, seed.today + Days{days});
  return spread_of({state.alive, state.alive_low, state.alive_high});
}

// Seed that dies dry keeps for weeks at most: nobody asks what a year leaves of it.
std::vector<WaitAnswer> ways_to_wait(const ToKeep& seed) {
  constexpr int two_weeks = 14;
  constexpr int eight_weeks = 56;
  const auto wait = [&](std::string_view way, double store_c, double humidity) {
    return WaitAnswer{std::string(way),
                      alive_after(seed, store_c, humidity, two_weeks),
                      alive_after(seed, store_c, humidity, eight_weeks)};
  };
  std::vector<WaitAnswer> ways{wait("cool_moist", cool_c, species_rules::damp_humidity),
                               wait("cool_dry", cool_c, species_rules::room_humidity),
                               wait("warm_dry", warm_c, species_rules::room_humidity)};
  std::ranges::max_element(ways, {}, [](const WaitAnswer& way) {
    return way.after_eight_weeks.mean;
  })->best = true;
  return ways;
}

// What comes up in the first season, left whole and treated as the rule tells.
void add_coming_up(SeedOutlookAnswer& answer, const Rule& rule, const SeedState& state) {
  const auto seed = species_rules::seed_parameters(rule);
  answer.comes_up = rounded_share(state.germination * (1.0 - seed.deferral_share));
  if (rule.seed.deferral_treated_share) {
    answer.comes_up_treated =
        rounded_share(state.germination * (1.0 - species_rules::treated(seed).deferral_share));
  }
  for (const auto& [word, treatment] : {std::pair{"smoke", &rule.sowing.smoke},
                                        std::pair{"leach", &rule.sowing.leach},
                                        std::pair{"scarify", &rule.sowing.scarify}}) {
    if (helps(*treatment)) {
      answer.treatments.emplace_back(word);
    }
  }
}

constexpr std::array<std::string_view, 7> deciding_keys{"germination_share",
                                                        "half_life_years",
                                                        "after_ripening_c_d",
                                                        "after_ripening_base_c",
                                                        "deferral_share",
                                                        "deferral_treated_share",
                                                        "store"};

// Of the whole rule only the values that decide here.
RuleShowAnswer grounds_of(RuleShowAnswer rule) {
  std::erase_if(rule.values, [](const RuleValue& value) {
    return std::ranges::find(deciding_keys, value.key) == deciding_keys.end();
  });
  std::erase_if(rule.sources, [&](const RuleSource& source) {
    return std::ranges::find(rule.values, source.id, &RuleValue::source) == rule.values.end();
  });
  return rule;
}

void refuse_unusable_test(const Packet& packet, Date today) {
  if (packet.tested && !usable_test(packet, today)) {
    throw UsageError({Severity::error,
                      "--tested",
                      0,
                      0,
                      "the test is from before the harvest, or still to come",
                      "a day since the harvest, up to today",
                      "correct the day, or leave it out"});
  }
}

} // namespace

SeedOutlookAnswer seed_outlook(const species_rules::Catalogue& catalogue,
                               const SeedOutlookRequest& request,
                               Date today) {
  const species_rules::RuleFor kind = typed_rule(catalogue, request.taxon);
  const Packet packet = packet_of(request, today);
  refuse_unusable_test(packet, today);
  const SeedState state = seed_state(packet, kind.rule, today);
  SeedOutlookAnswer answer;
  answer.taxon = request.taxon;
  answer.accepted = kind.accepted;
  answer.rule = kind.rule_name;
  answer.family = kind.family;
  answer.by_synonym = kind.by_synonym;
  answer.grounds = grounds_of(show_rule(catalogue, request.taxon));
  answer.age_days = static_cast<int>(std::lround(request.age.days));
  answer.age_years = rounded_tenth(request.age.days / days_a_year);
  answer.stored = request.stored_as_written;
  answer.store_known = state.store_known;
  answer.tested = seed_answer(state).tested;
  answer.today = chances_of(state);
  add_coming_up(answer, kind.rule, state);
  answer.advice = kind.rule.seed.store ? word_of(kind.rule.seed.store->value) : "";
  const SeedReasons reasons = seed_reasons(packet, kind.rule, state, {});
  for (const auto* list : {&reasons.reasons, &reasons.risks}) {
    std::copy_if(
        list->begin(), list->end(), std::back_inserter(answer.reasons), [](const Reason& reason) {
          return reason.code == ReasonCode::seed_tested ||
                 reason.code == ReasonCode::test_says_little ||
                 reason.code == ReasonCode::store_unknown;
        });
  }
  const ToKeep seed{packet, kind.rule, today};
  if (species_rules::storage_of(kind.rule) == species_rules::SeedStorage::recalcitrant) {
    answer.reasons.push_back({ReasonCode::fleshy_at_once, {}});
    answer.waits = ways_to_wait(seed);
    return answer;
  }
  answer.ways = ways_to_keep(seed, answer.lost_in_a_year);
  answer.lost_in_a_year = rounded_share(answer.lost_in_a_year);
  return answer;
}

} // namespace nightsow::planner
