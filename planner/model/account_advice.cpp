#include "planner/model/account_advice.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double worth_waiting = 1.0; // seedlings
constexpr double worth_keeping = 0.5; // sound seeds
constexpr double hardly_begun = 0.1;  // of the seedlings of the season, up by now
constexpr double worth_asking = 0.2;  // chance that the step changes
constexpr int soft_enough = 3;        // pressed, none of them firm

struct Believed {
  double more_to_come = 0.0;
  double waiting_seeds = 0.0; // for cool nights
  double sound_seeds = 0.0;
  Pressed pressed;
};

std::size_t place_of(Cause cause) {
  return static_cast<std::size_t>(std::find(all_causes.begin(), all_causes.end(), cause) -
                                  all_causes.begin());
}

Believed believed(const std::vector<double>& shares,
                  double more_to_come,
                  int missing,
                  const Pressed& pressed) {
  Believed result;
  result.more_to_come = more_to_come;
  result.waiting_seeds = missing * shares[place_of(Cause::nights_too_warm)];
  for (std::size_t i = 0; i < all_causes.size(); ++i) {
    result.sound_seeds += is_firm(all_causes.at(i)) ? missing * shares[i] : 0.0;
  }
  result.pressed = pressed;
  return result;
}

NextStep step_for(const Believed& now, const SowingSituation& situation) {
  if (now.more_to_come >= worth_waiting) {
    return NextStep::wait;
  }
  const bool can_cool = situation.today < situation.rest_begins;
  if (can_cool && now.waiting_seeds >= worth_waiting) {
    return NextStep::cool_it;
  }
  const bool seasons_left = situation.cool_seasons_had < situation.cool_seasons_kept;
  if (now.sound_seeds >= worth_keeping && seasons_left) {
    return NextStep::keep_for_next_limb;
  }
  const bool all_soft = now.pressed.firm == 0 && now.pressed.soft >= soft_enough;
  return all_soft || !seasons_left ? NextStep::stop : NextStep::sow_again;
}

double ratio(double now, double before) {
  return before > 0.0 ? now / before : 1.0;
}

double on_their_way(const std::vector<double>& shares) {
  return shares[place_of(Cause::nights_too_warm)] + shares[place_of(Cause::to_come)];
}

double weight_of_same_step(std::span<const SeedsOnDay> cases,
                           const SowingRecord& record,
                           const Account& account,
                           const SowingSituation& situation,
                           NextStep step) {
  double same = 0.0;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const CaseOutlook alone = outlook_of_case(cases[i], record);
    const Believed now =
        believed(alone.shares, alone.more_to_come, account.missing, record.pressed);
    same += step_for(now, situation) == step ? account.weights[i] : 0.0;
  }
  return same;
}

// The share of the season's seedlings that would be up by now, by the rule alone.
double begun(std::span<const SeedsOnDay> cases) {
  double now = 0.0;
  double season = 0.0;
  for (const SeedsOnDay& one : cases) {
    now += one.up_so_far;
    for (const double share : one.up) {
      season += share;
    }
  }
  return season > 0.0 ? now / season : 1.0;
}

void ask_for_pressed_seed(std::span<const SeedsOnDay> cases,
                          const SowingRecord& record,
                          const Account& account,
                          const SowingSituation& situation,
                          const std::vector<double>& shares,
                          AccountAdvice& advice) {
  const std::vector<double> chances =
      chances_of_firm(cases, record, account.weights, pressed_at_once);
  double changes = 0.0;
  std::vector<NextStep> by_firm;
  for (int firm = 0; firm <= pressed_at_once; ++firm) {
    const Pressed pressed{firm, pressed_at_once - firm};
    const std::vector<double> then = shares_once_pressed(cases, record, account.weights, pressed);
    const double more = account.more_to_come * ratio(on_their_way(then), on_their_way(shares));
    by_firm.push_back(step_for(believed(then, more, account.missing, pressed), situation));
    changes += by_firm.back() != advice.step ? chances[static_cast<std::size_t>(firm)] : 0.0;
  }
  if (changes >= worth_asking) {
    advice.press_five = true;
    advice.by_firm = std::move(by_firm);
  }
}

} // namespace

AccountAdvice advice_for(std::span<const SeedsOnDay> cases,
                         const SowingRecord& record,
                         const Account& account,
                         const SowingSituation& situation) {
  AccountAdvice advice;
  if (account.missing == 0) {
    advice.step = NextStep::nothing_missing;
    return advice;
  }
  const bool none_pressed = record.pressed.firm + record.pressed.soft == 0;
  if (account.up == 0 && none_pressed && begun(cases) < hardly_begun &&
      account.more_to_come >= worth_waiting) {
    advice.step = NextStep::too_early;
    advice.wait_until = account.most_up_by;
    return advice;
  }
  std::vector<double> shares;
  for (const CauseShare& one : account.causes) {
    shares.push_back(one.share);
  }
  advice.step =
      step_for(believed(shares, account.more_to_come, account.missing, record.pressed), situation);
  advice.how_sure = weight_of_same_step(cases, record, account, situation, advice.step);
  if (advice.step == NextStep::wait) {
    advice.wait_until = account.most_up_by;
  }
  if (none_pressed && account.missing >= pressed_at_once) {
    ask_for_pressed_seed(cases, record, account, situation, shares, advice);
  }
  return advice;
}

} // namespace nightsow::planner
