#include "planner/answers/account_reasons.hpp"

#include "planner/answers/figures.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace nightsow::planner {

namespace {

constexpr double quite_sure = 0.8; // common practice, no source; so is the next
constexpr double fairly_sure = 0.6;

int rounded(double number) {
  return static_cast<int>(std::lround(number));
}

double seeds_of(const Account& result, bool (*counts)(Cause)) {
  double share = 0.0;
  for (const CauseShare& cause : result.causes) {
    share += counts(cause.cause) ? cause.share : 0.0;
  }
  return share * result.missing;
}

bool waits_for_nights(Cause cause) {
  return cause == Cause::nights_too_warm;
}

void add_until(Reason& reason, const std::optional<Date>& until) {
  if (until) {
    reason.values.push_back({"until", *until});
  }
}

} // namespace

Reason likely_reason(const std::vector<MissingShare>& causes, int missing) {
  const auto most = std::max_element(
      causes.begin(), causes.end(), [](const auto& a, const auto& b) { return a.share < b.share; });
  return {ReasonCode::account_likely,
          {{"cause", most->cause},
           {"share", Share{most->share}},
           {"low", most->seeds_p10},
           {"high", most->seeds_p90},
           {"missing", missing}}};
}

Reason too_early_reason(const std::optional<Date>& until) {
  Reason reason{ReasonCode::account_too_early, {}};
  add_until(reason, until);
  return reason;
}

Reason step_reason(NextStep step,
                   const Account& result,
                   const species_rules::SeedParameters& seed,
                   bool rests_dry,
                   const std::optional<Date>& until,
                   Date today) {
  const int sound = rounded(seeds_of(result, is_firm));
  switch (step) {
  case NextStep::nothing_missing:
    return {ReasonCode::account_all_up, {}};
  case NextStep::too_early:
    return too_early_reason(until);
  case NextStep::wait: {
    Reason reason{ReasonCode::account_wait, {{"more", rounded(result.more_to_come)}}};
    add_until(reason, until);
    return reason;
  }
  case NextStep::cool_it:
    return {seed.start == species_rules::Start::hot ? ReasonCode::account_warm_it
                                                    : ReasonCode::account_cool_it,
            {{"seeds", rounded(seeds_of(result, waits_for_nights))},
             {"limit_c", Celsius{rounded_tenth(seed.release ? seed.release->limit_c : 0.0)}}}};
  case NextStep::keep_for_next_limb:
    if (*until <= today) {
      return {ReasonCode::account_water_again, {{"seeds", sound}}};
    }
    return {ReasonCode::account_keep, {{"seeds", sound}, {rests_dry ? "dry" : "moist", *until}}};
  case NextStep::sow_again:
    return {ReasonCode::account_sow_again, {{"seeds", sound}}};
  case NextStep::stop:
    break;
  }
  return {ReasonCode::account_stop, {}};
}

Reason sure_reason(double how_sure, bool fits) {
  const char* const sure = !fits || how_sure < fairly_sure ? "not"
                           : how_sure < quite_sure         ? "fairly"
                                                           : "quite";
  Reason reason{ReasonCode::account_how_sure, {{"sure", std::string(sure)}}};
  if (fits) {
    reason.values.push_back({"share", Share{rounded_share(how_sure)}});
  }
  return reason;
}

} // namespace nightsow::planner
