#pragma once

#include "planner/model/count_range.hpp"
#include "planner/model/establishment.hpp"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// Why a seed is not up.
enum class Cause {
  dead, ///< before sowing
  not_ripe,
  nights_too_warm,
  to_come,
  deferred,
  too_late,
  heat,
  lost_wet,
  dried,
};

inline constexpr std::array all_causes{Cause::dead,
                                       Cause::not_ripe,
                                       Cause::nights_too_warm,
                                       Cause::to_come,
                                       Cause::deferred,
                                       Cause::too_late,
                                       Cause::heat,
                                       Cause::lost_wet,
                                       Cause::dried};

/// Seed that is firm when pressed lives; soft seed is lost.
[[nodiscard]] bool is_firm(Cause cause);

[[nodiscard]] double share_of(const SeedsOnDay& seeds, Cause cause);

/// One look at the pots: how many seedlings had been seen in all by the end of that day.
struct Look {
  int day = 0; ///< of the course
  int seen = 0;
};

/// Seeds dug up, of those not up, and pressed.
struct Pressed {
  int firm = 0;
  int soft = 0;
};

struct SowingRecord {
  int seeds = 0;
  int pots = 1;
  std::vector<Look> looks; ///< in order of days, `seen` never falling and at most `seeds`
  Pressed pressed;         ///< together at most the seeds not up
};

struct CauseShare {
  Cause cause = Cause::dead;
  double share = 0.0; ///< of the seeds not up: mean over what is not known
  double p10 = 0.0;
  double p90 = 0.0;
  std::vector<double> chances; ///< of 0, 1 … all of the seeds not up having gone that way
};

struct Account {
  int up = 0;
  int missing = 0;
  CountRange expected_up;         ///< by the last look, as it was before anything was counted
  std::vector<CauseShare> causes; ///< one each, in the order of all_causes; shares sum to 1
  double more_to_come =
      0.0; ///< seedlings still expected before the first rest, after the last look
  std::optional<int> most_up_by; ///< the day by which nine in ten of those are up; empty: none
  double like_the_rule = 1.0;    ///< chance, before counting, of counts no likelier in number
  double cases_left = 0.0;       ///< how many cases still weigh; near 1: the rule hardly fits
  std::vector<double> weights;   ///< of the cases
};

/// Where the seeds of a sowing are. `cases` are what the rule, its ranges, and the weather that
/// came make of it on the day of the last look, equally likely at first; the counts and the pressed
/// seed weigh them. Pots differ: shares of what becomes of seed are drawn about those of a case
/// (Dirichlet), with the correlation pots_differ within a pot, so that counts are beta-binomial and
/// what is missing is, too. Ranges count seeds, so they are as wide as few seeds make them.
/// `causes` is empty where all are up. Requires: cases not empty; looks not empty; seeds > 0.
[[nodiscard]] Account account(std::span<const SeedsOnDay> cases, const SowingRecord& record);

/// The shares of the seeds not up alone, once `pressed` more has been found: for asking what a
/// press test would change. In the order of all_causes. Requires: an account of these cases and
/// record.
[[nodiscard]] std::vector<double> shares_once_pressed(std::span<const SeedsOnDay> cases,
                                                      const SowingRecord& record,
                                                      const std::vector<double>& weights,
                                                      const Pressed& pressed);

/// What one case alone says of the seeds not up.
struct CaseOutlook {
  std::vector<double> shares; ///< in the order of all_causes, what was pressed counted in
  double more_to_come = 0.0;  ///< seedlings after the last look
};

/// Requires: looks not empty; not all are up.
[[nodiscard]] CaseOutlook outlook_of_case(const SeedsOnDay& seeds, const SowingRecord& record);

/// Seedlings expected after the last look, up to and with a day. Requires: an account of these
/// cases and record.
[[nodiscard]] double expected_by(std::span<const SeedsOnDay> cases,
                                 const SowingRecord& record,
                                 const Account& account,
                                 int day);

/// How likely so many firm seeds would be among so many pressed, 0 to all of them.
[[nodiscard]] std::vector<double> chances_of_firm(std::span<const SeedsOnDay> cases,
                                                  const SowingRecord& record,
                                                  const std::vector<double>& weights,
                                                  int pressed);

} // namespace nightsow::planner
